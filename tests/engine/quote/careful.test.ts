import { describe, expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { YardRecord } from '../../../shared/yard-record.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { NEVER } from '../../../src/engine/decoder/problem.ts';
import { planWithMemory } from '../../../src/engine/plan.ts';
import { completesUnder } from '../../../src/engine/quote/completes-under.ts';
import { askingFor, keepingInHand, presentOf, withOrderAt } from '../../../src/engine/quote/present.ts';
import { promiseDay } from '../../../src/engine/quote/promise.ts';
import { quoteOrder } from '../../../src/engine/quote/quote.ts';
import { keepOfPlan } from '../../../src/engine/standing/keep-of-plan.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';

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

/** Worked on all days but Sundays, and handed over on Sundays; a panel is poured on Thursday the 8th and ready on the 9th. */
describe('where things are handed over on Sundays', () => {
  const yardDueOn = (due: string, record?: YardRecord): YardFile => {
    const { yard, mixes } = smallYard();
    return smallYard({
      yard: { ...yard, handoverDays: ['SU'], sessionsInHand: 1 },
      work: [{ rule: 'FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR,SA', from: '2027-01-02', start: '08:00', end: '12:00' }],
      mixes: [{ ...mixes[0]!, demouldMinutes: 600 }],
      orders: [{ id: '27-001', weight: 3, due, lines: [{ casting: 'panel-900', quantity: 1 }] }],
      ...(record ? { record } : {}),
    });
  };
  const inHandUntil = (yard: YardFile): string => {
    const [until] = presentOf(yard).inHandUntil;
    return compile(yard).calendar.instantText(until!);
  };

  test('an order behind one that has a session in hand takes nothing of it', () => {
    const yard = yardDueOn('2027-04-11');
    const present = presentOf(yard);
    const asking = askingFor(yard, { id: 'asked', weight: 1, lines: [{ casting: 'panel-900', quantity: 1 }] });
    const behind = withOrderAt(present, 1, asking.added);
    // Complete on Friday and to be so when Saturday's session begins; both are handed over on Sunday.
    expect(inHandUntil(yard)).toBe('2027-04-10T08:00:00+01:00');
    expect(completesUnder(asking, behind, keepingInHand(present), 'given')).toBeLessThan(NEVER);
  });

  test('what a promise by odds counts on is left to it: all that it has in hand, up to six sessions', () => {
    const record: YardRecord = {
      pieces: [{ mould: '900 no. 1', casting: 'panel-900', of: 1000, mend: 0, scrap: 50 }],
      sessions: { bad: 10, of: 1000 },
      deliveries: [],
    };
    const little = { ...record, sessions: { bad: 1, of: 99 } };
    expect(inHandUntil(yardDueOn('2027-04-18'))).toBe('2027-04-17T08:00:00+01:00');
    expect(inHandUntil(yardDueOn('2027-04-18', little))).toBe('2027-04-17T08:00:00+01:00');
    // Six sessions from Monday on; of those before the Sunday of the 11th one is left.
    expect(inHandUntil(yardDueOn('2027-04-18', record))).toBe('2027-04-12T08:00:00+01:00');
    expect(inHandUntil(yardDueOn('2027-04-25', record))).toBe('2027-04-19T08:00:00+01:00');
    expect(inHandUntil(yardDueOn('2027-04-11', record))).toBe('2027-04-10T08:00:00+01:00');
  });
});
