import type { Order } from '../../../shared/order.ts';
import { ODDS_SAID, USUAL_ODDS } from '../../../shared/promise-odds.ts';
import type { Quote } from '../../../shared/quote.ts';
import { dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Answer } from '../quote/answer.ts';
import { withAsked } from '../quote/present.ts';
import { memoryOf, type PlanMemory } from '../search/memory.ts';
import { beliefsOf } from './beliefs.ts';
import { type DateOdds, dateOdds, dayWith } from './date-odds.ts';

/** A plan that an order which is asked about is in: how it is come by, and the minute at which the order is complete in it. */
export interface PlanOfAnswer {
  memory: PlanMemory;
  completesAt: number;
}

/** The plan of an answer, in storable form; null where the order is in none. */
export const planOfAnswer = ({ asking, earliest, found }: Answer): PlanOfAnswer | null => {
  const { completesAt, dispatch } = earliest;
  if (found) return { memory: memoryOf(found.problem, found.dispatch), completesAt };
  return dispatch && { memory: memoryOf(asking.problem, dispatch), completesAt };
};

/** The odds of the day of an order that is asked about; null where the yard has no record that is enough to promise by. */
export const oddsToPromise = (yard: YardFile, order: Order, plan: PlanOfAnswer | null): DateOdds | null => {
  const { record } = yard;
  if (!record || !beliefsOf(record).isEnough) return null;
  return plan && dateOdds({ yard: withAsked(yard, order), order: order.id, record, ...plan });
};

/** The first hand-over day that holds with the odds that the yard has chosen; null where that is beyond the horizon. */
export const dayByOdds = ({ yard }: YardFile, odds: DateOdds): number | null => {
  const on = dayWith(odds, yard.promiseOdds ?? USUAL_ODDS);
  return on === null ? null : dayNumber(on);
};

/** The days of all odds that can be chosen, for a quote. */
export const oddsInQuote = (odds: DateOdds): NonNullable<Quote['odds']> =>
  ODDS_SAID.map(({ share }) => ({ share, on: dayWith(odds, share) }));
