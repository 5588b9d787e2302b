import type { StoredPlan } from '../../../db/stores/plan-store.ts';
import { addWorkRecords } from '../../../db/stores/work-record-store.ts';
import type { LateTaken, PlanOfWork } from '../../../shared/late-work.ts';
import type { PlanFile, PlanStrip } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { withCompletions } from '../../engine/book/completions.ts';
import { hasHandsToStrip, withStripPutOff } from '../../engine/book/put-off-strip.ts';
import { shiftLater } from '../../engine/book/shift-later.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import type { Session } from '../../engine/calendar/sessions.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { clockWords } from '../core/day-words.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { sessionsOfDay } from '../plan/hours-of-day.ts';
import { lateStepName, lateTaken } from '../plan/late-steps.ts';
import { planForNow } from '../plan/make-plan.ts';

/** So much later a piece that is not hard yet is looked at again. */
export const LOOK_AGAIN_MINUTES = 15;

/** What can be done where it does not fit. */
const LEAVE_OUT = 'Say first of a step that it is not done, or make the hours longer. Nothing was changed.';

/** A piece that is not hard yet. */
interface PutOff {
  mould: string;
  /** When it is looked at again, as a clock shows it. */
  clock: string;
  /** What there is to do, and the plan, with its strip at that time and all else where it was. */
  work: PlanOfWork;
  plan: PlanFile;
  /** The plan with what comes after it moved later; null where that does not hold, so that it has to be made anew. */
  carried: PlanFile | null;
  taken: LateTaken;
}

/** The plan as it was stored before. */
interface Stood {
  stored: StoredPlan;
}

/** The hours under way that still go on while a piece is stripped; null where nobody is there. */
const hoursFor = (yard: YardFile, from: Minute, to: Minute): Session | null =>
  sessionsOfDay(yard, calendarOf(yard.yard.timeZone).dayOf(from)).find(
    (session) => session.start <= minuteOf(yard.yard.now) && from >= session.from && to <= session.to,
  ) ?? null;

const takenBy = (strip: PlanStrip, at: string): LateTaken => {
  const name = (instant: string) => lateStepName({ kind: 'strip', at: instant, what: strip.mould });
  const taken = lateTaken([{ kind: 'strip', strip, at: strip.stripStart, name: name(strip.stripStart) }]);
  return { ...taken, instead: [name(at)] };
};

/** The plan with its strip from a minute on; all that was to come after it comes after it, as much later as it has to be. */
const carriedOn = (plan: PlanFile, yard: YardFile, mould: string, at: Minute): PlanFile | null => {
  const shifted = shiftLater(plan, yard, new Map([[mould, at]]));
  return shifted && withCompletions(shifted, yard);
};

const putOff = (
  { keep: _kept, ...yard }: YardFile,
  plan: PlanFile,
  work: PlanOfWork,
  mould: string,
): Outcome<PutOff> => {
  const strip = work.strips.find((one) => one.mould === mould);
  if (!strip || !yard.inMould.some((piece) => piece.mould === mould))
    return refuse('mould', `${mould} has no piece in it that is to be stripped. Nothing was changed.`);
  const { instantText } = calendarOf(yard.yard.timeZone);
  const at = minuteOf(yard.yard.now) + LOOK_AGAIN_MINUTES;
  const clock = clockWords(instantText(at));
  if (minuteOf(strip.stripStart) >= at)
    return refuse('mould', `${mould} is stripped only after ${clock} as it is. Nothing was changed.`);
  const hours = hoursFor(yard, at, at + minuteOf(strip.stripEnd) - minuteOf(strip.stripStart));
  if (!hours)
    return refuse(
      'mould',
      `At ${clock} nobody is there to strip ${mould}, by the hours under way. Nothing was changed.`,
    );
  const carried = carriedOn(plan, yard, mould, at);
  if (!carried && !hasHandsToStrip(plan, yard, hours, mould, at))
    return refuse('mould', `At ${clock} all hands are at other work, and the rest no longer fits. ${LEAVE_OUT}`);
  return done({
    ...{ mould, clock, work: withStripPutOff(work, mould, at, yard), plan: withStripPutOff(plan, mould, at, yard) },
    carried,
    taken: takenBy(strip, instantText(at)),
  });
};

/** That somebody looked at a piece and it was not hard: with when it is stripped, that says when it was. */
const notHard = ({ inMould, yard: { now } }: YardFile, mould: string): WorkRecord[] =>
  inMould
    .filter((piece) => piece.mould === mould)
    .map(({ casting, filledAt }) => ({ kind: 'not hard', at: now, mould, casting, filledAt }));

/**
 * A piece that was to be stripped is not hard yet: it is looked at again a quarter of an hour from now, and what waits for it
 * or for the hands moves later. Where that no longer fits, the plan is made anew round it.
 */
export const lookAgain = (context: UseCaseContext, mould: string): Promise<Outcome<Changed<PutOff & Stood>>> =>
  changing<PutOff & Stood>(
    context,
    { kind: 'not hard yet', words: ({ clock }) => `${mould} not hard yet, to be looked at again at ${clock}` },
    async (tx, yard, _change, plan, work) => {
      const outcome = putOff(yard, plan, work, mould);
      if (!outcome.ok) return outcome;
      const { stored } = (await planForNow(tx, context)).cached;
      await addWorkRecords(tx, notHard(yard, mould), context.by);
      return done({ ...outcome.value, stored });
    },
    {
      carryOn: (_plan, { carried }) => carried,
      // Made anew, the plan is to stand as it stands with the strip put off: what is fixed of the session stays there.
      unfixed: ({ work, plan, stored }) => ({ work, standAgain: { ...stored, plan } }),
      takes: ({ taken }) => taken,
    },
  );
