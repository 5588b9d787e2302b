import { describe, expect, test } from 'vitest';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { lateBound } from '../../../src/engine/bound/bound.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const order = (id: string, quantity: number, due: string, weight: number) => ({
  id,
  due,
  weight,
  lines: [{ casting: 'panel-900', quantity }],
});
const boundOf = (changes: Partial<YardFileInput>, aim: number) => {
  const yard = smallYard(changes);
  return lateBound(
    compile(yard),
    yard.orders.map((_, o) => o),
    aim,
  );
};

describe('by the moulds', () => {
  // Two moulds, one turn a Saturday: two pieces on the 17th, two on the 24th. Both orders of two wanted on the 17th: one of
  // them, the lighter, is a week late.
  const late = {
    mixes: [{ ...base.mixes[0]!, demouldMinutes: 1000 }],
    orders: [order('a', 2, '2027-04-17', 1), order('b', 2, '2027-04-17', 3)],
  };

  test('the lighter order is a week late', () => {
    expect(boundOf(late, 7)).toBeCloseTo(7, 4);
    const plan = planYard(smallYard(late), { effort: 'quick' });
    expect(plan.score.weightedDaysLate).toBe(7);
  });

  test('never more than some plan reaches', () => expect(boundOf(late, 3)).toBeLessThanOrEqual(3));
});

describe('by the hours', () => {
  // Twelve moulds, an hour on Saturday the 10th, three hours on those after it: twelve pieces are 12 x (12 + 7 + 8) = 324
  // minutes of work at the least, 60 of them on the 10th and 180 on the 17th: the order is not whole before the 24th.
  const moulds = Array.from({ length: 12 }, (_, i) => ({ ...base.moulds[0]!, id: `900 no. ${i + 1}` }));
  const inMould = { casting: 'panel-900', filledAt: '2027-04-07T11:00:00+01:00' };
  const changes: Partial<YardFileInput> = {
    moulds,
    work: [{ ...base.work[0]!, from: '2027-04-17', end: '11:00' }],
    extra: [{ date: '2027-04-10', start: '08:00', end: '09:00' }],
    orders: [order('a', 12, '2027-04-17', 2)],
  };

  test('an order is late though there are moulds enough', () => {
    const bound = boundOf(changes, 14);
    expect(bound).toBeGreaterThan(13.99);
    expect(bound).toBeLessThanOrEqual(14);
  });

  // Their labour is spent: a bound that counted it again would call an order late that is not.
  test.each<[string, Partial<YardFileInput>]>([
    ['pieces are there', { finished: [{ casting: 'panel-900', count: 12 }] }],
    ['pieces are in moulds', { inMould: [{ ...inMould, mould: '900 no. 1' }] }],
    ['moulds are set up', { moulds: moulds.map((mould) => ({ ...mould, prepped: true })) }],
  ])('nothing is proved where %s', (_, more) => expect(boundOf({ ...changes, ...more }, 14)).toBe(0));
});

test('never above what a plan of a random yard reaches, and often more than nothing', () => {
  let [proved, late] = [0, 0];
  for (const seed of yardSeeds(24)) {
    const yard = randomYard(seed);
    const plan = planYard(yard, { effort: 'quick' });
    const left = new Set(plan.unplanned.map((x) => x.order));
    const orders = yard.orders.flatMap((o, i) => (left.has(o.id) ? [] : [i]));
    // Asked to aim higher than the plan: a bound that is one stays below the plan all the same.
    const bound = lateBound(compile(yard), orders, 2 * plan.score.weightedDaysLate + 10);
    expect(bound, `seed ${seed}`).toBeLessThanOrEqual(plan.score.weightedDaysLate + 1e-6);
    if (plan.score.weightedDaysLate > 0) late++;
    if (bound > 0) proved++;
  }
  expect(late).toBeGreaterThan(6);
  expect(proved).toBeGreaterThan(late / 2);
});
