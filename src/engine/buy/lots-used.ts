import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import { lotsInYard } from './keeping.ts';

const TOLERANCE = 1e-9;

/** A delivery that is in the yard, in the material's unit; `arrivedOn` is a date, `useBy` the one on the bags, null for none. */
export interface Delivery {
  quantity: number;
  arrivedOn: string;
  useBy?: string | null;
}

/**
 * The days on which what is used up next came, the oldest first; what no delivery accounts for is used first, and has no day.
 *
 * Example: of 10 there, with 6 that came on the 9th and 6 on the 1st, 5 are used: 4 of the 1st and 1 of the 9th.
 */
export const lotsUsed = (onHand: number, quantity: number, deliveries: readonly Delivery[]): string[] => {
  const lots = lotsInYard(
    onHand,
    deliveries.map((one) => ({ day: dayNumber(one.arrivedOn), quantity: one.quantity })),
  );
  let left = quantity;
  const days: string[] = [];
  for (const { cameOn, quantity: there } of lots) {
    if (left <= TOLERANCE) break;
    if (cameOn !== null) days.push(dateOfDay(cameOn));
    left -= there;
  }
  return days;
};
