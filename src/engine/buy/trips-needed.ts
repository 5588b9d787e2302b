import type { DayNumber } from '../../../shared/time.ts';
import { fullTrip, mayBeBought, type TripSearch } from './trip-amounts.ts';
import type { TripGoods, TripTerms } from './trip-terms.ts';

/**
 * The last day on which the next trip can be: all that is not bought yet may wait until then. Infinite where all is bought.
 *
 * Example: packs with the last days 3 and 5 of one material and 4 of another, one of the first bought: day 4.
 */
export const nextTripDay = (goods: readonly TripGoods[], taken: readonly number[]): DayNumber =>
  Math.min(...goods.map((one, m) => one.packs[taken[m]!]?.until ?? Number.POSITIVE_INFINITY));

/** How many trips it takes as long as one carries everything: each on the last day there is, with all that may be bought. */
const tripsByDays = (goods: readonly TripGoods[], taken: readonly number[]): number => {
  const bought = [...taken];
  for (let trips = 0; ; trips += 1) {
    const day = nextTripDay(goods, bought);
    if (day === Number.POSITIVE_INFINITY) return trips;
    for (const [m, packs] of mayBeBought(goods, bought, day).entries()) bought[m]! += packs;
  }
};

/** How many trips the weight takes; none where a single pack is too heavy, which goes by itself. */
const tripsByWeight = (goods: readonly TripGoods[], { carriesKg }: TripTerms, taken: readonly number[]): number => {
  if (carriesKg === null || goods.some(({ packKg }) => packKg > carriesKg)) return 0;
  const kg = goods.reduce((sum, { packs, packKg }, m) => sum + packKg * (packs.length - taken[m]!), 0);
  return Math.ceil(kg / carriesKg - 1e-9);
};

/** No way to buy the rest takes fewer trips than this. */
export const fewestTripsFrom = ({ goods, terms }: TripSearch, taken: readonly number[]): number =>
  Math.max(tripsByDays(goods, taken), tripsByWeight(goods, terms, taken));

/**
 * Some way to buy everything: each trip as late as it can be, and as full.
 *
 * Example: packs of 25 kg with the last days 3, 3 and 3 and a vehicle that carries 60: two packs on day 3, and one more on it.
 */
export const fullestTrips = (search: TripSearch): { day: DayNumber; packs: readonly number[] }[] => {
  const bought = search.goods.map(() => 0);
  const trips: { day: DayNumber; packs: readonly number[] }[] = [];
  for (;;) {
    const day = nextTripDay(search.goods, bought);
    if (day === Number.POSITIVE_INFINITY) return trips;
    const packs = fullTrip(search, bought, day);
    for (const [m, count] of packs.entries()) bought[m]! += count;
    trips.push({ day, packs });
  }
};
