import type { Tx } from '../../../db/open.ts';
import { mouldsInOrder } from '../../../db/stores/mould-store.ts';
import { recentWorkRecords } from '../../../db/stores/work-record-store.ts';
import type { Doubt } from '../../../shared/doubt.ts';
import { listText } from '../../../shared/list-text.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { quoted } from '../../../shared/said-back.ts';
import { isInstant, type Minute, minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { batchPoured } from '../../engine/book/carry-pour.ts';
import { fillTimes } from '../../engine/book/curing-times.ts';
import { goodsOfBatch } from '../../engine/book/goods.ts';
import { saidOfBatch } from '../../engine/book/mixing-begun.ts';
import { bagsPoured, pour } from '../../engine/book/pour.ts';
import { cutFromFor } from '../../engine/book/sheets-cut.ts';
import type { BatchTold, PourWork } from '../../engine/book/work-done.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from '../core/context.ts';
import { atWords, clockWords } from '../core/day-words.ts';
import { writtenAt } from '../core/written-at.ts';
import type { Changed } from '../plan/changing.ts';
import { asked, shortQuestion } from '../plan/doubts.ts';
import { farOffQuestion } from '../plan/far-off.ts';
import { isLateStep, minuteOfStep } from '../plan/late-steps.ts';
import { type Once, recordedOnce, recordedSteps } from '../plan/recorded-once.ts';
import { recordingWork } from '../plan/recording-work.ts';
import { measuresOf } from '../typed/measures.ts';

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
  /** For whom all of it is, where that was typed: an order that is open. */
  whom?: string | null;
  /** When the last mould was full, as `writtenAt` has it; null: just now. */
  filledAt: string | null;
  /** What was not by the recipe, was read off the bag or measured. */
  told?: BatchTold;
  /** It was tapped as it was done. */
  tapped?: boolean;
  /** The name of the step on the page. */
  step?: string | null;
  /** What the maker was asked about, and is sure of. */
  sure?: readonly Doubt[];
}

/** The minute at which the last mould was full, which is no later than now. */
const filledMinute = (record: PourRecord, now: string, yard: YardFile, plan: PlanFile): Outcome<Minute> => {
  if (record.filledAt === null) return done(tappedMinute(record, minuteOf(now), plan));
  const at = writtenAt(record.filledAt, { now, yard, path: 'filledAt' });
  return at.ok ? done(minuteOf(at.value)) : at;
};

/** Who taps has washed the mixer out, and his hands: so long after a task the tap says nothing about when it was done. */
export const TAP_MINUTES = 5;

/** When the last mould of a batch that was tapped just now was full: as planned, if the tap came with the end of the batch. */
const tappedMinute = ({ pours }: PourRecord, now: Minute, plan: PlanFile): Minute => {
  const batch = batchPoured(plan, pours);
  if (!batch) return now;
  const full = Math.max(...batch.own.map(({ fillEnd }) => minuteOf(fillEnd)));
  return now >= full && now <= minuteOf(batch.batch.end) + TAP_MINUTES ? full : now;
};

/** The minute of the tap, whenever the moulds were full by then. */
const tappedWhen = ({ tapped = false, filledAt }: PourRecord, { now }: UseCaseContext): Pick<PourWork, 'tappedAt'> =>
  tapped ? { tappedAt: filledAt !== null && isInstant(filledAt) ? filledAt : now } : {};

/** Who mixed is whoever says it, unless somebody else is named. */
const withWho = (record: PourRecord, { by }: UseCaseContext): PourRecord =>
  by === undefined ? record : { ...record, told: { by, ...record.told } };

