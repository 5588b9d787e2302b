import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Job, weightedLateBound } from '../../../src/engine/bound/late-bound.ts';
import { NEVER } from '../../../src/engine/decoder/problem.ts';

const oneADay = (days: number) => Int32Array.from({ length: days }, (_, k) => k + 1);

/** Weighted days late of jobs done whole, one after another. */
const lateIn = (jobs: Job[], days: Int32Array): number => {
  let slot = 0;
  return jobs.reduce((late, job) => {
    slot += job.slots;
    return late + job.weight * Math.max(0, days[slot - 1]! - job.dueDay);
  }, 0);
};
const sequencesOf = (jobs: Job[]): Job[][] =>
  jobs.length < 2
    ? [jobs]
    : jobs.flatMap((job, i) => sequencesOf(jobs.filter((_, k) => k !== i)).map((rest) => [job, ...rest]));

describe('jobs that share one resource', () => {
  // One slot a day: the heavy one is done on day 2, in time, the light one on day 4, two days late. The other way about it
  // would be 3 x 2.
  test('two of two slots: the light one is two days late', () => {
    const jobs = [
      { slots: 2, weight: 1, dueDay: 2 },
      { slots: 2, weight: 3, dueDay: 2 },
    ];
    expect(Math.min(...sequencesOf(jobs).map((x) => lateIn(x, oneADay(4))))).toBe(2);
    expect(weightedLateBound(jobs, oneADay(4), 2)).toBeCloseTo(2, 4);
  });

  test('one job alone is as late as its last slot', () => {
    expect(weightedLateBound([{ slots: 3, weight: 2, dueDay: 1 }], oneADay(3), 4)).toBeCloseTo(4, 6);
  });

  test('nothing is proved of jobs without a date, of none, or below nothing', () => {
    expect(weightedLateBound([{ slots: 2, weight: 1, dueDay: NEVER }], oneADay(2), 5)).toBe(0);
    expect(weightedLateBound([], oneADay(2), 5)).toBe(0);
    expect(weightedLateBound([{ slots: 2, weight: 1, dueDay: 0 }], oneADay(2), 0)).toBe(0);
  });

  test('nothing is proved where the slots do not go round', () => {
    expect(weightedLateBound([{ slots: 3, weight: 1, dueDay: 0 }], oneADay(2), 5)).toBe(0);
  });
});

const job = fc.record({
  slots: fc.integer({ min: 1, max: 5 }),
  weight: fc.integer({ min: 1, max: 9 }),
  dueDay: fc.integer({ min: 0, max: 20 }),
});

test('the bound is never above the best sequence, found by trying all', () => {
  fc.assert(
    fc.property(
      fc.array(job, { minLength: 1, maxLength: 5 }),
      fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 25, maxLength: 25 }),
      fc.integer({ min: 0, max: 40 }),
      (jobs, gaps, slack) => {
        const total = jobs.reduce((n, x) => n + x.slots, 0);
        let day = 0;
        const days = Int32Array.from(gaps.slice(0, total), (gap) => {
          day += gap;
          return day;
        });
        // Taking turns gains nothing on one machine without release dates: the best plan does one job after another.
        const best = Math.min(...sequencesOf(jobs).map((x) => lateIn(x, days)));
        expect(weightedLateBound(jobs, days, best + slack)).toBeLessThanOrEqual(best + 1e-6);
      },
    ),
    { numRuns: 150 },
  );
});

// OR-Library, single-machine total weighted tardiness (J. E. Beasley; Crauwels, Potts and Van Wassenhove, INFORMS Journal
// on Computing 10(3), 1998): `best` is the optimum or the best known.
describe('published instances of 40 jobs', () => {
  const all = JSON.parse(readFileSync(new URL('../../contract/weighted-tardiness.json', import.meta.url), 'utf8')) as {
    name: string;
    best: number;
    p: number[];
    w: number[];
    d: number[];
  }[];
  const NAMES = ['wt40_001', 'wt40_011', 'wt40_016', 'wt40_026', 'wt40_041', 'wt40_066', 'wt40_091', 'wt40_116'];
  const instances = all.filter((x) => NAMES.includes(x.name));
  const bounds = instances.map(({ p, w, d, best }) => {
    const jobs = p.map((slots, i) => ({ slots, weight: w[i]!, dueDay: d[i]! }));
    return weightedLateBound(jobs, oneADay(p.reduce((n, x) => n + x, 0)), best);
  });

  test('are there', () => expect(instances.map((x) => x.name)).toEqual(NAMES));

  test('the bound of each is at most the best known', () => {
    expect(instances.filter(({ best }, i) => bounds[i]! > best + 1e-6)).toEqual([]);
  });

  test('all together they prove at least half of it', () => {
    const sum = (list: number[]) => list.reduce((n, x) => n + x, 0);
    expect(sum(bounds)).toBeGreaterThan(0.5 * sum(instances.map((x) => x.best)));
  });
});
