import { diceFor } from './chance.ts';
import { daysAfter, daysBetween } from './clock.ts';

const REJECT = 0.03;
const LOST = 0.05;
const LATE = 0.05;
const BROKEN_EVERY_DAYS = 14;
const MENDED_AFTER_DAYS = 6;

/** What goes wrong in a yard, the same for whoever plans it. */
export interface Mishaps {
  /** The piece stripped from a mould that day is scrap. */
  isReject(mould: string, date: string): boolean;
  /** Nobody works on that day. */
  isLost(date: string): boolean;
  /** Days by which goods come late that were to come on a day; once they have a new day they come on it. */
  deliveryLate(on: string): number;
  /** The mould that breaks on that day, and when it is to be mended; null for none. */
  broken(date: string, moulds: readonly string[]): { mould: string; mendedOn: string } | null;
}

export const NO_MISHAPS: Mishaps = {
  isReject: () => false,
  isLost: () => false,
  deliveryLate: () => 0,
  broken: () => null,
};

/** Rejects 3 %, days lost 5 %, late deliveries 5 % by two to six days, a mould broken every two weeks for six days. */
export const mishapsOf = (seed: number, name: string, from: string): Mishaps => ({
  isReject: (mould, date) => diceFor(seed, name, 'reject', mould, date).chance(REJECT),
  isLost: (date) => diceFor(seed, name, 'lost', date).chance(LOST),
  deliveryLate: (on) => {
    const dice = diceFor(seed, name, 'delivery', on);
    return dice.chance(LATE) ? dice.whole(2, 6) : 0;
  },
  broken: (date, moulds) => {
    const day = daysBetween(from, date);
    if (moulds.length === 0 || day % BROKEN_EVERY_DAYS !== BROKEN_EVERY_DAYS - 1) return null;
    return {
      mould: diceFor(seed, name, 'broken', date).pick(moulds),
      mendedOn: daysAfter(date, MENDED_AFTER_DAYS),
    };
  },
});
