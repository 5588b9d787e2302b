import { ODDS_SAID } from '../../../shared/promise-odds.ts';
import { type DateOdds, dayWith } from '../../engine/odds/date-odds.ts';
import type { Spare } from '../../engine/odds/spares.ts';

/** The first day by which an order is ready so many times out of so many; null where that is too far off. */
interface DayByOdds {
  times: number;
  of: number;
  on: string | null;
}

/** A spare piece worth pouring, by its casting's name. */
export interface SpareFacts extends Spare {
  name: string;
}

/** How sure the day of an order is. */
export interface OddsFacts extends Pick<DateOdds, 'dependsOn' | 'restsOn' | 'isEnough' | 'draws'> {
  days: readonly DayByOdds[];
  /** The date that was given, or else the one asked for, and in how many courses it is kept; null without one. */
  due: { on: string; by: number } | null;
  spares: readonly SpareFacts[];
}

const keptBy = ({ days }: DateOdds, on: string): number => days.filter((day) => day.on <= on).at(-1)?.by ?? 0;

/** Odds as pages say them, of a day that somebody was told or would like where there is one. */
export const oddsFacts = (odds: DateOdds, due: string | null, spares: readonly SpareFacts[] = []): OddsFacts => {
  const { dependsOn, restsOn, isEnough, draws } = odds;
  return {
    ...{ dependsOn, restsOn, isEnough, draws, spares },
    days: ODDS_SAID.map(({ share, times, of }) => ({ times, of, on: dayWith(odds, share) })),
    due: due === null ? null : { on: due, by: keptBy(odds, due) },
  };
};
