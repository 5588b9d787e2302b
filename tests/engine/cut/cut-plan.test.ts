import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CutDemand, cutPlan, type OpenedStick } from '../../../src/engine/cut/cut-plan.ts';
import { fewestPossible, fewestSticks } from '../../../src/engine/cut/fewest-sticks.ts';
import { manyCuts } from '../../support/many-cuts.ts';
import { sticksByHighs, sticksCases } from '../../support/sticks-by-highs.ts';

const demand = (lengthMm: number, count: number, at = 0, to = 'B1'): CutDemand => ({ lengthMm, count, at, for: to });
const count = (stickMm: number, kerfMm: number, demands: CutDemand[]): number =>
  cutPlan({ stickMm, kerfMm }, demands)!.length;
/** "0: 4x1150 2x550" for each stick: when it is opened and what is cut from it. */
const lines = (sticks: OpenedStick[] | null) =>
  sticks?.map((x) => `${x.openedAt}: ${x.cuts.map((c) => `${c.count}x${c.lengthMm}`).join(' ')}`);

describe('sticks needed', () => {
  // Gilmore and Gomory 1961 family of bounds, worked numbers from memory: 22590/6003 = 3.763, so 4; first fit takes 4 too.
  it('cuts 10 x 1150 and 20 x 550 from 4 sticks of 6000 with a kerf of 3', () => {
    expect(count(6000, 3, [demand(1150, 10), demand(550, 20)])).toBe(4);
  });

  // The same source: bound 2.099, so 3 sticks: 71 + 71 + 8.
  it('cuts 150 x 40 from 3 sticks of 3000 with a kerf of 2', () => {
    expect(lines(cutPlan({ stickMm: 3000, kerfMm: 2 }, [demand(40, 150)]))).toEqual([
      '0: 71x40',
      '0: 71x40',
      '0: 8x40',
    ]);
  });

  // The same source: the rooms alone say 3, but no two cuts share a stick: 5.
  it('cuts 5 x 1600 from 5 sticks of 3000', () => {
    expect(count(3000, 0, [demand(1600, 5)])).toBe(5);
    expect(fewestPossible([1600], [5], 3000)).toBe(5);
  });

  // Pieces per stick = floor((L + k)/(l + k)), arithmetic: 71 (75 without kerf) of 40, 5 (6 without kerf) of 500 in 3000.
  it.each([
    [40, 2, 71],
    [40, 0, 75],
    [500, 3, 5],
    [500, 0, 6],
  ])('cuts %i mm with a kerf of %i at most %i times from a stick of 3000', (lengthMm, kerfMm, most) => {
    expect(count(3000, kerfMm, [demand(lengthMm, most)])).toBe(1);
    expect(count(3000, kerfMm, [demand(lengthMm, most + 1)])).toBe(2);
  });

  // A cut as long as the stick asks for no saw; by hand.
  it('counts no kerf where nothing is cut off', () => {
    expect(count(3000, 3, [demand(3000, 2)])).toBe(2);
    expect(count(1000, 3, [demand(332.3, 3)])).toBe(2);
    expect(count(1000, 3, [demand(331.3, 3)])).toBe(1);
  });

  it('needs nothing for nothing', () => {
    expect(cutPlan({ stickMm: 3000, kerfMm: 3 }, [demand(500, 0)])).toEqual([]);
  });
});

