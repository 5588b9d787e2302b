import type { Tx } from '../../../db/open.ts';
import { firstChangeAt } from '../../../db/stores/change-store.ts';
import { mouldsInOrder } from '../../../db/stores/mould-store.ts';
import { dateOfDay, type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { onDayWords } from '../core/day-words.ts';
import { durationText } from './doubts.ts';

/** When something was done by a form that says a time, and what is known of when it can have been. */
export interface ToldAt {
  /** When, in minutes since 1970. */
  at: Minute;
  /** When it was to be done by the plan; null where that has it not. */
  plannedAt: Minute | null;
  /** It can hardly have been so much earlier than planned. */
  earliest: Minute;
  /** The instant from which on there was any reason to do it: its order was taken. */
  since?: string | null;
}

const DAY = 1440;
/** What was done longer ago than this is asked about, unless the plan had it for then. */
export const WEEK = 7 * DAY;

/** The first minute of which anything is recorded: a change, a piece in a mould, a mould that was emptied; null for none. */
const firstRecorded = async (tx: Tx, { inMould }: YardFile): Promise<Minute | null> => {
  const emptied = (await mouldsInOrder(tx)).map(({ emptiedAt }) => emptiedAt);
  const all = [await firstChangeAt(tx), ...emptied, ...inMould.map(({ filledAt }) => filledAt)];
  const minutes = all.filter((instant) => instant !== null).map(minuteOf);
  return minutes.length > 0 ? Math.min(...minutes) : null;
};

/** What is odd about a time, in the words that come before the question; null where nothing is. */
const oddText = (told: ToldAt, yard: YardFile, first: Minute | null): string | null => {
  const calendar = calendarOf(yard.yard.timeZone);
  const now = minuteOf(yard.yard.now);
  const day = (minute: Minute) => onDayWords(dateOfDay(calendar.dayOf(minute)), dateOfDay(calendar.dayOf(now)));
  const { at, plannedAt, earliest, since } = told;
  const begins = (minute: Minute) => calendar.midnightOf(calendar.dayOf(minute));
  if (first !== null && at < begins(first)) return `The first thing recorded here was done ${day(first)}.`;
  if (since && at < begins(minuteOf(since))) return `Its order was taken ${day(minuteOf(since))}.`;
  if (plannedAt !== null && at < earliest) return `By the plan it is done ${day(plannedAt)}.`;
  const isAsPlanned = plannedAt !== null && Math.abs(at - plannedAt) < DAY;
  return now - at > WEEK && !isAsPlanned ? `That is ${durationText(now - at)} ago.` : null;
};

/**
 * The question about work that is told to have been done long before it was planned, before its order was taken, before all
 * that is recorded, or more than a week ago; null where it may well have been so. Year and day are easily mistyped, and what
 * is recorded of then changes strengths, stock and what came after.
 */
export const farOffQuestion = async (tx: Tx, yard: YardFile, told: ToldAt): Promise<string | null> => {
  const odd = oddText(told, yard, await firstRecorded(tx, yard));
  if (odd === null) return null;
  const calendar = calendarOf(yard.yard.timeZone);
  const [on, today] = [told.at, minuteOf(yard.yard.now)].map((minute) => dateOfDay(calendar.dayOf(minute)));
  return `${odd} Was it really done ${onDayWords(on!, today!)}?`;
};
