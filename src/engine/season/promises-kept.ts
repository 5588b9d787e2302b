import { dayNumber } from '../../../shared/time.ts';

/** An order that was handed over: when, and by the date last given; null where none was. */
export interface HandedOver {
  handedOverOn: string;
  promisedOn: string | null;
}

/** How many dates were given and kept, and by how many days the others were not, the worst first. */
export interface PromisesKept {
  promised: number;
  kept: number;
  daysLate: readonly number[];
}

/**
 * Promises kept among orders that were handed over: on the day or before it.
 *
 * Example: one handed over on the day, one 7 days after: 1 of 2 kept, `[7]` late.
 */
export const promisesKept = (orders: readonly HandedOver[]): PromisesKept => {
  const late = orders.flatMap(({ handedOverOn, promisedOn }) =>
    promisedOn === null ? [] : [dayNumber(handedOverOn) - dayNumber(promisedOn)],
  );
  const daysLate = late.filter((days) => days > 0).sort((a, b) => b - a);
  return { promised: late.length, kept: late.length - daysLate.length, daysLate };
};
