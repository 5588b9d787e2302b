import { halfEven } from './minor-units.ts';

/**
 * The price that leaves a margin, as a share of the price: whole minor units, half-even.
 *
 * Example: `priceWithMargin(7000, 0.3)` is 10000, `priceWithMargin(7000, 0)` is 7000.
 */
export const priceWithMargin = (cost: number, margin: number): number => halfEven(cost / (1 - margin));

/**
 * The share of a price that is left once the cost is taken off: below 0 where the price does not pay for it; null of no price.
 *
 * Example: `marginOf(10000, 7000)` is 0.3, `marginOf(0, 7000)` is null.
 */
export const marginOf = (price: number, cost: number): number | null => (price > 0 ? (price - cost) / price : null);
