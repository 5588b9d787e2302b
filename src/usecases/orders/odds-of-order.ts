import { minuteOf } from '../../../shared/time.ts';
import type { DateOdds } from '../../engine/odds/date-odds.ts';
import { sparesForOrder } from '../../engine/odds/spares.ts';
import { computeWithoutThread } from '../core/computations.ts';
import type { UseCaseContext } from '../core/context.ts';
import { type PlanToAsk, planToAsk } from '../plan/plan-to-ask.ts';
import { sparesOfPlan } from '../plan/spares-of-plan.ts';
import { type OddsFacts, oddsFacts, type SpareFacts } from './odds-facts.ts';

/** What would be worth pouring, and when it is by the plan, where the yard has pieces to spare planned. */
const sparesOf = async (context: UseCaseContext, id: string, asked: PlanToAsk): Promise<SpareFacts[]> => {
  const { plan, yard } = asked;
  const spares = sparesForOrder(yard, plan, { order: id, record: yard.record });
  if (spares.length === 0) return [];
  const planned = await sparesOfPlan(context, asked);
  return spares.map((spare) => ({
    ...spare,
    name: yard.castings.find((one) => one.id === spare.casting)?.name ?? spare.casting,
    planned: planned.find(({ casting }) => casting === spare.casting)?.on ?? null,
  }));
};

/** Odds that were worked out, by order, for as long as every question has the answer that it had. */
const kept = new WeakMap<PlanToAsk['since'], Map<string, Promise<DateOdds | null>>>();

const worked = async (context: UseCaseContext, asked: PlanToAsk, id: string): Promise<DateOdds | null> => {
  const { plan, yard, memory } = asked;
  const planned = plan.orders.find((order) => order.id === id);
  if (!planned || !yard.orders.some((one) => one.id === id)) return null;
  const compute = context.background?.compute ?? computeWithoutThread;
  const question = { yard, order: id, completesAt: minuteOf(planned.completesAt), record: yard.record };
  const answer = await compute('date odds', { ...question, ...(memory ? { memory } : {}) });
  return answer?.odds ?? null;
};

/**
 * The odds of the day of an order that is planned, as they were worked out before where that still holds. Null where it took
 * too long, which is tried again, and where no plan has the order.
 */
export const dateOddsOf = async (context: UseCaseContext, asked: PlanToAsk, id: string): Promise<DateOdds | null> => {
  const known = kept.get(asked.since) ?? new Map<string, Promise<DateOdds | null>>();
  kept.set(asked.since, known);
  const coming = known.get(id) ?? worked(context, asked, id);
  known.set(id, coming);
  const odds = await coming.catch(() => null);
  if (odds === null) known.delete(id);
  return odds;
};

/** How sure an order's day is by today's plan, worked out in a thread. Null as in `dateOddsOf`. */
export const oddsOfOrder = async (context: UseCaseContext, id: string): Promise<OddsFacts | null> => {
  const asked = await planToAsk(context);
  const odds = await dateOddsOf(context, asked, id);
  const order = asked.yard.orders.find((one) => one.id === id);
  return odds && oddsFacts(odds, order?.due ?? order?.wanted ?? null, await sparesOf(context, id, asked));
};
