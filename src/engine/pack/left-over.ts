import type { Casting } from '../../../shared/casting.ts';
import type { Mix } from '../../../shared/mix.ts';

/** Why more of a batch is left over than anybody would like. */
export type LeftOverWhy =
  /** So many fills, all of as many minutes or the last one of so many, do not fit the minutes the mix can be worked. */
  | { kind: 'working time'; fills: number; minutes: number; alike: boolean; workingMinutes: number }
  /** No piece of the mix is so light. */
  | { kind: 'nothing so light'; kg: number }
  /** No other piece of the mix is wanted, or has a mould free, just then. */
  | { kind: 'nothing to pour' };

/** What of a batch goes to waste, in bags. */
export interface LeftOver {
  bags: number;
  why: LeftOverWhy;
}

/** More of a bag than this that is thrown away asks for a reason. */
const WORTH_TELLING_BAGS = 1 / 3;

interface Batch {
  bags: number;
  /** What its pieces weigh. */
  kg: number;
  castings: readonly Casting[];
  /** How long it can be worked that day. */
  workingMinutes: number;
}

const whyLeft = (left: number, { castings, workingMinutes }: Batch, others: readonly Casting[]): LeftOverWhy => {
  const light = others.filter(({ kg }) => kg <= left);
  if (light.length === 0) return { kind: 'nothing so light', kg: left };
  const filled = castings.reduce((sum, { fillMinutes }) => sum + fillMinutes, 0);
  const quickest = Math.min(...light.map(({ fillMinutes }) => fillMinutes));
  if (filled + quickest <= workingMinutes) return { kind: 'nothing to pour' };
  const alike = castings.every(({ fillMinutes }) => fillMinutes === quickest);
  return { kind: 'working time', fills: castings.length + 1, minutes: quickest, alike, workingMinutes };
};

/**
 * What is left of a batch where that is more than a third of a bag, and why no other piece is poured from it; null where it
 * is less. `others` are the castings of its mix.
 *
 * One bag of 27.5 kg for a piece of 13.5 kg that is filled in 8 minutes, in 15 minutes of working time, leaves 0.51 bags:
 * two fills of 8 minutes do not fit.
 */
export const leftOver = (
  batch: Batch,
  { yieldKgPerBag }: Pick<Mix, 'yieldKgPerBag'>,
  others: readonly Casting[],
): LeftOver | null => {
  const kg = batch.bags * yieldKgPerBag - batch.kg;
  const bags = kg / yieldKgPerBag;
  return bags > WORTH_TELLING_BAGS ? { bags, why: whyLeft(kg, batch, others) } : null;
};
