import { expect, test } from 'vitest';
import { keepingLines, unusedText } from '../../../views/parts/keeping-text.ts';

const TODAY = '2027-04-20';

test('what is in the yard too long, and what is used too late', () => {
  const keeping = {
    days: 90,
    past: [
      { quantity: 3, cameOn: '2027-01-12' },
      { quantity: 1, cameOn: '2026-01-15' },
    ],
    late: [{ quantity: 2, until: '2027-05-02' }],
  };
  expect(keepingLines(keeping, 'bag', TODAY)).toEqual([
    '3 bags came Tue 12 Jan and keep 90 days: check them before use.',
    '1 bag came Thu 15 Jan 2026 and keeps 90 days: check it before use.',
    '2 bags keep until Sun 2 May, and by plan are used after that.',
  ]);
});

test('what is bought and has no use in time', () => {
  const unused = { quantity: 4, unit: 'bag', days: 120, until: '2027-07-12' };
  expect(unusedText(unused, TODAY)).toBe(
    "Keeps 120 days, until Mon 12 Jul: 4 bags have no use by then, by today's plan.",
  );
  expect(unusedText({ ...unused, quantity: 1 }, TODAY)).toContain(': 1 bag has no use by then');
});
