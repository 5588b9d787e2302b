import type { DayNumber } from '../../../shared/time.ts';
import type { Calendar } from '../calendar/calendar.ts';
import type { MaterialUse } from './material-flow.ts';

/** So much of a material that came, or will come, on one day; null where nobody knows the day. */
export interface Lot {
  cameOn: DayNumber | null;
  quantity: number;
}

/** What becomes of a lot: how much of it is used while it keeps, how much later than that, and how much not at all. */
export interface LotKept {
  /** The last day on which it is as good as new; null where it is not known when it came. */
  keepsUntil: DayNumber | null;
  usedInTime: number;
  usedLate: number;
  left: number;
}

const TOLERANCE = 1e-9;

/**
 * Which deliveries a stock is of, with how much of each is there, the oldest first: what came last is there still, and what no
 * delivery accounts for stands first, of none. `newestFirst` as it says.
 */
export const deliveriesThere = <D extends { quantity: number }>(
  onHand: number,
  newestFirst: readonly D[],
): { of: D | null; there: number }[] => {
  const lots: { of: D | null; there: number }[] = [];
  let rest = onHand;
  for (const of of newestFirst) {
    const there = Math.min(of.quantity, rest);
    if (there > TOLERANCE) lots.unshift({ of, there });
    rest -= Math.max(0, there);
  }
  return rest > TOLERANCE ? [{ of: null, there: rest }, ...lots] : lots;
};

/**
 * The same by the days they came on; null for what no delivery accounts for.
 *
 * Example: of 10 there, with 6 that came on day 90 and 6 on day 10: 4 of day 10, then 6 of day 90.
 */
export const lotsInYard = (onHand: number, arrivals: readonly { day: DayNumber; quantity: number }[]): Lot[] =>
  deliveriesThere(
    onHand,
    [...arrivals].sort((a, b) => b.day - a.day),
  ).map(({ of, there }) => ({ cameOn: of?.day ?? null, quantity: there }));

/**
 * What becomes of each lot of a material that keeps for so many days after it came, when lots are used up one after
 * another in the order given. Quantities in the material's unit. Says what is so and changes no buy: bags without a date of their own
 * are planned as if they kept, and a plan buys no less than a pack.
 *
 * Example: 6 bags of day 10 that keep 90 days, 2 used on day 50 and 1 on day 101: 2 in time, 1 late, 3 left.
 */
export const lotsKept = (
  lots: readonly Lot[],
  uses: readonly MaterialUse[],
  shelfLifeDays: number,
  calendar: Calendar,
): LotKept[] => {
  const queue = [...uses].sort((a, b) => a.at - b.at).map((use) => ({ ...use }));
  return lots.map(({ cameOn, quantity }) => {
    const keepsUntil = cameOn === null ? null : cameOn + shelfLifeDays;
    const kept = { keepsUntil, usedInTime: 0, usedLate: 0, left: quantity };
    for (let use = queue[0]; use && kept.left > TOLERANCE; use = queue[0]) {
      const taken = Math.min(use.quantity, kept.left);
      kept[keepsUntil !== null && calendar.dayOf(use.at) > keepsUntil ? 'usedLate' : 'usedInTime'] += taken;
      kept.left -= taken;
      use.quantity -= taken;
      if (use.quantity <= TOLERANCE) queue.shift();
    }
    return kept;
  });
};