describe('over time', () => {
  it('opens a stick at its first cut and uses what is left of it later', () => {
    const sticks = cutPlan({ stickMm: 1000, kerfMm: 0 }, [demand(400, 1, 50, 'B2'), demand(600, 1, 10, 'B1')]);
    expect(sticks).toEqual([
      {
        openedAt: 10,
        cuts: [
          { lengthMm: 600, count: 1, for: 'B1' },
          { lengthMm: 400, count: 1, for: 'B2' },
        ],
      },
    ]);
  });

  it('opens sticks no sooner than it has to', () => {
    const sticks = cutPlan({ stickMm: 1000, kerfMm: 0 }, [demand(500, 2, 10), demand(500, 2, 90)]);
    expect(lines(sticks)).toEqual(['10: 2x500', '90: 2x500']);
  });

  // By hand, sticks of 100, six in any case. Longest first, the six cuts of now open three: {50, 40}, {30, 30, 30} and {20},
  // which the 80 goes to. As they were asked for they fill two, {50, 30, 20} and {40, 30, 30}: the 80 opens the third.
  it('of two ways with as many sticks takes the one that opens them later', () => {
    const now = [50, 30, 20, 40, 30, 30].map((lengthMm) => demand(lengthMm, 1));
    const sticks = cutPlan({ stickMm: 100, kerfMm: 0 }, [...now, demand(80, 1, 1), demand(36, 5, 2)]);
    expect(lines(sticks)).toEqual([
      ...['0: 1x50 1x30 1x20', '0: 1x40 2x30', '1: 1x80'],
      ...['2: 2x36', '2: 2x36', '2: 1x36'],
    ]);
  });

  // By hand, sticks of 10: 3 now, 7 and 3, 7 later fit two sticks of {3, 7}, but then both are open now. With one now, the
  // two 3 go on it, and each 7 takes one of its own.
  it('keeps to the sticks that are there, even where that takes more in the end', () => {
    const demands = [demand(3, 2, 0), demand(7, 2, 5)];
    const oneAtFirst = (minute: number) => (minute < 5 ? 1 : Number.POSITIVE_INFINITY);
    expect(lines(cutPlan({ stickMm: 10, kerfMm: 0 }, demands))).toEqual(['0: 1x3 1x7', '0: 1x3 1x7']);
    expect(lines(cutPlan({ stickMm: 10, kerfMm: 0 }, demands, oneAtFirst))).toEqual(['0: 2x3', '5: 1x7', '5: 1x7']);
    expect(cutPlan({ stickMm: 10, kerfMm: 0 }, demands, () => 1)).toBeNull();
  });

  // By hand, sticks of 10, two there: {6, 4} and {5, 5}. Whoever puts a 5 on the same stick as nothing else needs a third.
  it('uses what a stick has left over for later cuts', () => {
    const demands = [demand(6, 1, 0), demand(5, 2, 1), demand(4, 1, 2)];
    const sticks = cutPlan({ stickMm: 10, kerfMm: 0 }, demands, () => 2);
    expect(lines(sticks)).toEqual(['0: 1x6 1x4', '1: 2x5']);
  });
});

/** As `lines`, an offcut with its length: "0 of 500: 1x500". */
const linesWithRests = (sticks: OpenedStick[] | null) =>
  sticks?.map(
    (x, i) => `${x.openedAt}${x.offcutMm === undefined ? '' : ` of ${x.offcutMm}`}:${lines(sticks)![i]!.split(':')[1]}`,
  );

describe('rests of opened sticks', () => {
  // The case that was found: one stick of 3 m, eight cuts of 190; four are made, 2232 are left (3000 - 4 x 192).
  it('are cut before a whole stick', () => {
    const rest = { stickMm: 3000, kerfMm: 2, offcuts: [2232] };
    expect(linesWithRests(cutPlan(rest, [demand(190, 4, 10)], () => 0))).toEqual(['10 of 2232: 4x190']);
    expect(linesWithRests(cutPlan(rest, [demand(190, 12, 10)]))).toEqual(['10 of 2232: 11x190', '10: 1x190']);
  });

  // By hand: three sticks, 1600 cut from each, leave 1400 three times and no 1600 more.
  it('are no help where each is too short, whatever they come to together', () => {
    const rests = { stickMm: 3000, kerfMm: 0, offcuts: [1400, 1400, 1400] };
    expect(linesWithRests(cutPlan(rests, [demand(1600, 1)]))).toEqual(['0: 1x1600']);
    expect(cutPlan(rests, [demand(1600, 1)], () => 0)).toBeNull();
  });

  it('that are shorter are cut first, and those of no use are left', () => {
    const rests = { stickMm: 3000, kerfMm: 3, offcuts: [1000, 400, 299] };
    expect(linesWithRests(cutPlan(rests, [demand(300, 1)]))).toEqual(['0 of 400: 1x300']);
    expect(linesWithRests(cutPlan(rests, [demand(300, 4)]))).toEqual(['0 of 1000: 3x300', '0 of 400: 1x300']);
  });

  it('that are cut to the end lose no kerf there', () => {
    expect(linesWithRests(cutPlan({ stickMm: 3000, kerfMm: 3, offcuts: [300] }, [demand(300, 1)]))).toEqual([
      '0 of 300: 1x300',
    ]);
  });

  // By hand: 5 now and 6 later. The 5 goes on the rest of 6, which it leaves the least on, and the 6 on the rest of 8.
  it('serve what comes later as well', () => {
    const rests = { stickMm: 10, kerfMm: 0, offcuts: [8, 6] };
    expect(linesWithRests(cutPlan(rests, [demand(5, 1, 0), demand(6, 1, 5)], () => 0))).toEqual([
      ...['0 of 6: 1x5', '5 of 8: 1x6'],
    ]);
  });
});

interface Instance {
  name: string;
  capacity: number;
  best: number;
  items: number[];
}

