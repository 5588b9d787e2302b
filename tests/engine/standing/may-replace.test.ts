import { describe, expect, test } from 'vitest';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { decoderStateOf } from '../../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../../src/engine/decoder/dispatch.ts';
import { NONE } from '../../../src/engine/decoder/problem.ts';
import { earliestDueFirst } from '../../../src/engine/search/rules.ts';
import { type Candidate, candidateOf, harmOf, mayReplace } from '../../../src/engine/standing/standing-plan.ts';
import { handPlan, plannedYard } from '../../support/planned-yard.ts';

/** What the small yard's plan comes to, for two orders, with figures of our own in place of its own. */
const [one] = plannedYard().orders;
const problem = compile(plannedYard({ orders: [one!, { ...one!, id: '27-002' }] }));
const whole = candidateOf(
  decoderStateOf(problem, dispatchOf(new Int32Array(0))),
  dispatchOf(earliestDueFirst(problem)),
);
interface Figures {
  cost?: number;
  late?: number;
  afterWanted?: number;
  out?: number;
  daysLate?: number[];
  readyOn?: number[];
}
const plan = ({
  cost = 100,
  late = 0,
  afterWanted = 0,
  out = 0,
  daysLate = [0, 0],
  readyOn = [10, 10],
}: Figures = {}): Candidate => ({
  ...{ ...whole, daysLate, readyOn },
  evaluation: { unplannedWeight: out, weightedDaysLate: late, weightedDaysAfterWanted: afterWanted, cost, lateness: 0 },
});
const may = (was: Candidate, is: Candidate, given: string[] = []) => mayReplace(was, is, new Set(given));

describe('a plan may take the place of the one that stands', () => {
  test('where it is less late, or leaves out less, though a planned day moves', () => {
    const later = [10, 17];
    expect(may(plan({ late: 3 }), plan({ late: 1, readyOn: later }))).toBe(true);
    expect(may(plan({ out: 1 }), plan({ late: 3, readyOn: later }))).toBe(true);
    expect(may(plan({ late: 1 }), plan({ late: 3, cost: 50 }))).toBe(false);
  });

  test('where less is after the dates wanted, unless a given date or more is later', () => {
    const [was, later] = [plan({ late: 3, afterWanted: 9, daysLate: [0, 3] }), [17, 10]];
    expect(may(was, plan({ late: 3, afterWanted: 4, daysLate: [0, 3], readyOn: later }))).toBe(false);
    expect(may(was, plan({ late: 3, afterWanted: 8, daysLate: [0, 3], readyOn: [9, 10] }))).toBe(true);
    expect(may(was, plan({ late: 4, afterWanted: 0, daysLate: [0, 4] }))).toBe(false);
    expect(
      may(was, plan({ late: 3, afterWanted: 4, daysLate: [1, 2] }), ['27-001', was.problem.yard.orders[0]!.id]),
    ).toBe(false);
  });

  test('not where an order falls out of it, or a date that was given is later', () => {
    const was = plan({ late: 9, daysLate: [0, 9] });
    expect(may(was, plan({ late: 1, readyOn: [10, NONE] }))).toBe(false);
    const other = plan({ late: 1, daysLate: [1, 0] });
    expect(may(was, other, ['27-001'])).toBe(false);
    expect(may(was, other, ['27-002'])).toBe(true);
    expect(may(plan({ out: 1, readyOn: [10, NONE] }), plan())).toBe(true);
  });

  test('only to save, where that is worth telling of and moves no planned day later', () => {
    expect(may(plan(), plan({ cost: 95 }))).toBe(true);
    expect(may(plan(), plan({ cost: 96 }))).toBe(false);
    expect(may(plan(), plan({ cost: 50, readyOn: [10, 17] }))).toBe(false);
    expect(may(plan({ readyOn: [10, 17] }), plan({ cost: 50 }))).toBe(true);
  });
});

/* By hand: an order 2 days later than it stood, one 1 day late that is new, and one that falls out, which counts a year. */
test('harm is what a plan does to dates that were given, as they stood', () => {
  const [order] = handPlan().orders;
  const near = { orders: [{ ...order!, daysLate: 1 }] };
  const weight = one!.weight;
  const harm = (figures: Figures, given: string[]) => harmOf(plan(figures), near, new Set(given)) / weight;
  expect(harm({ daysLate: [3, 1] }, ['27-001', '27-002'])).toBe(3);
  expect(harm({ daysLate: [3, 1] }, ['27-002'])).toBe(1);
  expect(harm({ daysLate: [1, 0] }, ['27-001', '27-002'])).toBe(0);
  expect(harm({ daysLate: [0, 0] }, ['27-001'])).toBe(0);
  expect(harm({ daysLate: [0, 0], readyOn: [NONE, 10] }, ['27-001'])).toBe(365);
});