/** One time is said for a batch: its moulds were full one after another, the last of them by then. */
const workOf = (
  { pours, bags, told }: Pick<PourRecord, 'pours' | 'bags' | 'told'>,
  last: Minute,
  yard: YardFile,
): PourWork => {
  const { instantText } = calendarOf(yard.yard.timeZone);
  const castings = pours.map(({ casting }) => casting);
  const times = fillTimes(castings, last, yard);
  return {
    bags,
    ...(told ? { told } : {}),
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

/** A step that was full before it was to be mixed is asked about: the tap may have been meant for another one. */
const unmixedQuestion = (
  { pours, step }: PourRecord,
  filled: Minute,
  yard: YardFile,
  plan: PlanFile,
): string | null => {
  const { dayOf, instantText } = calendarOf(yard.yard.timeZone);
  const found = step && isLateStep(step) ? batchPoured(plan, pours) : null;
  if (!found || dayOf(minuteOf(found.batch.start)) !== dayOf(filled)) return null;
  if (filled >= minuteOf(found.batch.start)) return null;
  return `By the plan it is mixed from ${clockWords(instantText(minuteOf(found.batch.start)))} on. Is it in its moulds already?`;
};

/** Moulds that were emptied only after the first of a batch was begun to be filled. */
const stillFull = async (tx: Tx, work: PourWork, yard: YardFile): Promise<Outcome<null>> => {
  const emptied = new Map((await mouldsInOrder(tx)).map(({ id, emptiedAt }) => [id, emptiedAt]));
  for (const { mould, casting, filledAt } of work.pours) {
    const at = emptied.get(mould);
    const fill = yard.castings.find(({ id }) => id === casting)?.fillMinutes ?? 0;
    if (at && minuteOf(filledAt) - fill < minuteOf(at))
      return refuse('filledAt', `${mould} was emptied only${atWords(at, today(yard.yard.timeZone, filledAt))}.`);
  }
  return done(null);
};

/** A batch told of a day far off is asked about: one of the plan where it was full on a day before its own. */
const farOff = async (tx: Tx, { filledAt, step }: PourRecord, at: Minute, yard: YardFile): Promise<string | null> => {
  if (filledAt === null) return null;
  const calendar = calendarOf(yard.yard.timeZone);
  const plannedAt = step ? minuteOfStep(step) : null;
  const earliest = plannedAt === null ? 0 : calendar.midnightOf(calendar.dayOf(plannedAt));
  return farOffQuestion(tx, yard, { at, plannedAt, earliest });
};

/** What is asked first: was it done that day, was it mixed by then, was all of it there? */
const questions = async (
  tx: Tx,
  record: PourRecord,
  { work, filled, yard, plan }: { work: PourWork; filled: Minute; yard: YardFile; plan: PlanFile },
): Promise<Outcome<null>> => {
  const { sure = [] } = record;
  const far = asked('day', sure, await farOff(tx, record, filled, yard));
  if (!far.ok) return far;
  const unmixed = asked('unmixed', sure, unmixedQuestion(record, filled, yard, plan));
  if (!unmixed.ok) return unmixed;
  const poured = bagsPoured(work, yard);
  const castings = work.pours.map(({ casting }) => casting);
  if (!poured) return done(null);
  const taken = goodsOfBatch(poured.mix, poured.bags, castings, yard);
  const batch = batchPoured(plan, record.pours)?.batch.id;
  const named = batch === undefined ? [] : cutFromFor(plan, batch);
  return asked('short', sure, shortQuestion(yard, { taken, named }, (await measuresOf(tx)).system));
};

/** The step of late work that a batch is said to be. */
const lateStepOf = ({ step }: PourRecord): string | undefined => (step && isLateStep(step) ? step : undefined);

/** By which a batch is found again: its step with each of its moulds, since others may be filled by another batch of it. */
const namesOf = ({ step, pours }: PourRecord): string[] => (step ? pours.map(({ mould }) => `${step} ${mould}`) : []);

/** What was said of a batch. Whom a planned one is for is the plan's to say, and may be another by the second tap. */
const saidOf = (record: PourRecord, work: PourWork) => ({
  ...{ kind: 'poured' as const, ...work },
  pours: lateStepOf(record) ? work.pours.map((one) => ({ ...one, order: null })) : work.pours,
});

/** A batch as a form tells it, at whatever time. */
const saidOnce = (record: PourRecord, now: string): Once => {
  const pours = record.pours.map(({ sealed, ...one }) => ({ ...one, coated: sealed, filledAt: now }));
  const work = saidOf(record, { pours, bags: record.bags });
  return { names: namesOf(record), work, at: record.filledAt, field: 'pours' };
};

/** When it was said to be mixed, from and until. */
const saidBefore = (records: readonly WorkRecord[], { pours }: PourRecord, filled: Minute) => {
  const [mixedFrom, mixedAt] = (['mixing begun', 'mixed'] as const).map((kind) =>
    saidOfBatch(records, pours, { kind, by: filled }),
  );
  if (!mixedFrom) return {};
  return { mixedFrom, ...(mixedAt && minuteOf(mixedAt) >= minuteOf(mixedFrom) ? { mixedAt } : {}) };
};

/**
 * A batch is in its moulds: bags and what goes into the pieces leave the stock, and each mould holds a piece that begins
 * to set. What was poured stays recorded as it was, whatever the plan had in mind.
 */
export const recordPour = (context: UseCaseContext, record: PourRecord): Promise<Outcome<Changed<Poured | null>>> =>
  recordedOnce(context, saidOnce(record, context.now), () =>
    recordingWork<Poured>(
      context,
      { kind: 'poured', words: ({ at }) => `${listText(record.pours.map(({ mould }) => mould))} poured${at}` },
      async (tx, yard, plan) => {
        const whom = record.whom ?? null;
        if (whom !== null && !yard.orders.some(({ id }) => id === whom))
          return refuse('order', `No open order is called ${quoted(whom)}. Empty it, and the pieces are for stock.`);
        const last = filledMinute(record, context.now, yard, plan);
        if (!last.ok) return last;
        const filled = last.value;
        const work = {
          ...workOf(withWho(record, context), filled, yard),
          ...saidBefore(await recentWorkRecords(tx), record, filled),
          ...tappedWhen(record, context),
        };
        const booked = pour(yard, work);
        const fits = booked.ok ? await stillFull(tx, work, yard) : booked;
        const sure = fits.ok ? await questions(tx, record, { work, filled, yard, plan }) : fits;
        if (!sure.ok) return sure;
        const instant = calendarOf(yard.yard.timeZone).instantText(filled);
        const at = record.filledAt === null ? '' : atWords(instant, today(yard.yard.timeZone, context.now));
        const bags = bagsPoured(work, yard)?.bags ?? 0;
        const named = recordedSteps(namesOf(record), saidOf(record, work), yard);
        const steps = [{ work: () => done({ kind: 'poured' as const, ...work }), answers: lateStepOf(record) }];
        return done({ steps, value: { bags, filled, at }, named });
      },
    ),
  );