// OR-Library one-dimensional bin packing, sets u120 and u250 (tests/contract/SOURCES.md): `best` is the optimum.
describe('published packing instances', () => {
  const instances: Instance[] = JSON.parse(
    readFileSync(new URL('../../contract/bin-packing.json', import.meta.url), 'utf8'),
  );
  const sticksOf = ({ capacity, items }: Instance) =>
    count(
      capacity,
      0,
      items.map((x) => demand(x, 1)),
    );

  it('all 40 in as few sticks as anybody', () => {
    const over = instances.map((x) => ({ name: x.name, more: sticksOf(x) - x.best })).filter((x) => x.more !== 0);
    expect(instances).toHaveLength(40);
    expect(over).toEqual([]);
  });
});

describe('cuts with offcuts on hand', () => {
  it('take as few whole sticks as HiGHS proves to be needed', async () => {
    for (const one of sticksCases(12)) {
      const sticks = cutPlan(
        one,
        one.cuts.map((x) => demand(x.lengthMm, x.count)),
      )!;
      const whole = sticks.filter((x) => x.offcutMm === undefined).length;
      expect(whole).toBe(await sticksByHighs(one, whole));
    }
  });
});

const anyDemands = fc.array(
  fc.record({
    lengthMm: fc.constantFrom(190, 240, 300, 333.3, 480, 760, 1150, 1600),
    count: fc.integer({ min: 0, max: 12 }),
    at: fc.integer({ min: 0, max: 12 }),
    for: fc.constantFrom('B1', 'B2', 'order'),
  }),
  { maxLength: 25 },
);
const anyMaterial = fc.record({ stickMm: fc.constantFrom(1600, 2000, 3000), kerfMm: fc.constantFrom(0, 1.5, 3) });

const total = (cuts: { lengthMm: number; count: number; for: string }[]): Record<string, number> => {
  const sums: Record<string, number> = {};
  for (const x of cuts)
    if (x.count > 0) sums[`${x.lengthMm} ${x.for}`] = (sums[`${x.lengthMm} ${x.for}`] ?? 0) + x.count;
  return sums;
};

/** Taking cuts one by one in order of time, each from the shortest offcut that is long enough: written for the test alone. */
const oneByOne = (stickMm: number, kerfMm: number, demands: CutDemand[]): number[] => {
  const left: number[] = [];
  const openedAt: number[] = [];
  for (const x of [...demands].sort((a, b) => a.at - b.at))
    for (let n = 0; n < x.count; n++) {
      const fits = left.filter((room) => room + 1e-9 >= x.lengthMm);
      const at = fits.length > 0 ? left.indexOf(Math.min(...fits)) : left.push(stickMm) - 1;
      if (fits.length === 0) openedAt.push(x.at);
      left[at] = left[at]! - x.lengthMm - kerfMm;
    }
  return openedAt;
};

/** Every way to share out a few cuts, one after another on each stick that has the room or on a new one. */
const fewestOfAll = (lengths: number[], stickMm: number, kerfMm: number): number => {
  let fewest = lengths.length;
  const share = (next: number, left: number[]): void => {
    if (left.length >= fewest) return;
    if (next === lengths.length) {
      fewest = left.length;
      return;
    }
    const room = lengths[next]! + kerfMm;
    left.forEach((x, i) => {
      if (x >= room) share(next + 1, left.with(i, x - room));
    });
    share(next + 1, [...left, stickMm + kerfMm - room]);
  };
  share(0, []);
  return fewest;
};

/** Whole sticks at the least beside some rests: every way to share out a few cuts, on each rest or stick that has the room. */
const fewestBeside = (lengths: number[], rests: number[], stickMm: number, kerfMm: number): number => {
  let fewest = lengths.length;
  const share = (next: number, left: number[]): void => {
    const opened = left.length - rests.length;
    if (opened >= fewest) return;
    if (next === lengths.length) {
      fewest = opened;
      return;
    }
    const room = lengths[next]! + kerfMm;
    left.forEach((x, i) => {
      if (x >= room) share(next + 1, left.with(i, x - room));
    });
    share(next + 1, [...left, stickMm + kerfMm - room]);
  };
  share(
    0,
    rests.map((x) => x + kerfMm),
  );
  return fewest;
};

