import { describe, expect, test } from 'vitest';
import type { PlanFile, PlanOrder, Score } from '../../../shared/plan.ts';
import { isWorthMoving } from '../../../src/usecases/plan/worth-moving.ts';
import { handPlan, plannedYard } from '../../support/planned-yard.ts';

const base = plannedYard();
/** A batch is worth two days, a bag half of one. */
const yard = { ...base, yard: { ...base.yard, batchWorthDays: 2, bagWorthDays: 0.5 } };

const order = (id: string, completesOn: string, daysLate = 0): PlanOrder => ({
  ...handPlan().orders[0]!,
  ...{ id, completesOn, daysLate },
});
const planOf = (orders: PlanOrder[], score: Partial<Score> = {}): PlanFile => {
  const figures = {
    unplannedWeight: 0,
    weightedDaysLate: 0,
    weightedDaysAfterWanted: 0,
    batches: 10,
    bags: 10,
    weightedCompletionDays: 100,
  };
  return { ...handPlan(), orders, score: { ...figures, ...score } };
};
const [SAT, NEXT] = ['2027-04-10', '2027-04-17'];
const one = [order('a', SAT)];
const worth = (was: PlanFile, is: PlanFile, given: string[] = []) => isWorthMoving(yard, was, is, new Set(given));

describe('a plan found later may take the place of the one that stands', () => {
  test('where it is less late, though a planned day moves', () => {
    const late = planOf([order('a', SAT, 3), order('b', SAT)], { weightedDaysLate: 3 });
    const less = planOf([order('a', SAT, 1), order('b', NEXT)], { weightedDaysLate: 1 });
    expect(worth(late, less)).toBe(true);
    expect(worth(less, late)).toBe(false);
  });

  test('where it leaves out less, though it is later', () => {
    const out = planOf(one, { unplannedWeight: 1 });
    const later = planOf(one, { weightedDaysLate: 4 });
    expect(worth(out, later)).toBe(true);
    expect(worth(later, out)).toBe(false);
  });

  // By hand: five days are worth telling of. Two batches are four, two bags are one.
  test('where it saves enough to be worth telling of', () => {
    const standing = planOf(one);
    expect(worth(standing, planOf(one, { weightedCompletionDays: 95 }))).toBe(true);
    expect(worth(standing, planOf(one, { weightedCompletionDays: 95.1 }))).toBe(false);
    expect(worth(standing, planOf(one, { batches: 8, bags: 8 }))).toBe(true);
    expect(worth(standing, planOf(one, { batches: 8, bags: 9 }))).toBe(false);
  });
});

describe('it may not', () => {
  const saving = { weightedCompletionDays: 50 };

  test('where an order falls out of it, however much less late it is', () => {
    const standing = planOf([...one, order('b', SAT, 9)], { weightedDaysLate: 9 });
    expect(worth(standing, planOf(one))).toBe(false);
  });

  test('where a date that was given is later, however much less late the others are', () => {
    const standing = planOf([order('a', SAT), order('b', SAT, 9)], { weightedDaysLate: 9 });
    const other = planOf([order('a', NEXT, 1), order('b', SAT, 0)], { weightedDaysLate: 1 });
    expect(worth(standing, other, ['a'])).toBe(false);
    expect(worth(standing, other, ['b'])).toBe(true);
  });

  test('where a planned day is later only to save', () => {
    expect(worth(planOf(one), planOf([order('a', NEXT)], saving))).toBe(false);
    expect(worth(planOf([order('a', NEXT)]), planOf(one, saving))).toBe(true);
  });

  test('but an order that stands nowhere in the present plan moves no day', () => {
    expect(worth(planOf(one), planOf([...one, order('new', NEXT)], saving))).toBe(true);
  });
});
