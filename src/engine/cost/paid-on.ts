import { halfEven } from './minor-units.ts';
import type { PricedDelivery, TakenPrice } from './priced-lots.ts';

const perOne = (deliveries: readonly PricedDelivery[]): number | null => {
  const priced = deliveries.filter(({ price, quantity }) => price !== null && quantity > 0);
  const quantity = priced.reduce((sum, one) => sum + one.quantity, 0);
  return quantity > 0 ? priced.reduce((sum, one) => sum + (one.price ?? 0), 0) / quantity : null;
};

/**
 * What so much of a material cost that was used on a day: what was paid for the deliveries of the dates that its bags are of
 * (those on the bags, else the days they came);
 * where no delivery of these has a price, the last one until then that has; else the price of the stock book. Dates as texts.
 *
 * Example: of two deliveries of 6, for 12000 on the 1st and 13200 on the 9th, two bags of the 1st cost 4000.
 */
export const paidFor = (
  quantity: number,
  { dates, on }: { dates: readonly string[]; on: string },
  deliveries: readonly PricedDelivery[],
  unitPrice: number | null,
): TakenPrice => {
  const until = deliveries.filter((one) => one.on <= on && one.price !== null).sort((a, b) => (a.on < b.on ? -1 : 1));
  const price =
    perOne(deliveries.filter(({ useBy, on: came }) => dates.includes(useBy ?? came))) ??
    perOne(until.slice(-1)) ??
    unitPrice;
  return price === null ? { price: 0, unpriced: quantity } : { price: halfEven(price * quantity), unpriced: 0 };
};
