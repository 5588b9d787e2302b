import type { DayNumber } from '../../../shared/time.ts';
import { type Evaluation, isBetter } from '../search/evaluation.ts';

/** What a plan is judged by when another may take its place; of the orders those that are in it. */
export interface Judged {
  figures: Pick<Evaluation, 'unplannedWeight' | 'weightedDaysLate' | 'weightedDaysAfterWanted' | 'cost'>;
  orders: ReadonlyMap<string, { daysLate: number; readyOn: DayNumber }>;
}

/** Sums of fractions are not exact. */
const EPSILON = 1e-9;
/** A gain in days and batches of less than that moves no planned day, in weighted days. */
const WORTH_TELLING = 5;

/** No order falls out of the plan, and no date that was given is later in it. */
const holdsDates = (was: Judged, is: Judged, given: ReadonlySet<string>): boolean =>
  [...was.orders].every(([id, { daysLate }]) => {
    const order = is.orders.get(id);
    return order !== undefined && (!given.has(id) || order.daysLate <= daysLate);
  });

const movesLater = (was: Judged, is: Judged): boolean =>
  [...was.orders].some(([id, { readyOn }]) => (is.orders.get(id)?.readyOn ?? readyOn) > readyOn);

/**
 * Whether a plan may take the place of the one that stands: it is better, no given date is later in it and no order falls
 * out of it. Where it is as late and leaves out as much, it also has to move no planned day later, and bring a date that was
 * asked for nearer or be worth telling of.
 *
 * `given` are the orders whose date was given to the customer.
 */
export const mayTakePlace = (was: Judged, is: Judged, given: ReadonlySet<string>): boolean => {
  if (!isBetter(is.figures, was.figures) || !holdsDates(was, is, given)) return false;
  const lessBy = (figure: keyof Judged['figures']): number => was.figures[figure] - is.figures[figure];
  const isLess = (figure: keyof Judged['figures']): boolean => lessBy(figure) > EPSILON;
  if (isLess('unplannedWeight') || isLess('weightedDaysLate')) return true;
  return !movesLater(was, is) && (isLess('weightedDaysAfterWanted') || lessBy('cost') >= WORTH_TELLING);
};
