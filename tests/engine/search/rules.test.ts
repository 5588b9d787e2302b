import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import type { Problem } from '../../../src/engine/decoder/problem.ts';
import {
  apparentTardinessFirst,
  earliestDueFirst,
  earliestWantedFirst,
  givenFirst,
  weightedShortestFirst,
  workDays,
} from '../../../src/engine/search/rules.ts';
import { smallYard } from '../../support/small-yard.ts';

interface Job {
  days: number;
  weight: number;
  /** Days from today; none where it is open. */
  due: number | undefined;
}

const today = dayNumber('2027-04-08');
const jobsAs = (jobs: Job[]): { problem: Problem; work: Float64Array } => ({
  problem: compile(
    smallYard({
      orders: jobs.map(({ weight, due }, i) => ({
        id: `J${i}`,
        weight,
        due: due === undefined ? undefined : dateOfDay(today + due),
        lines: [],
      })),
    }),
  ),
  work: Float64Array.from(jobs, (x) => x.days),
});

describe('five jobs on one machine', () => {
  // The example is a published one; orders and sums were worked out again from the rules: EDD (Jackson 1955), WSPT (Smith
  // 1956, Naval Research Logistics Quarterly 3:59-66; both from memory), ATC (Vepsalainen and Morton 1987, Management
  // Science 33(8) 1035-1047). Least sum of weighted tardiness, by enumeration: 18.
  const [p, w, d] = [
    [10, 6, 8, 4, 12],
    [3, 1, 4, 2, 1],
    [15, 20, 25, 10, 30],
  ];
  const { problem, work } = jobsAs(p!.map((days, i) => ({ days, weight: w![i]!, due: d![i] })));

  /** Completion times, greatest lateness, weighted tardiness and weighted completion of a sequence. */
  const figures = (sequence: Int32Array) => {
    const rows = [...sequence].map((j, i) => ({ j, c: sequence.slice(0, i + 1).reduce((n, k) => n + p![k]!, 0) }));
    return {
      order: rows.map((x) => x.j),
      c: rows.map((x) => x.c),
      lateMost: Math.max(...rows.map(({ j, c }) => c - d![j]!)),
      tardiness: rows.reduce((n, { j, c }) => n + w![j]! * Math.max(0, c - d![j]!), 0),
      completion: rows.reduce((n, { j, c }) => n + w![j]! * c, 0),
    };
  };

  test('earliest due date', () => {
    expect(figures(earliestDueFirst(problem))).toEqual({
      order: [3, 0, 1, 2, 4],
      c: [4, 14, 20, 28, 40],
      lateMost: 10,
      tardiness: 22,
      completion: 222,
    });
  });

  test('weighted shortest work; 2 and 3 tie', () => {
    expect(figures(weightedShortestFirst(problem, work))).toEqual({
      order: [2, 3, 0, 1, 4],
      c: [8, 12, 22, 28, 40],
      lateMost: 10,
      tardiness: 43,
      completion: 190,
    });
  });

  test.each([0.5, 1, 2])('apparent tardiness cost, looking %d mean works ahead', (lookAhead) => {
    expect(figures(apparentTardinessFirst(problem, work, lookAhead))).toEqual({
      order: [3, 0, 2, 1, 4],
      c: [4, 14, 22, 28, 40],
      lateMost: 10,
      tardiness: 18,
      completion: 206,
    });
  });

  test('apparent tardiness cost, looking 5 ahead', () => {
    expect(figures(apparentTardinessFirst(problem, work, 5))).toMatchObject({
      order: [3, 2, 0, 1, 4],
      c: [4, 12, 22, 28, 40],
      tardiness: 39,
      completion: 190,
    });
  });
});

describe('orders without a date', () => {
  const { problem, work } = jobsAs([
    { days: 1, weight: 6, due: undefined },
    { days: 1, weight: 1, due: 90 },
    { days: 1, weight: 9, due: undefined },
  ]);
  test('come last, the heavier first', () => expect([...earliestDueFirst(problem)]).toEqual([1, 2, 0]));
  test('come after one that is due today', () => {
    const due = jobsAs([
      { days: 1, weight: 6, due: undefined },
      { days: 1, weight: 1, due: 0 },
    ]);
    expect([...apparentTardinessFirst(due.problem, due.work, 2)]).toEqual([1, 0]);
    expect(work).toHaveLength(3);
  });
});

const late = fc.array(
  fc.record({
    days: fc.integer({ min: 1, max: 30 }),
    weight: fc.integer({ min: 1, max: 9 }),
    due: fc.integer({ min: -60, max: 0 }),
  }),
  { minLength: 1, maxLength: 8 },
);

test('once nothing is to spare the apparent tardiness rule is weighted shortest work', () => {
  fc.assert(
    fc.property(late, fc.constantFrom(0.5, 2, 5), (jobs, lookAhead) => {
      const { problem, work } = jobsAs(jobs);
      expect(apparentTardinessFirst(problem, work, lookAhead)).toEqual(weightedShortestFirst(problem, work));
    }),
    { numRuns: 60 },
  );
});

describe('days of work in an order', () => {
  const base = smallYard();
  // The mix is not stripped the day it is poured, so that each mould turns once in a session. Saturdays only: of the 61 days
  // from Thursday 8 April nine are Saturdays (10 April to 5 June), 9 / 61 turns a day. Two moulds: 4 pieces are
  // 4 / (2 x 9 / 61) = 13.56 days.
  const slow = [{ ...base.mixes[0]!, demouldMinutes: 1000 }];
  const lines = (quantity: number) => [{ casting: 'panel-900', quantity }];
  const workOf = (changes: Partial<YardFileInput>) => [...workDays(compile(smallYard({ mixes: slow, ...changes })))];

  test('by the turns of the moulds that make it', () => {
    const [four, eight, none] = workOf({
      orders: [
        { id: 'a', lines: lines(4) },
        { id: 'b', lines: lines(8) },
        { id: 'c', lines: [] },
      ],
    });
    expect(four).toBeCloseTo((4 / 2) * (61 / 9), 9);
    expect(eight).toBeCloseTo(2 * four!, 9);
    expect(none).toBe(0);
  });

  test('a mix that can be stripped in the session turns more often', () => {
    expect(workOf({ mixes: base.mixes })[0]).toBeLessThan(workOf({})[0]!);
  });
});

describe('dates given and dates asked for', () => {
  const orders = [{ wanted: 3 }, { due: 9, wanted: 2 }, { due: 5 }, {}, { wanted: 1 }, { due: 5, weight: 2 }] as {
    due?: number;
    wanted?: number;
    weight?: number;
  }[];
  const date = (day: number | undefined) => (day === undefined ? undefined : dateOfDay(today + day));
  const problem = compile(
    smallYard({
      orders: orders.map(({ due, wanted, weight = 1 }, i) => ({
        ...{ id: `J${i}`, weight, lines: [] },
        ...{ due: date(due), wanted: date(wanted) },
      })),
    }),
  );

  test('the date given, or else the one asked for', () => {
    expect([...earliestDueFirst(problem)]).toEqual([4, 0, 5, 2, 1, 3]);
  });

  test('all that was given first', () => {
    expect([...givenFirst(problem)]).toEqual([5, 2, 1, 4, 0, 3]);
  });

  test('what was asked for first', () => {
    expect([...earliestWantedFirst(problem)]).toEqual([4, 1, 0, 5, 2, 3]);
  });
});
