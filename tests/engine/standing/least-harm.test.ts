import { expect, test } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { planWithMemory } from '../../../src/engine/plan.ts';
import { leastHarm } from '../../../src/engine/standing/least-harm.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';

type Near = Pick<PlanFile, 'orders'>;

const GIVEN = new Set(['27-001']);
const near = (daysLate: number): Near => ({
  orders: [{ id: '27-001', daysLate }] as unknown as PlanFile['orders'],
});

/** Two panels, of which one mould is left that takes a turn in 75 minutes; handed over on Saturdays, given for 10 April. */
const least = (changes: Parameters<typeof smallYard>[0], daysLate = 0, aim = 1000): number =>
  leastHarm(compile(smallYard(changes)), near(daysLate), GIVEN, aim);

const { moulds, orders } = smallYard();
const noMould = moulds.map((mould) => ({ ...mould, condition: 'damaged' as const }));
const broken = noMould.map((mould) => ({ ...mould, repairedOn: '2027-04-20' }));
const weight = smallYard().orders[0]!.weight;

test('a date that can be kept may do no harm', () => {
  expect(least({})).toBe(0);
});

test('an order that nothing makes counts as a year', () => {
  expect(least({ moulds: noMould })).toBe(365 * weight);
});

test.each([
  ['in time so far', 0, 14],
  ['late by a week already', 7, 7],
  ['late by more already', 21, 0],
])('moulds that are mended for the 24th make it later, of one that was %s', (_how, was, days) => {
  expect(least({ moulds: broken }, was)).toBe(days * weight);
});

test('of orders for which the goods cannot be had one is left out, the one that may slip most at best', () => {
  const two = [orders[0]!, { ...orders[0]!, id: '27-002', weight: 0.5 }];
  const materials = smallYard().materials.map((one) => (one.id === 'mortar' ? { ...one, onHand: 1 } : one));
  const problem = compile(smallYard({ orders: two, materials }));
  const both = new Set(two.map(({ id }) => id));
  expect(leastHarm(problem, near(0), both, 1000)).toBe(365 * 0.5);
  expect(leastHarm(problem, near(0), GIVEN, 1000)).toBe(0);
});

test('what no date was given for does none', () => {
  expect(leastHarm(compile(smallYard({ moulds: noMould })), near(0), new Set(), 10)).toBe(0);
});

test('orders that share moulds do harm together that none does alone', () => {
  const many = Array.from({ length: 12 }, (_, i) => ({ ...orders[0]!, id: `27-${i}` }));
  const problem = compile(smallYard({ orders: many }));
  const given = new Set(many.map(({ id }) => id));
  expect(leastHarm(problem, { orders: [] }, given, 12 * 60 * weight)).toBeGreaterThan(7 * weight);
});

test('the least of them may be left out instead', () => {
  const many = Array.from({ length: 12 }, (_, i) => ({
    ...orders[0]!,
    id: `27-${i}`,
    weight: i === 0 ? 0.01 : weight,
  }));
  const given = new Set(many.map(({ id }) => id));
  const problem = compile(smallYard({ orders: many }));
  expect(leastHarm(problem, { orders: [] }, given, 12 * 60 * weight)).toBeLessThanOrEqual(3.65);
});

test('what is ready before its day makes up for no other', () => {
  const early = { ...orders[0]!, id: '27-002', due: '2027-05-08', lines: [] };
  const problem = compile(smallYard({ moulds: broken, orders: [orders[0]!, early] }));
  expect(leastHarm(problem, near(0), new Set(['27-001', '27-002']), 1000)).toBe(14 * weight);
});

test('no plan of a random yard does less', () => {
  let bounded = 0;
  for (const seed of yardSeeds(60, 700)) {
    const random = randomYard(seed, 'small');
    // Dates that are hard to keep, and for a third of the orders so already.
    const yard = { ...random, orders: random.orders.map((order) => ({ ...order, due: random.yard.now.slice(0, 10) })) };
    const { plan } = planWithMemory(yard, { effort: 'quick' });
    const before = { orders: plan.orders.map((order, i) => ({ ...order, daysLate: i % 3 ? 0 : order.daysLate })) };
    const was = new Map(before.orders.map(({ id, daysLate }) => [id, daysLate]));
    const is = new Map(plan.orders.map(({ id, daysLate }) => [id, daysLate]));
    const harm = yard.orders.reduce(
      (sum, order) =>
        sum + order.weight * (is.has(order.id) ? Math.max(0, is.get(order.id)! - (was.get(order.id) ?? 0)) : 365),
      0,
    );
    if (harm === 0) continue;
    const bound = leastHarm(compile(yard), before, new Set(yard.orders.map(({ id }) => id)), harm);
    expect(bound, `seed ${seed}`).toBeLessThanOrEqual(harm + 1e-6);
    if (bound > 0) bounded++;
  }
  expect(bounded).toBeGreaterThan(10);
}, 60_000);
