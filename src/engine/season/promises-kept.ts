import { dayNumber } from '../../../shared/time.ts';

/** An order that was handed over: when, by the date last given, and by the one given first; null where none was, or is on record. */
export interface HandedOver {
  handedOverOn: string;
  promisedOn: string | null;
  firstPromisedOn: string | null;
}

/** How many dates were given and kept, and by how many days the others were not, the worst first. */
export interface PromisesKept {
  promised: number;
  kept: number;
  daysLate: readonly number[];
  /** The same of the dates given first, where they are on record. */
  first: { promised: number; kept: number };
}

const daysAfter = (orders: readonly HandedOver[], by: 'promisedOn' | 'firstPromisedOn'): number[] =>
  orders.flatMap(({ handedOverOn, [by]: on }) => (on === null ? [] : [dayNumber(handedOverOn) - dayNumber(on)]));

/**
 * Promises kept among orders that were handed over: on the day or before it.
 *
 * Example: one handed over on the day, one 7 days after: 1 of 2 kept, `[7]` late. Where the first had been promised for a
 * day sooner, none of 2 was kept as it was given first.
 */
export const promisesKept = (orders: readonly HandedOver[]): PromisesKept => {
  const [late, first] = [daysAfter(orders, 'promisedOn'), daysAfter(orders, 'firstPromisedOn')];
  const daysLate = late.filter((days) => days > 0).sort((a, b) => b - a);
  return {
    ...{ promised: late.length, kept: late.length - daysLate.length, daysLate },
    first: { promised: first.length, kept: first.filter((days) => days <= 0).length },
  };
};
