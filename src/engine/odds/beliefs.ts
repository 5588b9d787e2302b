import { ENOUGH_RECORD } from '../../../shared/promise-odds.ts';
import type { PiecesOut, YardRecord } from '../../../shared/yard-record.ts';
import { afterSeeing, type Belief, leaningOn, type Seen } from './beta.ts';

/**
 * Where nothing is on record: 1 piece in 20 not good, 1 session in 15 lost, 1 delivery in 10 late. Guesses, on the cautious side;
 * no source. Each counts as much as the cases it is written in.
 */
export const GUESSED = {
  pieces: { bad: 1, good: 19 },
  sessions: { bad: 1, good: 14 },
  deliveries: { bad: 1, good: 9 },
} as const satisfies Record<string, Belief>;

/** Days late of a late delivery, each as likely, where none is on record. A guess, no source. */
const GUESSED_DAYS_LATE: readonly number[] = [1, 2, 3, 5];

/** A mould or a casting leans on what it is one of as if that had been seen in so many turns of it, a supplier in so many deliveries. */
const LEANS = { turns: 20, deliveries: 5 };

/** What is believed of all that goes wrong in a yard. */
export interface Beliefs {
  /** A piece is not good when it comes out: of all, of one casting, and of one casting in one mould. */
  pieces: Belief;
  piecesOf(casting: string): Belief;
  piecesFrom(mould: string, casting: string): Belief;
  /** Nobody can work on a day on which there were to be hours. */
  sessions: Belief;
  /** Goods of a supplier come later than was said. */
  deliveriesOf(supplier: string | null): Belief;
  /** By how many days, each as likely. */
  daysLate: readonly number[];
  /** How much of it is on record. */
  restsOn: { pieces: number; sessions: number; deliveries: number };
  /** There is enough on record to promise by. */
  isEnough: boolean;
}

/**
 * So many of some pieces, not good when they came out.
 *
 * Example: of 10 pieces with one to mend and two scrap: `{ bad: 3, of: 10 }`.
 */
export const seenOf = (pieces: readonly PiecesOut[]): Seen =>
  pieces.reduce(({ bad, of }, one) => ({ bad: bad + one.mend + one.scrap, of: of + one.of }), { bad: 0, of: 0 });

/**
 * What is to be believed by a yard's record: its guesses, and what was seen on top. A casting leans on all of the yard, a mould on
 * the casting, a supplier on all that was brought.
 *
 * Example: of nothing recorded `piecesFrom` of any mould is worth 1 in 20.
 */
export const beliefsOf = ({ pieces, sessions, deliveries }: YardRecord): Beliefs => {
  const all = afterSeeing(GUESSED.pieces, seenOf(pieces));
  const piecesOf = (casting: string) =>
    afterSeeing(leaningOn(all, LEANS.turns), seenOf(pieces.filter((one) => one.casting === casting)));
  const piecesFrom = (mould: string, casting: string) =>
    afterSeeing(leaningOn(piecesOf(casting), LEANS.turns), seenOf(pieces.filter((one) => one.mould === mould)));
  const broughtBy = (list: typeof deliveries): Seen =>
    list.reduce(({ bad, of }, one) => ({ bad: bad + one.daysLate.length, of: of + one.of }), { bad: 0, of: 0 });
  const allBrought = afterSeeing(GUESSED.deliveries, broughtBy(deliveries));
  const late = deliveries.flatMap((one) => one.daysLate);
  const restsOn = { pieces: seenOf(pieces).of, sessions: sessions.of, deliveries: broughtBy(deliveries).of };
  return {
    ...{ pieces: all, piecesOf, piecesFrom },
    sessions: afterSeeing(GUESSED.sessions, sessions),
    deliveriesOf: (supplier) =>
      afterSeeing(
        leaningOn(allBrought, LEANS.deliveries),
        broughtBy(deliveries.filter((one) => one.supplier === supplier)),
      ),
    daysLate: late.length > 0 ? late : GUESSED_DAYS_LATE,
    restsOn,
    isEnough: restsOn.pieces >= ENOUGH_RECORD.pieces && restsOn.sessions >= ENOUGH_RECORD.sessions,
  };
};
