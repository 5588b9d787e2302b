import type { DayNumber } from '../../../shared/time.ts';

/** From so many packs in one trip on, each of them costs so much. */
interface PackBreak {
  fromPacks: number;
  packPrice: number;
}

/** One material of a supplier: each pack with the first and the last day on which a trip may bring it, both in order. */
export interface TripGoods {
  packs: readonly { from: DayNumber; until: DayNumber }[];
  packPrice: number;
  /** 0 where nobody said what it weighs. */
  packKg: number;
  /** By `fromPacks`, the least first. */
  breaks: readonly PackBreak[];
}

/** What a supplier asks for, and how trips are weighed. Money in the yard's currency. */
export interface TripTerms {
  /** Null: no limit. */
  carriesKg: number | null;
  /** What an order falls short of it is counted as paid, since something else would have to be bought. */
  minimumOrder: number;
  deliveryPrice: number;
  /** What a trip saved is worth; null: fewer trips go before any money. */
  tripWorth: number | null;
  /** Of the price of a pack, for each day that it is bought before its last day. */
  boundPerDay: number;
}

/** The price of so many packs bought at once, each at the price of the highest step reached. */
export const packsPrice = ({ packPrice, breaks }: Pick<TripGoods, 'packPrice' | 'breaks'>, packs: number): number => {
  let each = packPrice;
  for (const one of breaks) if (one.fromPacks <= packs) each = one.packPrice;
  return packs * each;
};
