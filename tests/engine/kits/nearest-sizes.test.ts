import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nearestSizes } from '../../../src/engine/kits/nearest-sizes.ts';
import { SIDES } from '../../../src/engine/kits/outline.ts';
import { everyKit } from '../../support/every-kit.ts';

const row = (whole: number, lengths: number[], most = 3) =>
  nearestSizes(SIDES.row, { x: { whole, cut: 0 }, y: { whole: 0, cut: 0 } }, lengths, 40, 1, most).map(
    ({ size, differenceNano, panels }) => [...[size.x.whole, differenceNano, panels]],
  );

describe('a row of 900 and 600', () => {
  test('of 1500 can be made', () => {
    expect(row(1500, [900, 600])[0]).toEqual([1500, 0, 2]);
  });
  // 600, 900, 1200, 1500, 1800 ... can be.
  test('of 1600 is nearest to 1500, then 1800, then 1200', () => {
    expect(row(1600, [900, 600])).toEqual([
      [1500, 100, 2],
      [1800, 200, 2],
      [1200, 400, 2],
    ]);
  });
  test('of nothing is one panel', () => {
    expect(row(1, [900, 600], 1)).toEqual([[600, 599, 1]]);
  });
});

test('the nearest L is the nearest of all that can be made', () => {
  const small = fc.record({
    x: fc.record({ whole: fc.integer({ min: 6, max: 12 }), cut: fc.integer({ min: 2, max: 5 }) }),
    y: fc.record({ whole: fc.integer({ min: 6, max: 12 }), cut: fc.integer({ min: 2, max: 5 }) }),
    panels: fc.uniqueArray(fc.integer({ min: 3, max: 8 }), { minLength: 1, maxLength: 3 }),
    courses: fc.integer({ min: 1, max: 2 }),
  });
  const canBe = (long: number, wide: number, cutLong: number, cutWide: number, panels: number[], courses: number) =>
    everyKit(SIDES.L, [long - cutLong, cutWide, cutLong, wide - cutWide, long, wide], panels, 1, courses) !== null;
  let off = 0;
  fc.assert(
    fc.property(small, ({ x, y, panels, courses }) => {
      const [nearest] = nearestSizes(SIDES.L, { x, y }, panels, 1, courses, 1);
      const { size, differenceNano: limit } = nearest!;
      expect(canBe(size.x.whole, size.y.whole, size.x.cut, size.y.cut, panels, courses)).toBe(true);
      if (limit > 4) return;
      if (limit > 0) off++;
      for (let a = -limit; a <= limit; a++)
        for (let b = -limit; b <= limit; b++)
          for (let c = -limit; c <= limit; c++)
            for (let d = -limit; d <= limit; d++) {
              if (Math.abs(a) + Math.abs(b) + Math.abs(c) + Math.abs(d) >= limit) continue;
              if (x.cut + c < 1 || y.cut + d < 1 || x.whole + a <= x.cut + c || y.whole + b <= y.cut + d) continue;
              expect(canBe(x.whole + a, y.whole + b, x.cut + c, y.cut + d, panels, courses)).toBe(false);
            }
    }),
    { numRuns: 40 },
  );
  // A check that never looked at a size that can't be made would pass everything.
  expect(off).toBeGreaterThan(5);
});

describe('an L of real sizes, two courses, panels 33 thick and in steps of 10', () => {
  /*
   * No two panels differ by 66, so no side can step back at both ends: every side runs through at one end and butts at the
   * other. Then the whole is a sum of panels and a thickness, the corner left out is a sum, and what is left of the whole
   * beside it is a sum and a thickness.
   */
  const sumsOf = (lengths: number[], upTo: number): Set<number> => {
    const sums = new Set([0]);
    for (let sum = 0; sum <= upTo; sum += 10) if (lengths.some((length) => sums.has(sum - length))) sums.add(sum);
    return sums;
  };
  const best = (whole: number, cut: number, lengths: number[], most: number): number[] => {
    const sums = [...sumsOf(lengths, whole + 5000)].filter((sum) => sum > 0);
    const offs: number[] = [];
    for (const one of sums) for (const rest of sums) offs.push(Math.abs(one + rest + 33 - whole) + Math.abs(one - cut));
    return offs.sort((a, b) => a - b).slice(0, most);
  };

  test('has the nearest sizes in order', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1500, max: 6000 }),
        fc.integer({ min: 300, max: 1200 }),
        fc.uniqueArray(
          fc.integer({ min: 30, max: 150 }).map((tens) => tens * 10),
          { minLength: 1, maxLength: 4 },
        ),
        (whole, cut, lengths) => {
          // The other way across is a size that can be made, so that only this way differs.
          const y = { whole: 2 * lengths[0]! + 33, cut: lengths[0]! };
          const near = nearestSizes(SIDES.L, { x: { whole, cut }, y }, lengths, 33, 2, 5);
          const along = near.filter(({ size }) => size.y.whole === y.whole && size.y.cut === y.cut);
          const offs = best(whole, cut, lengths, along.length);
          expect(along.map(({ differenceNano }) => differenceNano)).toEqual(offs);
          expect(along.length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 300 },
    );
  });
});