describe('any cuts', () => {
  it('take as few whole sticks beside rests as any way to share them out, where there are few', () => {
    const few = fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 8 });
    const rests = fc.array(fc.integer({ min: 1, max: 20 }), { maxLength: 4 });
    fc.assert(
      fc.property(
        few,
        rests,
        fc.integer({ min: 12, max: 24 }),
        fc.integer({ min: 0, max: 2 }),
        (lengths, offcuts, stickMm, kerfMm) => {
          const sticks = cutPlan(
            { stickMm, kerfMm, offcuts },
            lengths.map((x) => demand(x, 1)),
          )!;
          const whole = sticks.filter((x) => x.offcutMm === undefined);
          expect(whole.length).toBe(fewestBeside(lengths, offcuts, stickMm, kerfMm));
          const used = sticks.flatMap(({ offcutMm }) => offcutMm ?? []);
          for (const length of new Set(used))
            expect(used.filter((x) => x === length).length).toBeLessThanOrEqual(
              offcuts.filter((x) => x === length).length,
            );
        },
      ),
      { numRuns: 400 },
    );
  });

  it('keep to rests that are there, each cut once, and to their room', () => {
    const rests = fc.array(fc.constantFrom(190, 240, 500, 1000, 1599), { maxLength: 6 });
    fc.assert(
      fc.property(anyMaterial, anyDemands, rests, (material, demands, offcuts) => {
        const sticks = cutPlan({ ...material, offcuts }, demands)!;
        expect(total(sticks.flatMap((x) => x.cuts))).toEqual(total(demands));
        expect(sticks.filter((x) => x.offcutMm === undefined).length).toBeLessThanOrEqual(
          cutPlan(material, demands)!.length,
        );
        for (const stick of sticks) {
          const n = stick.cuts.reduce((sum, x) => sum + x.count, 0);
          const used = stick.cuts.reduce((sum, x) => sum + x.count * x.lengthMm, 0) + (n - 1) * material.kerfMm;
          expect(used).toBeLessThanOrEqual((stick.offcutMm ?? material.stickMm) + 1e-6);
        }
      }),
    );
  });

  it('each is on one stick, opened in time, and no stick is overfull', () => {
    fc.assert(
      fc.property(anyMaterial, anyDemands, (material, demands) => {
        const sticks = cutPlan(material, demands)!;
        expect(total(sticks.flatMap((x) => x.cuts))).toEqual(total(demands));
        for (const stick of sticks) {
          const n = stick.cuts.reduce((sum, x) => sum + x.count, 0);
          const used = stick.cuts.reduce((sum, x) => sum + x.count * x.lengthMm, 0) + (n - 1) * material.kerfMm;
          expect(used).toBeLessThanOrEqual(material.stickMm + 1e-6);
        }
        // Of one length for one batch the cuts needed first must not outnumber those on sticks opened by then.
        for (const x of demands) {
          const same = (y: { lengthMm: number; for: string }) => y.lengthMm === x.lengthMm && y.for === x.for;
          const needed = demands.filter((y) => same(y) && y.at <= x.at).reduce((sum, y) => sum + y.count, 0);
          const there = sticks.filter((s) => s.openedAt <= x.at).flatMap((s) => s.cuts.filter(same));
          expect(there.reduce((sum, y) => sum + y.count, 0)).toBeGreaterThanOrEqual(needed);
        }
      }),
    );
  });

  it('take no more sticks than one by one, and never fail where one by one keeps to what is there', () => {
    fc.assert(
      fc.property(anyMaterial, anyDemands, (material, demands) => {
        const opened = oneByOne(material.stickMm, material.kerfMm, demands);
        const sticksBy = (minute: number) => opened.filter((at) => at <= minute).length;
        expect(cutPlan(material, demands)!.length).toBeLessThanOrEqual(opened.length);
        const limited = cutPlan(material, demands, sticksBy)!;
        for (const x of demands)
          expect(limited.filter((s) => s.openedAt <= x.at).length).toBeLessThanOrEqual(sticksBy(x.at));
      }),
    );
  });

  it('take as few sticks as any way to share them out, where there are few', () => {
    const few = fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(few, fc.integer({ min: 12, max: 24 }), fc.integer({ min: 0, max: 2 }), (lengths, stickMm, kerfMm) => {
        const sticks = count(
          stickMm,
          kerfMm,
          lengths.map((x) => demand(x, 1)),
        );
        expect(sticks).toBe(fewestOfAll(lengths, stickMm, kerfMm));
      }),
      { numRuns: 200 },
    );
  });

  it('are cut the same way every time', () => {
    fc.assert(
      fc.property(anyMaterial, anyDemands, (material, demands) => {
        expect(cutPlan(material, demands)).toEqual(cutPlan(material, structuredClone(demands)));
      }),
      { numRuns: 20 },
    );
  });
});

// How long it takes stands in `npm run bench -- speed`.
it('3,000 cuts of 6 lengths over 500 instants are on as few sticks as can be, with little search', () => {
  const demands = manyCuts();
  const room = [...new Set(demands.map((x) => x.lengthMm + 3))].sort((a, b) => b - a);
  const wanted = room.map(() => 500);
  const sticks = cutPlan({ stickMm: 3000, kerfMm: 3 }, demands)!;
  expect(sticks.length).toBe(fewestPossible(room, wanted, 3003));
  expect(fewestSticks(room, wanted, 3003).steps).toBeLessThan(1000);
});
