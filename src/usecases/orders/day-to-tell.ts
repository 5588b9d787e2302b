import { type PromiseOdds, USUAL_ODDS } from '../../../shared/promise-odds.ts';
import { dateOfDay, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { compile } from '../../engine/decoder/compile.ts';
import { beliefsOf } from '../../engine/odds/beliefs.ts';
import { dayWith } from '../../engine/odds/date-odds.ts';
import { promiseDay } from '../../engine/quote/promise.ts';
import type { UseCaseContext } from '../core/context.ts';
import { withinTime } from '../core/within-time.ts';
import { planToAsk } from '../plan/plan-to-ask.ts';
import { dateOddsOf } from './odds-of-order.ts';

/** A day that can be told to a customer: with so many sessions in hand, or kept so often by the yard's record. */
export type DayToTell = { on: string } & ({ sessionsInHand: number } | { promiseOdds: PromiseOdds });

/** Nothing but hours and hand-over days counts for it. */
const hoursOnly = ({ keep: _keep, begun: _begun, ...yard }: YardFile): YardFile => ({
  ...yard,
  ...{ orders: [], finished: [], inMould: [], incoming: [] },
});

/**
 * The day to tell for an order that the plan completes at an instant: with the sessions in hand that the yard keeps. Null
 * where it keeps none, or too few are left in the days planned.
 */
export const dayInHandToTell = (yard: YardFile, completesAt: string): DayToTell | null => {
  const { sessionsInHand } = yard.yard;
  if (sessionsInHand === 0) return null;
  const day = promiseDay(compile(hoursOnly(yard)), minuteOf(completesAt));
  return day === null ? null : { on: dateOfDay(day), sessionsInHand };
};

/** An order that is planned, when it is complete by the plan, and how long its odds may be waited for; left out: as long as it takes. */
interface Telling {
  id: string;
  completesAt: string;
  patienceMs: number | undefined;
}

/**
 * The day to tell for an order that is planned: the first that is kept with the yard's odds where its record is enough and such
 * a day is within the days planned, else with its sessions in hand. 'coming' where its odds take longer than is waited for.
 */
export const dayToTell = async (
  context: UseCaseContext,
  { id, completesAt, patienceMs }: Telling,
): Promise<DayToTell | 'coming' | null> => {
  const asked = await planToAsk(context);
  const { yard } = asked;
  if (!beliefsOf(yard.record).isEnough) return dayInHandToTell(yard, completesAt);
  const working = dateOddsOf(context, asked, id).then((odds) => ({ odds }));
  const answer = await withinTime(working, patienceMs);
  if (answer === null) return 'coming';
  const { promiseOdds = USUAL_ODDS } = yard.yard;
  const on = answer.odds && dayWith(answer.odds, promiseOdds);
  return on === null ? dayInHandToTell(yard, completesAt) : { on, promiseOdds };
};
