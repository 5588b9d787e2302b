import { dateOfDay, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { compile } from '../../engine/decoder/compile.ts';
import { promiseDay } from '../../engine/quote/promise.ts';

/** A day that can be told to a customer, and how many sessions it keeps in hand. */
export interface DayToTell {
  on: string;
  sessionsInHand: number;
}

/** Nothing but hours and hand-over days counts for it. */
const hoursOnly = ({ keep: _keep, begun: _begun, ...yard }: YardFile): YardFile => ({
  ...yard,
  ...{ orders: [], finished: [], inMould: [], incoming: [] },
});

/**
 * The day to tell for an order that the plan completes at an instant: with the sessions in hand that the yard keeps. Null
 * where it keeps none, or too few are left in the days planned.
 */
export const dayToTell = (yard: YardFile, completesAt: string): DayToTell | null => {
  const { sessionsInHand } = yard.yard;
  if (sessionsInHand === 0) return null;
  const day = promiseDay(compile(hoursOnly(yard)), minuteOf(completesAt));
  return day === null ? null : { on: dateOfDay(day), sessionsInHand };
};
