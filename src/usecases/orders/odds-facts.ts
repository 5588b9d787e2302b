import { ODDS_SAID } from '../../../shared/promise-odds.ts';
import { type DateOdds, dayWith } from '../../engine/odds/date-odds.ts';
import type { Spare } from '../../engine/odds/spares.ts';

/** A day, and in how many courses an order is ready by then. */
export interface DayKept {
  on: string;
  by: number;
}

/** A spare piece worth pouring, by its casting's name. */
export interface SpareFacts extends Spare {
  name: string;
  /** When one to spare comes out of its mould by the plan, a date; 'there': one stands in the yard; null: none is planned. */
  planned: string | 'there' | null;
}

/** How sure the day of an order is. */
export interface OddsFacts extends Pick<DateOdds, 'dependsOn' | 'restsOn' | 'isEnough' | 'draws'> {
  /** The first days that are kept with the odds that can be chosen, each once, the soonest first; none where all are too far off. */
  days: readonly DayKept[];
  /** The date that was given, or else the one asked for; null without one. */
  due: DayKept | null;
  spares: readonly SpareFacts[];
}

/** In how many courses a day is kept. */
export const dayKept = ({ days }: DateOdds, on: string): DayKept => ({
  on,
  by: days.filter((day) => day.on <= on).at(-1)?.by ?? 0,
});

/** Odds as pages say them, of a day that somebody was told or would like where there is one. */
export const oddsFacts = (odds: DateOdds, due: string | null, spares: readonly SpareFacts[] = []): OddsFacts => {
  const { dependsOn, restsOn, isEnough, draws } = odds;
  return {
    ...{ dependsOn, restsOn, isEnough, draws, spares },
    days: [...new Set(ODDS_SAID.flatMap(({ share }) => dayWith(odds, share) ?? []))].map((on) => dayKept(odds, on)),
    due: due === null ? null : dayKept(odds, due),
  };
};
