import { expect, test } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import type { FixedPlan } from '../../../src/usecases/plan/fixed-plan.ts';
import { isNoWorse } from '../../../src/usecases/plan/kept-later.ts';
import { handPlan, plannedYard } from '../../support/planned-yard.ts';

interface Figures {
  daysLate?: number;
  out?: number;
  late?: number;
  afterWanted?: number;
  completion?: number;
  /** What was fixed and could not stay. */
  gone?: number;
}

const near = handPlan();
const yard = plannedYard();

const made = ({ daysLate, out = 0, late = 0, afterWanted = 0, completion = 2, gone = 0 }: Figures) => {
  const orders = daysLate === undefined ? [] : near.orders.map((order) => ({ ...order, daysLate }));
  const score = {
    ...near.score,
    ...{ unplannedWeight: out, weightedDaysLate: late, weightedDaysAfterWanted: afterWanted },
    weightedCompletionDays: completion,
  };
  const plan: PlanFile = { ...near, orders, score };
  const drop = { at: '2027-04-10T09:05:00+01:00', moulds: [], reason: 'it was too late' };
  const fixed: FixedPlan = { keep: { batches: [], pours: [] }, gone: Array.from({ length: gone }, () => drop) };
  return { plan, fixed };
};

const isBetter = (one: Figures, other: Figures, given = ['27-001']) => {
  const beside = { near, yard, given };
  const [a, b] = [made(one), made(other)];
  return isNoWorse(a, b, beside) && !isNoWorse(b, a, beside);
};

test.each([
  ['spares a date that was given', { daysLate: 0, out: 9, late: 9 }, { daysLate: 1 }],
  ['keeps an order in that was given a date', { daysLate: 7, out: 9 }, {}],
  ['leaves less out', { daysLate: 0, late: 9 }, { daysLate: 0, out: 1 }],
  ['is less late', { daysLate: 0, late: 1, afterWanted: 9 }, { daysLate: 0, late: 2 }],
  ['is nearer to dates wanted', { daysLate: 0, completion: 9 }, { daysLate: 0, afterWanted: 1 }],
  ['has the orders sooner', { daysLate: 0, completion: 1, gone: 1 }, { daysLate: 0 }],
  ['keeps more of what was fixed', { daysLate: 0 }, { daysLate: 0, gone: 1 }],
] satisfies [string, Figures, Figures][])('a plan goes before another where it %s', (_how, one, other) => {
  expect(isBetter(one, other)).toBe(true);
});

test('plans that do the same are no worse than each other', () => {
  expect(isNoWorse(made({ daysLate: 0 }), made({ daysLate: 0 }), { near, yard, given: ['27-001'] })).toBe(true);
  // A date that nobody was given harms nobody.
  expect(isBetter({ daysLate: 0 }, { daysLate: 1 }, [])).toBe(false);
});
