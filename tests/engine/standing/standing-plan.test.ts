import { describe, expect, test } from 'vitest';
import type { Order } from '../../../shared/order.ts';
import type { Keep, PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { planWithMemory } from '../../../src/engine/plan.ts';
import { quoteOrder } from '../../../src/engine/quote/quote.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { yardSeeds } from '../../support/property-seed.ts';
import { diceOf } from '../../support/random-yard/dice.ts';
import { randomYard } from '../../support/random-yard.ts';

const NEW = 'new order';

/** One more order for a few pieces that some mould of the yard can make. */
const newOrder = (yard: YardFile, seed: number): Order | null => {
  const dice = diceOf(seed);
  const makeable = yard.castings.filter(({ id }) =>
    yard.moulds.some(({ makes, condition }) => condition === 'ready' && makes.some(({ casting }) => casting === id)),
  );
  if (makeable.length === 0) return null;
  return { id: NEW, weight: 1, lines: [{ casting: dice.pick(makeable).id, quantity: dice.whole(1, 4) }] };
};

const poursOf = ({ batches, pours }: PlanFile): Keep => ({ batches, pours });
const lateOf = (plan: PlanFile) => new Map(plan.orders.map(({ id, daysLate }) => [id, daysLate]));
const dayOf = (plan: PlanFile, id: string) => plan.orders.find((order) => order.id === id)?.completesOn ?? null;
const faultsOf = (yard: YardFile, plan: PlanFile) => [
  ...audit(yard, plan).faults,
  ...refereePlan(yard, plan).map(({ rule, message }) => `referee: ${rule} ${message}`),
];

/** A yard in which every order has a date that was given, with the plan that stands, and what is told of one more order. */
const cases = new Map<number, ReturnType<typeof made>>();

const made = (seed: number) => {
  const yard = randomYard(seed, 'small');
  const given = yard.orders.filter(({ due }) => due !== undefined).map(({ id }) => id);
  const { plan, memory } = planWithMemory(yard, { effort: 'quick' });
  const standing = poursOf(plan);
  const order = newOrder(yard, seed);
  const asked = order && { order, earliestOn: quoteOrder(yard, order, { memory, standing }).earliestOn };
  return { yard, given, plan, memory, standing, asked };
};

/** Made once for all tests: the same plan and answer are looked at from three sides. */
const caseOf = (seed: number) => {
  const one = cases.get(seed) ?? made(seed);
  cases.set(seed, one);
  return one;
};

const SEEDS = yardSeeds(45, 7000);

describe('a plan that stands', { timeout: 120_000 }, () => {
  test('stays as it is when nothing has happened', () => {
    for (const seed of SEEDS) {
      const { yard, given, plan, memory, standing } = caseOf(seed);
      const again = planWithMemory(yard, { effort: 'quick', near: plan, memory, standing, given }).plan;
      expect(faultsOf(yard, again), `seed ${seed}`).toEqual([]);
      const days = (one: PlanFile) => one.orders.map(({ id, completesOn }) => [id, completesOn]).sort();
      expect(days(again), `seed ${seed}`).toEqual(days(plan));
    }
  });

  test('lets an order that is taken make no given date later, and keeps the day it was told', () => {
    let [told, taken] = [0, 0];
    for (const seed of SEEDS) {
      const { yard, given, plan, memory, standing, asked } = caseOf(seed);
      if (!asked || asked.earliestOn === null) continue;
      const { order, earliestOn } = asked;
      told++;
      const promised = { ...yard, orders: [...yard.orders, { ...order, due: earliestOn }] };
      const from = { effort: 'quick' as const, near: plan, memory, standing, given: [...given, NEW] };
      const after = planWithMemory(promised, from).plan;
      expect(faultsOf(promised, after), `seed ${seed}`).toEqual([]);
      const [was, is] = [lateOf(plan), lateOf(after)];
      for (const id of given)
        if (was.has(id)) expect(is.get(id), `seed ${seed}: ${id}`).toBeLessThanOrEqual(was.get(id)!);
      const on = dayOf(after, NEW);
      expect(on !== null && on <= earliestOn, `seed ${seed}: told ${earliestOn}, planned ${on}`).toBe(true);
      taken++;
    }
    expect(told).toBeGreaterThan(SEEDS.length / 3);
    expect(taken).toBe(told);
  });

  test('answers no later than with every one of its pours kept and the order placed round them', () => {
    for (const seed of SEEDS) {
      const { yard, memory, standing, asked } = caseOf(seed);
      if (!asked) continue;
      const { order, earliestOn } = asked;
      const round = quoteOrder({ ...yard, keep: standing }, order, { memory }).earliestOn;
      if (round !== null) expect(earliestOn !== null && earliestOn <= round, `seed ${seed}`).toBe(true);
    }
  });
});
