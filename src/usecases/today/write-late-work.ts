import { type Doubt, doubtPath } from '../../../shared/doubt.ts';
import type { PlanOfWork } from '../../../shared/late-work.ts';
import type { PlanStick } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { goodsOfBatch, goodsOfOrder, linesLeft, type Taken } from '../../engine/book/goods.ts';
import { isMendedByDay, isOut } from '../../engine/book/mould-state.ts';
import type { CutFrom } from '../../engine/book/sheets-cut.ts';
import { sticksLeft } from '../../engine/book/sticks-left.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { packStep } from '../orders/pack-order.ts';
import type { Changed } from '../plan/changing.ts';
import { asked, shortQuestion } from '../plan/doubts.ts';
import { stepsOfSession, toAnswer } from '../plan/late-sessions.ts';
import { cutForOf, workOfStep } from '../plan/late-step-work.ts';
import type { LateStep } from '../plan/late-steps.ts';
import { lateDaysWords, lateWords } from '../plan/late-words.ts';
import { orRecorded, recordedSteps } from '../plan/recorded-once.ts';
import { plannedFor, recordingWork, type WorkStep } from '../plan/recording-work.ts';
import { measuresOf } from '../typed/measures.ts';
import { pieceKeyOf } from './session-step.ts';

/** What a step takes from the stock. */
const goodsOf = (step: LateStep, yard: YardFile): Taken => {
  if (step.kind === 'pack') {
    const order = yard.orders.find(({ id }) => id === step.order.id);
    return goodsOfOrder(order ? linesLeft(order) : [], yard);
  }
  const mix = step.kind === 'batch' && yard.mixes.find(({ id }) => id === step.mix.batch.mix);
  if (step.kind !== 'batch' || !mix) return { goods: [], cuts: [] };
  const castings = step.mix.pours.map(({ casting }) => casting);
  return goodsOfBatch(mix, step.mix.batch.bags, castings, yard);
};

const damagedIn = (step: LateStep, yard: YardFile): string | null => {
  const day = todayIn(yard);
  const moulds = step.kind === 'batch' ? step.mix.pours.map(({ mould }) => mould) : [];
  return (
    yard.moulds.find((mould) => moulds.includes(mould.id) && isOut(mould) && !isMendedByDay(mould, day))?.id ?? null
  );
};

/** How late work is recorded all at once. */
export interface AsPlanned {
  /** The session it is of; null for all of them. */
  session: string | null;
  /** The first step there was on the page. */
  step?: string | null;
  /** What the maker was asked about, and is sure of. */
  sure?: readonly Doubt[];
}

export interface Under {
  sure: readonly Doubt[];
  system: UnitSystem;
}

/** Whether a step is recorded with all the others: one in a damaged mould the maker should look at. */
const doubt = (step: LateStep, yard: YardFile, named: readonly CutFrom[], { sure, system }: Under): Outcome<null> => {
  const damaged = damagedIn(step, yard);
  if (damaged)
    return refuse(
      step.name,
      `${damaged} is marked damaged. If it was poured before that, record this batch by itself.`,
    );
  return asked('short', sure, shortQuestion(yard, { taken: goodsOf(step, yard), named }, system));
};

/** The sticks of work once those are cut that a step cuts. */
const sticksAfter = (step: LateStep, work: PlanOfWork, sticks: readonly PlanStick[], yard: YardFile) => {
  if (step.kind !== 'batch' && step.kind !== 'pack') return sticks;
  const { instantText } = calendarOf(yard.yard.timeZone);
  return sticksLeft({ ...work, sticks }, cutForOf(step), yard.materials, instantText);
};

/**
 * Steps of late work, one after another; what is wrong with one stands at its own name, a question at that of all. Each is cut from the sticks it was
 * planned to be cut from as those before it leave them, though the plan may have to be made anew by then.
 */
export const workSteps = (steps: readonly LateStep[], late: PlanOfWork, under: Under): WorkStep[] => {
  let sticks: readonly PlanStick[] = late.sticks ?? [];
  return steps.map((step) => ({
    nameOf: ({ path }) => (path === doubtPath('short') ? path : step.name),
    answers: step.name,
    work: ({ yard, plan }) => {
      const planned = step.kind === 'pack' ? plannedFor(plan, step.order.id) : [];
      const work = workOfStep(step, yard, { planned, sticks, sheets: late.sheets });
      const named = work.kind === 'poured' || work.kind === 'packed' ? (work.cutFrom ?? []) : [];
      const sure = doubt(step, yard, named, under);
      if (!sure.ok) return sure;
      sticks = sticksAfter(step, late, sticks, yard);
      return done(work);
    },
  }));
};

const pieceOf = ({ strip }: Extract<LateStep, { kind: 'strip' }>, yard: YardFile): string[] => {
  const filledAt =
    'fillEnd' in strip ? strip.fillEnd : yard.inMould.find(({ mould }) => mould === strip.mould)?.filledAt;
  return filledAt === undefined ? [] : [pieceKeyOf(strip.mould, minuteOf(filledAt))];
};

/** By which each step is found again, in whatever way it is recorded a second time. */
const namesOf = (step: LateStep, yard: YardFile): string[] => {
  if (step.kind === 'pack') return step.order.packs ? [step.name] : [step.name, packStep(step.order.id)];
  if (step.kind === 'strip') return [step.name, ...pieceOf(step, yard)];
  const moulds = step.kind === 'batch' ? step.mix.pours.map(({ mould }) => mould) : [];
  return [step.name, ...moulds.map((mould) => `${step.name} ${mould}`)];
};

/** A step under all its names, as it was said: done as planned. */
export const recordedStep = (step: LateStep, yard: YardFile) =>
  recordedSteps(namesOf(step, yard), workOfStep(step, yard, { planned: [], sticks: [] }), yard);

/**
 * All work of sessions that are over which is not recorded is, as it was planned and in order of time: one change, of all
 * sessions or of the one that is named. When one of its steps can't be, none is, and the fault stands at the name of that
 * step; what the stock book has too little of is asked about.
 */
export const writeLateWork = (
  context: UseCaseContext,
  { session, step, sure = [] }: AsPlanned = { session: null },
): Promise<Outcome<Changed<string | null>>> =>
  orRecorded(context, { names: step ? [step] : [], field: 'late' }, () =>
    recordingWork<string>(context, { kind: 'as planned', words: (words) => words }, async (tx, yard, plan, work) => {
      const steps = stepsOfSession(toAnswer(yard, plan, work), session);
      if (steps.length === 0)
        return refuse('late', 'There is nothing left to be recorded as planned. Nothing was changed.');
      const under = { sure, system: (await measuresOf(tx)).system };
      const named = steps.flatMap((one) => recordedStep(one, yard));
      const words = `${lateWords(steps)} as planned${lateDaysWords(steps, todayIn(yard))}`;
      return done({ steps: workSteps(steps, work, under), value: words, named });
    }),
  );
