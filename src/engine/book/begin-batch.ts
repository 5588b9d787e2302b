import type { PlanOfWork } from '../../../shared/late-work.ts';
import type { PlanBatch, PlanPour } from '../../../shared/plan.ts';
import { thereIsNo } from '../../../shared/said-back.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { isMendedByDay, isOut } from './mould-state.ts';
import { todayIn } from './today-in.ts';

/** A batch with its pours in the order in which they are filled. */
interface Mix {
  batch: PlanBatch;
  pours: readonly PlanPour[];
}

const clock = (yard: YardFile, minute: Minute): string =>
  calendarOf(yard.yard.timeZone).instantText(minute).slice(11, 16).replace(/^0/, '');

const isFull = ({ inMould, begun }: YardFile, { batch }: Mix, mould: string): boolean =>
  inMould.some((piece) => piece.mould === mould) ||
  (begun?.pours ?? []).some((pour) => pour.mould === mould && pour.batch !== batch.id);

/** Set up by now: nothing was left to do, or its set-up is over and the mould is as it left it. */
const isSetUp = (yard: YardFile, { mould: id, casting, prepStart, prepEnd }: PlanPour): boolean => {
  const mould = yard.moulds.find((one) => one.id === id);
  const isReady = mould?.prepped === true && mould.setFor === casting;
  return isReady || (prepStart === prepEnd && mould?.condition !== 'dirty');
};

const mouldHeldUp = (yard: YardFile, work: PlanOfWork, mix: Mix, pour: PlanPour): string | null => {
  const { mould: id } = pour;
  const mould = yard.moulds.find((one) => one.id === id);
  if (!mould) return thereIsNo('mould', id);
  if (isOut(mould) && !isMendedByDay(mould, todayIn(yard))) return `${id} is out of use. Mark it mended first.`;
  if (isFull(yard, mix, id)) return `${id} has a piece in it. Strip it first.`;
  const comesBefore = (one: PlanPour): boolean =>
    one.mould === id && one.batch !== mix.batch.id && minuteOf(one.prepStart) < minuteOf(pour.prepStart);
  if (work.pours.some((one) => comesBefore(one) && minuteOf(one.fillEnd) > minuteOf(yard.yard.now)))
    return `Another piece comes before it in ${id}. Record that first.`;
  const dry = mould.dryFrom === undefined ? 0 : minuteOf(mould.dryFrom);
  if (dry > minuteOf(yard.yard.now)) return `The sealing coat of ${id} dries until ${clock(yard, dry)}.`;
  return isSetUp(yard, pour) ? null : `${id} is not set up yet. Mark it ready to pour first.`;
};

const mixerHeldUp = (yard: YardFile, { batch }: Mix): string | null => {
  const mixing = (yard.begun?.batches ?? [])
    .filter(({ id }) => id !== batch.id)
    .map(({ mixEnd }) => minuteOf(mixEnd))
    .filter((end) => end > minuteOf(yard.yard.now));
  if (mixing.length < yard.yard.mixers) return null;
  return `The mixer is busy with another batch until ${clock(yard, Math.min(...mixing))}.`;
};

/**
 * Why a batch cannot begin at a yard's now, in plain words; null when it can. The yard is that of work as it goes on: what
 * is over is done, what is under way is in `begun`. Whether there are hands for it is not asked: who mixes has them.
 *
 * Example: at 9:00 a batch of 9:05 is held up by a mould that is set up until 9:02: "900 no. 2 is not set up yet. Mark it ready
 * to pour first."
 */
export const batchHeldUp = (yard: YardFile, work: PlanOfWork, mix: Mix): string | null =>
  mix.pours.map((pour) => mouldHeldUp(yard, work, mix, pour)).find((reason) => reason !== null) ??
  mixerHeldUp(yard, mix);

/**
 * The work of a plan in which a batch begins at a minute, sooner or later than it was planned, with its pours as long after
 * it as they were; its set-ups, its strips and all else stay where they are, and so may no longer go with it.
 *
 * Example: begun at 9:00 and not at 9:05, a mould of 9:22 is full at 9:17.
 */
export const withBatchBegun = <W extends PlanOfWork>(work: W, { batch }: Mix, at: Minute, yard: YardFile): W => {
  const { instantText } = calendarOf(yard.yard.timeZone);
  const moved = (instant: string): string => instantText(minuteOf(instant) + at - minuteOf(batch.start));
  const begun = { start: moved(batch.start), mixEnd: moved(batch.mixEnd), end: moved(batch.end) };
  const filled = (pour: PlanPour): PlanPour => {
    const asIs = pour.prepStart === pour.prepEnd;
    const prep = asIs ? { prepStart: begun.start, prepEnd: begun.start } : {};
    return { ...pour, ...prep, fillStart: moved(pour.fillStart), fillEnd: moved(pour.fillEnd) };
  };
  // A stick is there when the first of its cuts is made.
  const sticks = work.sticks?.map((stick) =>
    minuteOf(stick.openedAt) > at && stick.cuts.some((cut) => cut.for === batch.id)
      ? { ...stick, openedAt: begun.start }
      : stick,
  );
  return {
    ...work,
    batches: work.batches.map((one) => (one.id === batch.id ? { ...one, ...begun } : one)),
    pours: work.pours.map((pour) => (pour.batch === batch.id ? filled(pour) : pour)),
    ...(sticks ? { sticks } : {}),
  };
};
