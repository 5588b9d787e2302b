import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dive } from '../../../src/engine/cut/dive.ts';
import { fewestPossible, fewestSticks } from '../../../src/engine/cut/fewest-sticks.ts';
import { fillStick } from '../../../src/engine/cut/fill.ts';
import { cutAsTheyCome, type TimedCut } from '../../../src/engine/cut/open-sticks.ts';
import { relaxedSticks } from '../../../src/engine/cut/relaxed.ts';
import { repack } from '../../../src/engine/cut/repack.ts';
import { packInRounds } from '../../../src/engine/cut/rounds.ts';
import { cutInStages } from '../../../src/engine/cut/stages.ts';

const PLENTY = 100_000;

describe('filling one stick', () => {
  it('takes what is worth most', () => {
    const filling = fillStick({ room: [5, 3], worth: [5, 3], wanted: [4, 4] }, 11, PLENTY);
    expect(filling).toMatchObject({ counts: [1, 2], worth: 11, most: 11 });
  });

  it('says when its effort was spent before it could prove the best', () => {
    const kinds = { room: [7, 5, 4, 3], worth: [7.1, 5.2, 4.1, 2.9], wanted: [9, 9, 9, 9] };
    expect(fillStick(kinds, 41, 3).most).toBe(Number.POSITIVE_INFINITY);
    expect(fillStick(kinds, 41, PLENTY)).toMatchObject({ worth: fillStick(kinds, 41, PLENTY).most });
  });

  it('is never worth less than any other filling', () => {
    const kinds = fc.array(
      fc.record({
        room: fc.integer({ min: 1, max: 12 }),
        worth: fc.integer({ min: 0, max: 20 }),
        wanted: fc.integer({ min: 0, max: 3 }),
      }),
      { minLength: 1, maxLength: 5 },
    );
    fc.assert(
      fc.property(kinds, fc.integer({ min: 1, max: 30 }), (list, capacity) => {
        // Every filling there is, by hand: what comes of adding none, one, two … of each kind.
        let all = [{ room: 0, worth: 0 }];
        for (const x of list)
          all = all.flatMap((f) =>
            Array.from({ length: x.wanted + 1 }, (_, n) => ({
              room: f.room + n * x.room,
              worth: f.worth + n * x.worth,
            })),
          );
        const best = Math.max(...all.filter((x) => x.room <= capacity).map((x) => x.worth));
        const of = (key: 'room' | 'worth' | 'wanted') => list.map((x) => x[key]);
        const filling = fillStick({ room: of('room'), worth: of('worth'), wanted: of('wanted') }, capacity, PLENTY);
        expect(filling.worth).toBe(best);
        expect(filling.counts.reduce((sum, n, i) => sum + n * list[i]!.room, 0)).toBeLessThanOrEqual(capacity);
      }),
    );
  });
});

describe('how many sticks are needed at least', () => {
  it('follows from sticks counted in fractions', () => {
    expect(relaxedSticks([1600], [5], 3000).bound).toBe(5);
    const relaxed = relaxedSticks([2, 3], [3, 3], 5);
    expect(relaxed.bound).toBe(3);
    expect(relaxed.patterns.reduce((sum, x) => sum + x.times, 0)).toBeCloseTo(3, 9);
  });

  it('follows from cuts of which no two share a stick', () => {
    // By hand: three of 6 need a stick of 10 each, and none has room for a 5; two 5 share one: 4. By room alone 2.8: 3.
    expect(fewestPossible([6, 5], [3, 2], 10)).toBe(4);
  });

  it('is never more than are taken', () => {
    const kinds = fc.uniqueArray(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(kinds, fc.integer({ min: 60, max: 130 }), fc.integer({ min: 1, max: 40 }), (room, capacity, most) => {
        const wanted = room.map((x) => 1 + ((x * 7) % most));
        const packing = fewestSticks(room, wanted, capacity);
        expect(fewestPossible(room, wanted, capacity)).toBeLessThanOrEqual(packing.sticks);
        expect(relaxedSticks(room, wanted, capacity).bound).toBeLessThanOrEqual(packing.sticks);
        for (const [i, n] of wanted.entries())
          expect(packing.patterns.reduce((sum, x) => sum + x.times * x.counts[i]!, 0)).toBe(n);
        for (const x of packing.patterns)
          expect(x.counts.reduce((sum, n, i) => sum + n * room[i]!, 0)).toBeLessThanOrEqual(capacity);
      }),
    );
  });
});

describe('packing', () => {
  // Gilmore and Gomory 1961 family of bounds, from memory: 10 x 1150 and 20 x 550 in 6000 with a kerf of 3.
  it('takes as few as possible', () => {
    expect(fewestSticks([1153, 553], [10, 20], 6003).sticks).toBe(4);
    expect(packInRounds({ room: [1153, 553], worth: [1153, 553], wanted: [10, 20] }, 6003, 4, 10, PLENTY).sticks).toBe(
      4,
    );
  });

  it('again saves a stick', () => {
    const kinds = { room: [6, 5, 4, 3, 2], worth: [6, 5, 4, 3, 2], wanted: [1, 1, 1, 1, 1] };
    const patterns = [
      { counts: [1, 0, 0, 1, 0], times: 1 },
      { counts: [0, 1, 1, 0, 0], times: 1 },
      { counts: [0, 0, 0, 0, 1], times: 1 },
    ];
    expect(repack(kinds, 10, { patterns, sticks: 3, steps: 0 }, 2, PLENTY).sticks).toBe(2);
  });
});

describe('cutting over time', () => {
  const lengths = [6, 5, 4, 2];
  const cut = (lengthMm: number, count = 1, at = 0): TimedCut => ({
    kind: lengths.indexOf(lengthMm),
    lengthMm,
    room: lengthMm,
    count,
    at,
    for: 'B1',
  });
  const cutsOf = (sticks: { cuts: { lengthMm: number; count: number }[] }[]) =>
    sticks.map((x) => x.cuts.flatMap((c) => Array.from({ length: c.count }, () => c.lengthMm)));

  it('takes cuts as they come from the tightest offcut', () => {
    expect(cutsOf(cutAsTheyCome([cut(6), cut(5), cut(4), cut(5)], 10))).toEqual([
      [6, 4],
      [5, 5],
    ]);
  });

  it('in stages uses first what is left over', () => {
    const sticks = cutInStages([[cut(4, 2)], [cut(6, 1, 5), cut(2, 1, 5)]], lengths, 10);
    expect(cutsOf(sticks)).toEqual([[4, 4, 2], [6]]);
    expect(sticks.map((x) => x.openedAt)).toEqual([0, 5]);
  });
});

describe('step by step by the relaxed cutting', () => {
  const relax = (room: number[], capacity: number) => (kinds: number[], wanted: number[]) =>
    relaxedSticks(
      kinds.map((kind) => room[kind]!),
      wanted,
      capacity,
    );

  it('finds a packing as small as the aim', () => {
    expect(dive([1, 1, 1, 1, 1], 2, relax([6, 5, 4, 3, 2], 10), 20)?.sticks).toBe(2);
  });

  it('finds none where more is proven to be needed, or no step is left', () => {
    expect(dive([5], 4, relax([1600], 3000), 20)).toBeNull();
    expect(dive([1, 1, 1, 1, 1], 2, relax([6, 5, 4, 3, 2], 10), 0)).toBeNull();
  });
});
