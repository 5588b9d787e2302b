import { describe, expect, test } from 'vitest';
import { offcutsText, offcutsTyped } from '../../../src/usecases/typed/offcuts-typed.ts';

const metric = { system: 'metric' as const, before: [], stickMm: 3000 };
const lengths = (...list: [number, number][]) => list.map(([lengthMm, count]) => ({ lengthMm, count }));

describe('offcuts as they are typed', () => {
  test.each([
    ['', []],
    ['2232', lengths([2232, 1])],
    ['2232 mm, 1400 mm', lengths([2232, 1], [1400, 1])],
    ['90 cm; 2 × 400 mm', lengths([900, 1], [400, 2])],
    ['400, 2x400, 3 * 190,5 mm', lengths([400, 3], [190.5, 3])],
    ['1 m\n1 m', lengths([1000, 2])],
    ['700 mm,', lengths([700, 1])],
  ])('"%s" are read, the longest first', (text, value) => {
    expect(offcutsTyped(text, metric)).toEqual({ ok: true, value });
  });

  test.each([
    ['a bit', /^/],
    ['3000', 'A whole one is 3000 mm. An offcut is shorter.'],
    ['0', 'How long is it? Write a length above 0.'],
    ['1001 × 400', 'How many of 400? From 1 to 1000.'],
    ['0 × 400', 'How many of 400? From 1 to 1000.'],
  ])('"%s" are not', (text, why) => {
    const read = offcutsTyped(text, metric);
    expect(read.ok).toBe(false);
    expect(read.ok ? '' : read.reason).toMatch(why);
  });

  // A sixteenth of an inch is 1.5875 mm: 2232 mm is shown as 7 ft 3 7/8 in, which is 2232.025.
  test('left as they are shown they stay to the last millimetre', () => {
    const before = lengths([2232, 1], [700.25, 2]);
    for (const system of ['metric', 'US'] as const) {
      const text = offcutsText(before, system);
      expect(offcutsTyped(text, { system, before, stickMm: 3000 })).toEqual({ ok: true, value: before });
    }
    expect(offcutsText(before, 'US')).toBe('7 ft 3 7/8 in, 2 × 2 ft 3 9/16 in');
    const typed = offcutsTyped('7 ft 3 7/8 in', { system: 'US', before: [], stickMm: 3000 });
    expect(typed).toEqual({ ok: true, value: [{ lengthMm: expect.closeTo(2232.025, 9), count: 1 }] });
  });
});
