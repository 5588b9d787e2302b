import type { PageHead } from '../core/page-parts.ts';
import type { LeftField } from '../typed/left-typed.ts';
import type { BagsFacts } from './bags-facts.ts';
import type { BagsToCount } from './bags-to-count.ts';
import type { UnusedFacts } from './buying-supplies.ts';
import type { SlipFacts } from './if-not-ordered.ts';
import type { KeepingFacts } from './keeping-facts.ts';
import type { StockAhead } from './stock-ahead.ts';
import type { StockCounted } from './stock-facts.ts';
import type { BoughtBeside } from './trips-planned.ts';

/** Whom goods are for: customers (null for stock), or how much they bring back to what is always kept. */
export interface Purpose {
  customers: readonly (string | null)[];
  keep: number | null;
}

/** An amount in the unit that is shown, how it stands in its field, and exactly what that is in the unit it is kept in. */
export interface AmountInField {
  quantity: number;
  unit: string;
  field: string;
  was: number;
}

/** One material of a trip, in the unit that is shown. */
export interface BuyLineFacts extends AmountInField {
  /** Tells the fields of this line from those of the others. */
  key: string;
  material: string;
  name: string;
  /** It is sold in so many, in the unit that is shown. */
  pack: number;
  /** It is sold one by one: nothing to say about packs. */
  packIsOne: boolean;
  /** The last day on which it can be ordered. */
  orderBy: string;
  /** It comes just in time, in a yard that wants days in hand. */
  hasNothingInHand: boolean;
  /** It comes so many days after it is needed; 0 in time. */
  daysLate: number;
  /** The last day by which no date suffers, where that has passed. */
  missedOn: string | null;
  /** The day on which it could be ordered as well, if the supplier were not closed then. */
  closedOn: string | null;
  /** Nothing that is planned waits for it, and why it is bought all the same; null where something does. */
  beside: BoughtBeside | null;
  /** It is worth asking what happens where it is not ordered by its day: that is soon, and something waits for it. */
  isAskedIfLate: boolean;
  /** The orders that get later then; null while that is not known. */
  ifLate: readonly SlipFacts[] | null;
  /** When it comes if it is bought today. */
  on: string;
  /** Of all of it, in the yard's currency; null where nobody said. */
  price: number | null;
  for: Purpose;
  unused: UnusedFacts | null;
}

/** One way to a shop, or one order of what is brought. */
export interface TripFacts {
  /** Tells it from the others. */
  key: string;
  /** Who sells it. */
  name: string;
  /** The last day to fetch it there, or else to order it. */
  day: string;
  fetched: boolean;
  lines: readonly BuyLineFacts[];
  /** What of it is known, with the way or the delivery, in the yard's currency; 0 where nothing is. */
  price: number;
  deliveryPrice: number;
  /** So much is missing to the least order. */
  shortOfMinimum: number;
  /** "150 kg"; null where nobody said what anything weighs. */
  weight: string | null;
  tooHeavy: boolean;
  /** No day is known on which it is open. */
  neverThere: boolean;
}

/** The trips of a week, which its first day names. */
export interface BuyWeek {
  week: string;
  trips: readonly TripFacts[];
}

/** Goods on their way, in the unit that is shown. */
export interface ComingFacts extends AmountInField {
  id: number;
  name: string;
  on: string;
  /** It may have a bag date: it is not cut. */
  hasBags: boolean;
  /** Until when it keeps if it comes today; null where it does not go off. */
  keepsUntil: string | null;
  /** Null where nobody wrote it down. */
  boughtOn: string | null;
  /** What was typed for it, with its unit; null where that says no more than the amount. */
  asTyped: string | null;
  /** Of all of it, in the yard's currency; null where nobody said. */
  price: number | null;
  for: Purpose;
  unused: UnusedFacts | null;
}

/** Rests of opened sticks or sheets, each length or size in the yard's units. */
export interface OffcutsFacts extends LeftField {
  lengths: readonly { length: string; count: number }[];
}

/** One material in the yard, in the unit that is shown. */
export interface StockFacts extends StockCounted {
  key: string;
  material: string;
  name: string;
  unit: string;
  minimum: number;
  canBeBought: boolean;
  /** It is not to be had before that day. */
  notBefore: string | null;
  /** What was typed when it was counted, while it still is so; null where that says no more than the amount. */
  asTyped: string | null;
  /** Of what is cut: rests of opened ones, the longest first, and how they stand in their field; null where it is not cut. */
  offcuts: OffcutsFacts | null;
  /** What the stock book has of it, for a count to be sent along with. */
  book: string;
  coming: readonly { quantity: number; on: string }[];
  note: string | null;
  /** Those that have a date or are opened. */
  bags: readonly BagsFacts[];
  /** The same with those of no known date, to be counted one by one; none where no bag has a date. */
  bagsToCount: readonly BagsToCount[];
  /** Null where it does not go off. */
  keeping: KeepingFacts | null;
  /** How it goes on with nothing bought; of one that is cut, whole ones. */
  ahead: StockAhead;
}

/** What to buy by when and for whom, what is on its way, and what is in the yard. */
export interface BuyingModel extends PageHead {
  currency: string;
  /** The first day of the yard's week that today is in. */
  thisWeek: string;
  weeks: readonly BuyWeek[];
  onTheWay: readonly ComingFacts[];
  stock: readonly StockFacts[];
  /** So many days ahead it is said how the stock goes on. */
  daysAhead: number;
  /** All there are, to choose from, each with the unit it is shown in. */
  materials: readonly { id: string; name: string; unit: string }[];
}
