import { describe, expect, test } from 'vitest';
import type { Order } from '../../../shared/order.ts';
import type { YardFile, YardFileInput } from '../../../shared/yard-file.ts';
import { DEFAULT_CHOICES } from '../../../src/engine/decoder/dispatch.ts';
import { planWithMemory } from '../../../src/engine/plan.ts';
import { fitIn } from '../../../src/engine/quote/fit-in.ts';
import { quoteOrder } from '../../../src/engine/quote/quote.ts';
import type { PlanMemory } from '../../../src/engine/search/memory.ts';
import { keepOfPlan } from '../../../src/engine/standing/keep-of-plan.ts';
import { fromNothing, keptWhole, oneMoved } from '../../bench/plainer-plans.ts';
import { askingYard } from '../../support/asking-yard.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { smallYard } from '../../support/small-yard.ts';

type Orders = NonNullable<YardFileInput['orders']>;

/** Two moulds, Saturdays alone, a turn each: one pair a Saturday, poured from the 10th on and out a week later. */
const base = smallYard();
const saturdays = (orders: Orders): YardFile =>
  smallYard({ mixes: [{ ...base.mixes[0]!, demouldMinutes: 1000 }], orders });
const pairs = (id: string, quantity: number, dates: Partial<Order> = {}): Order => ({
  id,
  weight: 1,
  lines: [{ casting: 'panel-900', quantity: 2 * quantity }],
  ...dates,
});
const asked = pairs('asked', 1);

/** The answer beside the plan that quick planning makes, all of which stands. */
const answerBeside = (yard: YardFile): string | null => {
  const { plan, memory } = planWithMemory(yard, { effort: 'quick' });
  return quoteOrder(yard, asked, { memory, standing: keepOfPlan(plan) }).earliestOn;
};

describe('an order that finds a late place, or none', () => {
  test('goes before a large one to which no date was given', () => {
    expect(answerBeside(saturdays([pairs('large', 5, { wanted: '2027-04-17' })]))).toBe('2027-04-17');
  });

  test('and never before one to which a date was given', () => {
    expect(answerBeside(saturdays([pairs('large', 5, { due: '2027-05-15' })]))).toBe('2027-05-22');
  });

  test('goes between the two kinds', () => {
    const yard = saturdays([
      pairs('given', 2, { due: '2027-04-24' }),
      pairs('large', 2, { wanted: '2027-04-17' }),
      pairs('open', 2),
    ]);
    expect(answerBeside(yard)).toBe('2027-05-01');
  });

  // As a long search leaves it behind: what it chose for later shifts is for the orders that it knew.
  const memoryOf = (yard: YardFile, more: Partial<PlanMemory>): PlanMemory => ({
    ...planWithMemory(yard, { effort: 'quick' }).memory,
    ...more,
  });
  const nothingAfter = (yard: YardFile, from: string): PlanMemory =>
    memoryOf(yard, {
      inShift: Array.from({ length: 60 }, (_, week): PlanMemory['inShift'][number] => [
        Date.parse(`${from}T08:00:00+01:00`) / 60_000 + week * 7 * 1440,
        { ...DEFAULT_CHOICES, noPours: true },
      ]),
    });

  test('is not refused for what a search chose for sessions after all that is planned', () => {
    const yard = saturdays([pairs('given', 1, { due: '2027-04-17' })]);
    const memory = nothingAfter(yard, '2027-04-17');
    const { earliestOn } = quoteOrder(yard, asked, { memory });
    expect(earliestOn).toBe('2027-04-24');
  });

  test('leaves an order held back that was held back for another', () => {
    const yard = saturdays([pairs('open', 1), pairs('given', 1, { due: '2027-04-17' })]);
    const [first, second] = ['2027-04-10', '2027-04-17'].map((day) => Date.parse(`${day}T08:00:00+01:00`) / 60_000);
    const memory = memoryOf(yard, { sequence: ['open', 'given'], heldBack: [{ order: 'open', from: second! }] });
    expect(first).toBeLessThan(second!);
    expect(quoteOrder(yard, asked, { memory }).earliestOn).toBe('2027-04-24');
    const fitted = fitIn({ ...yard, orders: [...yard.orders, asked] }, memory)!;
    expect(fitted.heldBack?.map(({ order }) => order)).toContain('open');
  });
});

test('no is said to nobody, and no later day, where a plan from nothing has one', { timeout: 120_000 }, () => {
  let compared = 0;
  for (const seed of yardSeeds(60, 100)) {
    const asking = askingYard(seed);
    if (!asking) continue;
    const { yard, order } = asking;
    const { plan, memory } = planWithMemory(yard, { effort: 'quick' });
    const { earliestOn } = quoteOrder(yard, order, { memory, standing: keepOfPlan(plan) });
    const anew = fromNothing({ yard, order, plan }, [undefined, earliestOn ?? undefined]);
    if (anew === null) continue;
    compared++;
    expect(earliestOn, `seed ${seed}`).not.toBeNull();
    expect(earliestOn! <= anew, `seed ${seed}: ${earliestOn} after ${anew}`).toBe(true);
  }
  expect(compared).toBeGreaterThan(15);
});

test('nor a later day than with all that is planned kept, or all but one other order', { timeout: 120_000 }, () => {
  let compared = 0;
  for (const seed of yardSeeds(16, 300)) {
    const asking = askingYard(seed);
    if (!asking) continue;
    const { yard, order } = asking;
    const { plan, memory } = planWithMemory(yard, { effort: 'quick' });
    const { earliestOn } = quoteOrder(yard, order, { memory, standing: keepOfPlan(plan) });
    const days = [keptWhole({ yard, order, plan }), oneMoved({ yard, order, plan }, earliestOn)];
    for (const day of days)
      if (day !== null)
        expect(earliestOn !== null && earliestOn <= day, `seed ${seed}: ${earliestOn}, ${day}`).toBe(true);
    compared += days.filter((day) => day !== null).length;
  }
  expect(compared).toBeGreaterThan(6);
});
