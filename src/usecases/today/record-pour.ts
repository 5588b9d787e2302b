import type { PlanFile } from '../../../shared/plan.ts';
import { clockMinutes, isInstant, type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { batchPoured } from '../../engine/book/carry-pour.ts';
import { fillTimes } from '../../engine/book/curing-times.ts';
import { bagsPoured } from '../../engine/book/pour.ts';
import type { PourWork } from '../../engine/book/work-done.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import type { Changed } from '../plan/changing.ts';
import { recordingWork } from '../plan/recording-work.ts';

/** One mould that was filled. `sealed`: it got its sealing coat before this pour. */
interface Filled {
  mould: string;
  casting: string;
  order: string | null;
  sealed: boolean;
}

export interface PourRecord {
  /** In the order of filling. */
  pours: readonly Filled[];
  /** How many bags were mixed; null: as many as the pieces need. */
  bags: number | null;
  /** When the last mould was full: an instant, or by the clock of today ("10:45"); null: just now. */
  filledAt: string | null;
}

/** "900 no. 1, 900 no. 2 and 800 no. 1" */
export const listText = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

const CLOCK = /^([01]\d|2[0-3]):[0-5]\d$/;

const noLater = (minute: Minute, now: Minute): Outcome<Minute> =>
  minute <= now ? done(minute) : refuse('filledAt', 'That time is still to come.');

/** The minute at which the last mould was full, which is no later than now. */
const filledMinute = (record: PourRecord, now: Minute, yard: YardFile, plan: PlanFile): Outcome<Minute> => {
  const { filledAt } = record;
  if (filledAt === null) return done(tappedMinute(record, now, plan));
  if (isInstant(filledAt)) return noLater(minuteOf(filledAt), now);
  if (!CLOCK.test(filledAt)) return refuse('filledAt', 'When? Write a time of today such as 10:45.');
  const calendar = calendarOf(yard.yard.timeZone);
  return noLater(calendar.minuteAt(calendar.dayOf(now), clockMinutes(filledAt)), now);
};

/** Who taps has washed the mixer out, and his hands: so long after a batch the tap says nothing about when moulds were full. */
const TAP_MINUTES = 5;

/** When the last mould of a batch that was tapped just now was full: as planned, if the tap came with the end of the batch. */
const tappedMinute = ({ pours }: PourRecord, now: Minute, plan: PlanFile): Minute => {
  const batch = batchPoured(plan, pours);
  if (!batch) return now;
  const full = Math.max(...batch.own.map(({ fillEnd }) => minuteOf(fillEnd)));
  return now >= full && now <= minuteOf(batch.batch.end) + TAP_MINUTES ? full : now;
};

/** One time is said for a batch: its moulds were full one after another, the last of them by then. */
const workOf = ({ pours, bags }: PourRecord, last: Minute, yard: YardFile): PourWork => {
  const { instantText } = calendarOf(yard.yard.timeZone);
  const castings = pours.map(({ casting }) => casting);
  const times = fillTimes(castings, last, yard);
  return {
    bags,
    pours: pours.map(({ sealed, ...pour }, place) => ({
      ...{ ...pour, coated: sealed, filledAt: instantText(times[place]!) },
    })),
  };
};

export interface Poured {
  bags: number;
  filled: Minute;
  /** When, in the words of the change: " at 9:05"; nothing for just now. */
  at: string;
}

/** " at 9:05" of an instant as it stands in a sentence. */
const atWords = (instant: string): string => ` at ${instant.slice(11, 16).replace(/^0/, '')}`;

/**
 * A batch is in its moulds: bags and what goes into the pieces leave the stock, and each mould holds a piece that begins
 * to set. What was poured stays recorded as it was, whatever the plan had in mind.
 */
export const recordPour = (context: UseCaseContext, record: PourRecord): Promise<Outcome<Changed<Poured>>> =>
  recordingWork<Poured>(
    context,
    { kind: 'poured', words: ({ at }) => `${listText(record.pours.map(({ mould }) => mould))} poured${at}` },
    async (_tx, yard, plan) => {
      const last = filledMinute(record, minuteOf(context.now), yard, plan);
      const filled = last.ok ? last.value : minuteOf(context.now);
      const work = workOf(record, filled, yard);
      const at = record.filledAt === null ? '' : atWords(calendarOf(yard.yard.timeZone).instantText(filled));
      const bags = bagsPoured(work, yard)?.bags ?? 0;
      const steps = [{ work: () => (last.ok ? done({ kind: 'poured' as const, ...work }) : last) }];
      return done({ steps, value: { bags, filled, at } });
    },
  );
