import type { DayNumber } from '../../../shared/time.ts';
import type { DaysOfSupplier } from './supplier-days.ts';

/** One pack that the plan buys of a material, by days. */
export interface PackNeeded {
  /** The last day on which the plan has it come: with its days in hand. */
  comesBy: DayNumber;
  /** The day on which it is needed: later than that a date suffers. */
  neededOn: DayNumber;
  /** The last use that the plan has for it; null where there is none yet. */
  lastUse: DayNumber | null;
}

/** What says when the packs of a material may be bought. */
export interface Buying {
  today: DayNumber;
  days: DaysOfSupplier;
  fetched: boolean;
  leadDays: number;
  /** So many days before its last day a pack is bought at most. */
  aheadDays: number;
  shelfLifeDays: number | null;
  /** The yard's float: a pack is to be there on the day that this gives for the day it is needed on. */
  inHandFor: (neededOn: DayNumber) => DayNumber;
}

/** The days of one pack. Trips are counted by the day things are fetched, or ordered where they are brought. */
export interface PackDays {
  /** First and last day of the trip. */
  from: DayNumber;
  until: DayNumber;
  /** The last day by which no date suffers; before today: it has passed. Null: none was open since. */
  mustBy: DayNumber | null;
  neededOn: DayNumber;
}

/** When what is bought by a trip is ordered, and when it comes. */
export interface TripDays {
  orderBy: DayNumber;
  comesOn: DayNumber;
}

/**
 * The day to order on and the day it comes, for a trip on a day: fetched things are ordered on the last open day that
 * leaves their lead days, things that are brought come on the first delivery day after them. Null where none is known.
 */
export const tripDays = ({ days, fetched, leadDays }: Buying, day: DayNumber): TripDays | null => {
  if (fetched) {
    const orderBy = days.open.upTo(day - leadDays);
    return orderBy === null ? null : { orderBy, comesOn: day };
  }
  const comesOn = days.comes.from(day + leadDays);
  return comesOn === null ? null : { orderBy: day, comesOn };
};

/** The soonest trip: on an open day from today on, and for what is fetched its lead days after one. */
const soonestTrip = ({ days, fetched, leadDays, today }: Buying): DayNumber | null => {
  const open = days.open.from(today);
  return open === null || !fetched ? open : days.open.from(open + leadDays);
};

/** The last trip day with which things are there on a day; null where none is known. */
const lastTrip = (buying: Buying, thereOn: DayNumber): DayNumber | null => {
  const { days, fetched, leadDays } = buying;
  if (fetched) return days.open.upTo(thereOn);
  const comesOn = days.comes.upTo(thereOn);
  return comesOn === null ? null : days.open.upTo(comesOn - leadDays);
};

/** The first trip day after which things keep until their last use. */
const firstThatKeeps = (buying: Buying, { lastUse }: PackNeeded): DayNumber => {
  const { shelfLifeDays, days, fetched, leadDays, today } = buying;
  if (shelfLifeDays === null || lastUse === null) return today;
  const comesOn = days.comes.from(lastUse - shelfLifeDays);
  if (comesOn === null) return today;
  return fetched ? comesOn : comesOn - leadDays;
};

/**
 * The days on which each pack may be bought, in the order of the packs; null where the supplier is not there at all as far as
 * it is known. The last day keeps the yard's days in hand; where it has passed, it is the soonest there is. Never a day on
 * which the supplier is closed: of a closed one the open day before counts.
 */
export const packDays = (buying: Buying, packs: readonly PackNeeded[]): PackDays[] | null => {
  const soonest = soonestTrip(buying);
  if (soonest === null) return null;
  let [from, until] = [soonest, soonest];
  return packs.map((pack) => {
    const wanted = lastTrip(buying, Math.min(pack.comesBy, buying.inHandFor(pack.neededOn))) ?? soonest;
    // Packs of a material are alike: none is needed before the one before it.
    until = Math.max(until, wanted, soonest);
    from = Math.min(until, Math.max(from, until - buying.aheadDays, firstThatKeeps(buying, pack)));
    return { from, until, mustBy: lastTrip(buying, pack.neededOn), neededOn: pack.neededOn };
  });
};
