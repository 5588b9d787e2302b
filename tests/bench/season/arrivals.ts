import { diceFor } from './chance.ts';
import { daysAfter } from './clock.ts';

/** What is asked for in a yard: something it offers ("kit:trough"), and the most of it at once. */
export interface Ask {
  what: string;
  most: number;
}

/** Somebody who asks when it could be ready. */
export interface Arrival {
  customer: string;
  date: string;
  /** "13:20", on the yard's clock. */
  time: string;
  what: string;
  number: number;
  /** What becomes of the order later, if anything, and on which day. */
  mind: { kind: 'cancel' | 'later' | 'earlier' | 'more'; on: string } | null;
}

const MINDS = ['cancel', 'later', 'earlier', 'more'] as const;
/** So many of a hundred customers change their minds, all four ways together. */
const MINDS_PERCENT = 16;
const OPENS_HOUR = 9;
const CLOSES_HOUR = 18;

export interface ArrivalsOf {
  name: string;
  from: string;
  days: number;
  ordersAWeek: number;
  asks: readonly Ask[];
  seed: number;
  disturbed: boolean;
}

const mindOf = ({ seed, name, disturbed }: ArrivalsOf, date: string, nth: number): Arrival['mind'] => {
  const dice = diceFor(seed, name, 'mind', date, nth);
  if (!disturbed || !dice.chance(MINDS_PERCENT / 100)) return null;
  return { kind: dice.pick(MINDS), on: daysAfter(date, dice.whole(3, 20)) };
};

/** At most two customers a day, each by half the rate. */
const arrivalsOn = (of: ArrivalsOf, date: string): Arrival[] =>
  [1, 2].flatMap((nth): Arrival[] => {
    const dice = diceFor(of.seed, of.name, 'customer', date, nth);
    if (!dice.chance(of.ordersAWeek / 14)) return [];
    const { what, most } = dice.pick(of.asks);
    const minute = dice.step(OPENS_HOUR * 60, CLOSES_HOUR * 60, 5);
    const time = `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
    const customer = `Customer ${date.slice(5)}.${nth}`;
    return [{ customer, date, time, what, number: dice.whole(1, most), mind: mindOf(of, date, nth) }];
  });

/** Everybody who asks in a season, in order of time; the same for the program and for the planner by hand. */
export const arrivalsOf = (of: ArrivalsOf): Arrival[] =>
  Array.from({ length: of.days }, (_, day) => daysAfter(of.from, day))
    .flatMap((date) => arrivalsOn(of, date))
    .sort((a, b) => `${a.date} ${a.time}`.localeCompare(`${b.date} ${b.time}`));
