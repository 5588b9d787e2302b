import { addWorkRecords } from '../../../db/stores/work-record-store.ts';
import type { LateTaken, PlanOfWork } from '../../../shared/late-work.ts';
import { listText } from '../../../shared/list-text.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { isInstant, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { batchHeldUp, withBatchBegun } from '../../engine/book/begin-batch.ts';
import { withCompletions } from '../../engine/book/completions.ts';
import { shiftLater } from '../../engine/book/shift-later.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { writtenAt } from '../core/written-at.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { mixesOf } from '../plan/fixed-plan.ts';
import type { FixedMix } from '../plan/fixed-pours.ts';
import { lateStepName, lateTaken } from '../plan/late-steps.ts';
import { withLateWorkDone } from '../plan/late-work-done.ts';

/** A batch, by the first of its moulds and the instant at which it was to begin. */
export interface BatchNamed {
  mould: string;
  at: string;
  /** When it was begun, as `writtenAt` has it; null for just now. */
  begunAt?: string | null;
}

/** A batch that begins now. */
interface Mixing {
  moulds: string[];
  /** When somebody said so, an instant. */
  from: string;
  /** All that there is to do, with the batch at its new time. */
  work: PlanOfWork;
  /** The plan with what comes after it moved later; null where that does not hold, so that it has to be made anew. */
  carried: PlanFile | null;
  taken: LateTaken;
}

const batchOf = (plan: PlanOfWork, yard: YardFile, { mould, at }: BatchNamed): FixedMix | null => {
  if (!isInstant(at)) return null;
  const { dayOf } = calendarOf(yard.yard.timeZone);
  const begins = minuteOf(at);
  if (dayOf(begins) !== dayOf(minuteOf(yard.yard.now))) return null;
  const mixes = mixesOf(plan, ({ start }) => minuteOf(start) === begins);
  return mixes.find(({ pours }) => pours.some((pour) => pour.mould === mould)) ?? null;
};

/** The plan with a batch that has begun just now, and what comes after it as much later as it has to be. */
const carriedOn = (plan: PlanFile, yard: YardFile, { batch }: FixedMix): PlanFile | null => {
  const shifted = shiftLater(plan, yard);
  const begun = shifted?.batches.find(({ id }) => id === batch.id);
  const isNow = begun !== undefined && minuteOf(begun.start) === minuteOf(yard.yard.now);
  return shifted && isNow ? withCompletions(shifted, yard) : null;
};

/** What the list had before, and what stands in for it now. */
const takenBy = (mix: FixedMix, begun: FixedMix['batch'], name: (at: string) => string): LateTaken => {
  const { start: at } = mix.batch;
  const taken = lateTaken([{ kind: 'batch', mix, at, name: name(at) }]);
  return { ...taken, instead: [name(begun.start)] };
};

const begin = (
  { keep: _kept, ...yard }: YardFile,
  plan: PlanFile,
  work: PlanOfWork,
  named: BatchNamed,
): Outcome<Mixing> => {
  const mix = batchOf(plan, yard, named);
  if (!mix) return refuse('at', 'That batch is no longer planned for this time. Look again; nothing was changed.');
  const begunAt = writtenAt(named.begunAt, { now: yard.yard.now, yard });
  if (!begunAt.ok) return begunAt;
  const from = minuteOf(begunAt.value);
  if (minuteOf(mix.batch.start) === from)
    return refuse('at', 'It begins at this minute as it is. Nothing was changed.');
  const begun = withBatchBegun(work, mix, from, yard);
  const worked = withLateWorkDone(yard, begun)?.yard ?? yard;
  const reason = batchHeldUp(worked, work, mix);
  if (reason !== null) return refuse('at', `${reason} Nothing was changed.`);
  const batch = worked.begun?.batches.find(({ id }) => id === mix.batch.id);
  if (!batch) return refuse('at', 'It does not go with what is recorded by now. Nothing was changed.');
  const first = mix.pours.find(({ id }) => id === mix.batch.pours[0]) ?? mix.pours[0];
  return done({
    moulds: mix.pours.map(({ mould }) => mould),
    from: begunAt.value,
    work: begun,
    carried: carriedOn(withBatchBegun(plan, mix, from, yard), yard, mix),
    taken: takenBy(mix, batch, (at) => lateStepName({ kind: 'batch', at, what: first?.mould ?? mix.batch.id })),
  });
};

/**
 * A batch of today is being mixed from this minute on, or from the one that is told, sooner or later than it was planned: it is under way, and what comes
 * after it begins later where it has to. Where that no longer fits, the plan is made anew round it.
 */
export const startMixing = (context: UseCaseContext, named: BatchNamed): Promise<Outcome<Changed<Mixing>>> =>
  changing<Mixing>(
    context,
    { kind: 'mixing', words: ({ moulds }) => `Mixing begun for ${listText(moulds)}` },
    async (tx, yard, _change, plan, work) => {
      const begun = begin(yard, plan, work, named);
      if (begun.ok)
        await addWorkRecords(
          tx,
          [{ kind: 'mixing begun', at: begun.value.from, moulds: begun.value.moulds }],
          context.by,
        );
      return begun;
    },
    {
      carryOn: (_plan, { carried }) => carried,
      unfixed: ({ work }) => ({ work }),
      takes: ({ taken }) => taken,
    },
  );
