import type { BagsMoved } from '../../../shared/bags.ts';
import { deliveriesThere } from '../buy/keeping.ts';
import { halfEven } from './minor-units.ts';

/**
 * A delivery in the material's unit; `price` is for all of it in minor units, null where nobody said. `on` is the date it came, `useBy`
 * the one on its bags.
 */
export interface PricedDelivery {
  quantity: number;
  on: string;
  price: number | null;
  useBy?: string | null;
}

/** What is left of a delivery: `used` of its quantity is gone already. */
interface PricedLot {
  quantity: number;
  used: number;
  price: number | null;
}

/** What a material costs: lots in the order in which they are used up, and what any other unit of it costs. */
export interface MaterialPrices {
  lots: readonly PricedLot[];
  /** Minor units for one, a fraction perhaps; null where nobody said. */
  unitPrice: number | null;
}

/** What was taken: its price in minor units, and how much of it nobody knows the price of. */
export interface TakenPrice {
  price: number;
  unpriced: number;
}

const TOLERANCE = 1e-9;

/** What is there of one date, or of none, as the deliveries it is of. */
const lotsOf = (there: number, arrived: readonly PricedDelivery[]): PricedLot[] => {
  const newestFirst = [...arrived].sort((a, b) => (a.on < b.on ? 1 : a.on > b.on ? -1 : 0));
  return deliveriesThere(there, newestFirst).map(({ of, there: left }) =>
    of === null
      ? { quantity: left, used: 0, price: null }
      : { quantity: of.quantity, used: of.quantity - left, price: of.price },
  );
};

/**
 * The lots a stock is of, in the order in which they are used up: bags without a date and then those with one, the soonest first, each
 * of the deliveries whose bags have that date; of one date what no delivery accounts for first, without a price of its own, then
 * deliveries by the day they came. Last what is on its way. `dated` are the parts of `onHand` with a date.
 *
 * Example: 8 there of which 6 came for 129: 2 of no known delivery, then 6 for 129.
 */
export const pricedLots = (
  onHand: number,
  arrived: readonly PricedDelivery[],
  coming: readonly PricedDelivery[],
  dated: readonly BagsMoved[] = [],
): PricedLot[] => {
  const quantities = new Map<string, number>();
  for (const { useBy, quantity } of dated)
    if (useBy !== undefined) quantities.set(useBy, (quantities.get(useBy) ?? 0) + quantity);
  const undated = [...quantities.values()].reduce((left, one) => left - one, onHand);
  const later = [...coming].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  return [
    ...lotsOf(
      Math.max(0, undated),
      arrived.filter(({ useBy }) => !useBy),
    ),
    ...[...quantities]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .flatMap(([date, there]) =>
        lotsOf(
          there,
          arrived.filter(({ useBy }) => useBy === date),
        ),
      ),
    ...later.map(({ quantity, price }) => ({ quantity, used: 0, price })),
  ];
};

/** The part of a price that falls on what is used from one amount to another: all parts come to all of the price. */
const partOf = (price: number, quantity: number, from: number, to: number): number =>
  halfEven((price * to) / quantity) - halfEven((price * from) / quantity);

/**
 * Takes a material bit by bit, lot after lot: what is taken of a lot costs its share of what was paid, and all of a lot to the
 * minor unit what was paid for it, in however many bits. A lot without a price of its own, and what is taken beyond
 * all lots, costs the price of the stock book.
 *
 * Example: 3 bags that came for 1000, taken one by one: 333, 334 and 333.
 */
export const takingFrom = ({ lots, unitPrice }: MaterialPrices): ((quantity: number) => TakenPrice) => {
  const queue = lots.map((lot) => ({ ...lot }));
  let byBook = 0;
  const takeByBook = (quantity: number): TakenPrice => {
    if (unitPrice === null) return { price: 0, unpriced: quantity };
    const price = partOf(unitPrice, 1, byBook, byBook + quantity);
    byBook += quantity;
    return { price, unpriced: 0 };
  };
  const takeOf = (lot: PricedLot, quantity: number): TakenPrice => {
    if (lot.price === null) return takeByBook(quantity);
    return { price: partOf(lot.price, lot.quantity, lot.used, lot.used + quantity), unpriced: 0 };
  };
  return (quantity) => {
    const taken: TakenPrice = { price: 0, unpriced: 0 };
    let left = quantity;
    while (left > TOLERANCE) {
      const lot = queue[0];
      const bit = lot ? Math.min(left, lot.quantity - lot.used) : left;
      const { price, unpriced } = lot ? takeOf(lot, bit) : takeByBook(bit);
      taken.price += price;
      taken.unpriced += unpriced;
      left -= bit;
      if (!lot) continue;
      lot.used += bit;
      if (lot.quantity - lot.used <= TOLERANCE) queue.shift();
    }
    return taken;
  };
};
