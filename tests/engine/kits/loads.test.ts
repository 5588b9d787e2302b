import fc from 'fast-check';
import { expect, test } from 'vitest';
import { loadsAt } from '../../../src/engine/kits/loads.ts';

test('four of 18 kg and four of 9 kg at 60 kg: two loads of 54 kg, two of each in both', () => {
  const loads = loadsAt(
    [
      { casting: 'short', count: 4, kg: 9 },
      { casting: 'long', count: 4, kg: 18 },
    ],
    60,
  );
  // 108 kg in all needs two loads; 60 kg holds at most three of 18 (54) or two of 18 and two of 9 (54).
  expect(loads?.reduce((sum, { times }) => sum + times, 0)).toBe(2);
  expect(loads?.reduce((sum, { times, kg }) => sum + times * kg, 0)).toBe(108);
});

test('three pieces of 34 kg at 67 kg are three loads, though 102 kg would be two by weight alone', () => {
  expect(loadsAt([{ casting: 'thick', count: 3, kg: 34 }], 67)).toEqual([
    { times: 3, kg: 34, pieces: [{ casting: 'thick', count: 1 }] },
  ]);
});

test('a piece heavier than the payload goes nowhere, nothing needs no load', () => {
  expect(loadsAt([{ casting: 'slab', count: 1, kg: 63.4 }], 63)).toBeNull();
  expect(loadsAt([], 63)).toEqual([]);
});

/** The fewest loads by trying every piece in every load. */
const fewest = (grams: number[], payload: number, loads: number[] = []): number => {
  const [first, ...rest] = grams;
  if (first === undefined) return loads.length;
  const into = loads.flatMap((load, index) =>
    load + first <= payload ? [fewest(rest, payload, loads.with(index, load + first))] : [],
  );
  return Math.min(...into, fewest(rest, payload, [...loads, first]));
};

test('as few loads as there can be, everything on board, none overloaded', () => {
  fc.assert(
    fc.property(
      fc.array(fc.record({ count: fc.integer({ min: 1, max: 3 }), kg: fc.integer({ min: 4, max: 20 }) }), {
        maxLength: 3,
      }),
      fc.integer({ min: 20, max: 45 }),
      (kinds, payloadKg) => {
        const pieces = kinds.map((kind, index) => ({ ...kind, casting: `kind ${index}` }));
        const loads = loadsAt(pieces, payloadKg)!;
        expect(loads.every(({ kg }) => kg <= payloadKg)).toBe(true);
        for (const { casting, count } of pieces) {
          const carried = loads.flatMap((load) =>
            load.pieces.filter((each) => each.casting === casting).map((each) => each.count * load.times),
          );
          expect(carried.reduce((sum, each) => sum + each, 0)).toBe(count);
        }
        const all = pieces.flatMap(({ count, kg }) => Array.from({ length: count }, () => kg));
        expect(loads.reduce((sum, { times }) => sum + times, 0)).toBe(fewest(all, payloadKg));
      },
    ),
    { numRuns: 60 },
  );
});
