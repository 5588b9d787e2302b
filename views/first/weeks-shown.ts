import { dayNumber } from '../../shared/time.ts';
import type { ReadyFacts } from '../../src/usecases/first/ask-when.ts';
import type { SessionAhead } from '../../src/usecases/first/sessions-ahead.ts';
import type { WeeksColumn } from '../charts/weeks-geometry.ts';
import { dayText } from '../parts/day-text.ts';

/** More sessions than this are drawn a week to a column, or none of them could be seen. */
const MOST_SESSIONS = 44;
const WEEK_DAYS = 7;
const weekOf = (date: string): number => Math.floor((dayNumber(date) + 3) / WEEK_DAYS);

/** One column in words: a session, or all of a week. */
export interface WeeksRow {
  /** The day of the session, or of the first of the week. */
  date: string;
  hands: SessionAhead['hands'];
  moulds: SessionAhead['moulds'];
}

const together = (one: WeeksRow, other: SessionAhead): WeeksRow => ({
  date: one.date,
  hands: { taken: one.hands.taken + other.hands.taken, there: one.hands.there + other.hands.there },
  moulds: { taken: one.moulds.taken + other.moulds.taken, there: one.moulds.there + other.moulds.there },
});

const byWeek = (sessions: readonly SessionAhead[]): WeeksRow[] => {
  const weeks = new Map<number, WeeksRow>();
  for (const session of sessions) {
    const week = weekOf(session.date);
    const before = weeks.get(week);
    weeks.set(week, before ? together(before, session) : session);
  }
  return [...weeks.values()];
};

/** What the strip shows: each session, or each week where there are too many of them. */
export const weeksShown = (sessions: readonly SessionAhead[]): { each: 'session' | 'week'; rows: WeeksRow[] } =>
  sessions.length > MOST_SESSIONS ? { each: 'week', rows: byWeek(sessions) } : { each: 'session', rows: [...sessions] };

const shareOf = ({ taken, there }: { taken: number; there: number }): number => (there === 0 ? 0 : taken / there);

/** The columns of the drawing. */
export const columnsOf = (rows: readonly WeeksRow[]): WeeksColumn[] =>
  rows.map(({ date, hands, moulds }) => ({ day: dayNumber(date), hands: shareOf(hands), moulds: shareOf(moulds) }));

const PERCENT_STEP = 5;

/** "60 %": in steps of five, for no plan is as exact as that. */
export const shareText = (part: { taken: number; there: number }): string =>
  `${Math.round((shareOf(part) * 100) / PERCENT_STEP) * PERCENT_STEP} %`;

/** A date of the answer, with its word; the line that it is drawn by is another for each. */
export interface WeeksFlag {
  look: 'earliest' | 'promise' | 'wanted';
  date: string;
  text: string;
}

/** The dates that the answer speaks of, each once: one that is earliest and the one to promise has both words. */
export const flagsOf = (
  { earliestOn, promiseOn, promiseOdds }: Pick<ReadyFacts, 'earliestOn' | 'promiseOn' | 'promiseOdds'>,
  wantedOn: string | null,
  today: string,
): WeeksFlag[] => {
  const flag = (look: WeeksFlag['look'], date: string | null, word: string): WeeksFlag[] =>
    date === null ? [] : [{ look, date, text: `${word} ${dayText(date, today)}` }];
  const without = promiseOdds === null ? 'without time in hand' : 'at best';
  return [
    ...flag('wanted', wantedOn !== null && wantedOn >= today ? wantedOn : null, 'wanted'),
    ...(promiseOn === null || promiseOn === earliestOn
      ? flag('promise', earliestOn, 'ready')
      : [...flag('earliest', earliestOn, without), ...flag('promise', promiseOn, 'ready')]),
  ];
};
