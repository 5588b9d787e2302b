import { expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { planWithMemory } from '../../../src/engine/plan.ts';
import { promiseDay } from '../../../src/engine/quote/promise.ts';
import { quoteOrder } from '../../../src/engine/quote/quote.ts';
import { keepOfPlan } from '../../../src/engine/standing/keep-of-plan.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';

/** Two pieces of the first casting that a mould makes. */
const newOrder = ({ castings, moulds }: YardFile) => {
  const made = castings.find(({ id }) =>
    moulds.some(({ condition, makes }) => condition === 'ready' && makes.some(({ casting }) => casting === id)),
  );
  return made && { id: 'new', weight: 1, lines: [{ casting: made.id, quantity: 2 }] };
};

test('an order that is taken for the day it was told takes nothing that others have in hand', () => {
  let taken = 0;
  for (const seed of yardSeeds(16, 6100)) {
    const random = randomYard(seed, 'small');
    const yard = { ...random, yard: { ...random.yard, sessionsInHand: 1 } };
    const order = newOrder(yard);
    if (!order) continue;
    const { plan, memory } = planWithMemory(yard, { effort: 'quick' });
    const standing = keepOfPlan(plan);
    const { promiseOn: due } = quoteOrder(yard, order, { memory, standing });
    if (due === null) continue;
    const given = [...yard.orders.filter((one) => one.due !== undefined).map(({ id }) => id), 'new'];
    const options = { effort: 'quick', near: plan, memory, standing, given } as const;
    const after = planWithMemory({ ...yard, orders: [...yard.orders, { ...order, due }] }, options).plan;
    const problem = compile(yard);
    /** Days for which a promise could be made anew, by order. */
    const days = new Map(plan.orders.map((one) => [one.id, promiseDay(problem, minuteOf(one.completesAt))]));
    for (const { id, completesAt } of after.orders) {
      const dueDay = problem.orders[yard.orders.findIndex((one) => one.id === id)]?.dueDay;
      const before = days.get(id);
      if (dueDay === undefined || before === undefined || before === null || before > dueDay) continue;
      expect(promiseDay(problem, minuteOf(completesAt)), `seed ${seed}: ${id}`).toBeLessThanOrEqual(dueDay);
    }
    taken++;
  }
  expect(taken).toBeGreaterThan(8);
}, 120_000);
