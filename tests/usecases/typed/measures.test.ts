import { expect, test } from 'vitest';
import { shownAmount, weekOf } from '../../../src/usecases/typed/measures.ts';

/* 8 May 2027 is a Saturday, 9 May a Sunday. */
test.each([
  ['2027-05-08', 'MO', '2027-05-03'],
  ['2027-05-03', 'MO', '2027-05-03'],
  ['2027-05-09', 'MO', '2027-05-03'],
  ['2027-05-08', 'SU', '2027-05-02'],
  ['2027-05-09', 'SU', '2027-05-09'],
  ['2027-05-07', 'SA', '2027-05-01'],
  // Before 1970 as well.
  ['1969-12-31', 'MO', '1969-12-29'],
] as const)('%s is in the week of a yard that begins on %s: %s', (date, start, week) => {
  expect(weekOf(date, start)).toBe(week);
});

test("amounts are shown in the yard's units, with whatever else is known of them", () => {
  // 1 lb = 453.59237 g, NIST SP 811 (2008), appendix B.
  const shown = shownAmount({ name: 'Citric acid', quantity: 453.59237, unit: 'g' }, 'US');
  expect(shown).toMatchObject({ name: 'Citric acid', unit: 'oz' });
  expect(shown.quantity).toBeCloseTo(16, 12);
  expect(shownAmount({ quantity: 3, unit: 'bag' }, 'US')).toEqual({ quantity: 3, unit: 'bag' });
});
