import { describe, expect, it } from 'vitest';
import { planWithMemory } from '../../../src/engine/plan.ts';
import { quoteOrder } from '../../../src/engine/quote/quote.ts';
import { keepOfPlan } from '../../../src/engine/standing/keep-of-plan.ts';
import { smallYard } from '../../support/small-yard.ts';
import { compareDates } from './compare.ts';
import { exactDates } from './exact-dates.ts';
import { tinyYard } from './tiny-yard.ts';

const asked = { id: 'asked', weight: 1, lines: [{ casting: 'panel-900', quantity: 2 }] };

/** One mould of the small yard, whose one order is for a single panel. */
const oneMould = smallYard({
  moulds: [{ id: '900 no. 1', makes: [{ casting: 'panel-900' }], setFor: 'panel-900', condition: 'ready' }],
  orders: [{ id: '27-001', due: '2027-04-10', lines: [{ casting: 'panel-900', quantity: 1 }] }],
});

describe('dates by enumeration', () => {
  it('are those worked out by hand', () => {
    // A turn: 12 to set up, 10 to mix, 7 to fill, 75 in the mould, 8 to strip: 1:52, and 6 more to clean after the first. Two
    // turns end at 11:50, a third would end in the afternoon. The order given has the first one, two are left for the week after.
    const exact = exactDates(oneMould, asked, [0]);
    expect(exact).toMatchObject({ earliestOn: '2027-04-17', ifFirstOn: '2027-04-10', weightedDaysLate: 0 });
    expect(exact.earliestPlan?.orders.map(({ id, completesAt }) => [id, completesAt])).toEqual([
      ['27-001', '2027-04-10T09:52:00+01:00'],
      ['asked', '2027-04-17T09:58:00+01:00'],
    ]);
  });

  it('take another order for one that may be a week late', () => {
    expect(exactDates(oneMould, asked, [7]).earliestOn).toBe('2027-04-10');
  });

  it('are kept where the order is then taken with the day it was told, and nobody is later', () => {
    for (let seed = 100; seed < 160; seed++) {
      const { yard, order } = tinyYard(seed);
      const { plan, memory } = planWithMemory(yard, { effort: 'quick' });
      const standing = keepOfPlan(plan);
      const { earliestOn } = quoteOrder(yard, order, { memory, standing });
      if (earliestOn === null) continue;
      const taken = { ...yard, orders: [...yard.orders, { ...order, due: earliestOn }] };
      const given = taken.orders.map(({ id }) => id);
      const after = planWithMemory(taken, { effort: 'quick', near: plan, memory, standing, given }).plan;
      const days = new Map(after.orders.map(({ id, daysLate }) => [id, daysLate]));
      expect(days.get('asked'), `seed ${seed}`).toBe(0);
      for (const { id, daysLate } of plan.orders)
        expect(days.get(id), `seed ${seed}, ${id}`).toBeLessThanOrEqual(daysLate);
    }
  });

  it('come with plans that pass audit and referee, and no planner is better', () => {
    for (let seed = 0; seed < 6; seed++) {
      const { yard, order } = tinyYard(seed);
      const compared = compareDates(yard, order);
      expect(compared?.faults, `seed ${seed}`).toEqual([]);
      expect(compared?.mismatches.filter(({ isImpossible }) => isImpossible)).toEqual([]);
      const isSooner = compared?.mismatches.some(({ figure }) => figure === 'earliestOn');
      expect(compared?.isProven && isSooner, `seed ${seed}: proven, and not the earliest`).toBe(false);
    }
  });
});
