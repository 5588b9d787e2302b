import type { PlanOfWork } from '../../../shared/late-work.ts';
import type { PlanStick } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { goodsOfBatch, goodsOfOrder, type Taken } from '../../engine/book/goods.ts';
import { isMendedByDay, isOut } from '../../engine/book/mould-state.ts';
import type { StickCut } from '../../engine/book/sticks-cut.ts';
import { sticksLeft } from '../../engine/book/sticks-left.ts';
import { shortOf } from '../../engine/book/stock-taken.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import type { Changed } from '../plan/changing.ts';
import { stepsOfSession, toAnswer } from '../plan/late-sessions.ts';
import { cutForOf, workOfStep } from '../plan/late-step-work.ts';
import type { LateStep } from '../plan/late-steps.ts';
import { lateWords } from '../plan/late-words.ts';
import { plannedFor, recordingWork, type WorkStep } from '../plan/recording-work.ts';

/** What a step takes from the stock. */
const goodsOf = (step: LateStep, yard: YardFile): Taken => {
  if (step.kind === 'pack') return goodsOfOrder(yard.orders.find(({ id }) => id === step.order.id)?.lines ?? [], yard);
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

/** Why a step is not recorded with all the others: the maker should look at it. Null where nothing speaks against it. */
const doubt = (step: LateStep, yard: YardFile, named: readonly StickCut[]): string | null => {
  const damaged = damagedIn(step, yard);
  if (damaged) return `${damaged} is marked damaged. If it was poured before that, write this batch down by itself.`;
  const short = shortOf(yard, goodsOf(step, yard), named);
  const it = step.kind === 'pack' ? 'order' : 'batch';
  return (
    short &&
    `By the stock book there is too little ${short} for it. Write down what arrived or count it, or write this ${it} down by itself.`
  );
};

/** The sticks of work once those are cut that a step cuts. */
const sticksAfter = (step: LateStep, work: PlanOfWork, sticks: readonly PlanStick[], yard: YardFile) => {
  if (step.kind !== 'batch' && step.kind !== 'pack') return sticks;
  const { instantText } = calendarOf(yard.yard.timeZone);
  return sticksLeft({ ...work, sticks }, cutForOf(step), yard.materials, instantText);
};

/**
 * Steps of late work, one after another; what is wrong with one stands at its own name. Each is cut from the sticks it was
 * planned to be cut from as those before it leave them, though the plan may have to be made anew by then.
 */
const workSteps = (steps: readonly LateStep[], late: PlanOfWork): WorkStep[] => {
  let sticks: readonly PlanStick[] = late.sticks ?? [];
  return steps.map((step) => ({
    name: step.name,
    answers: step.name,
    work: ({ yard, plan }) => {
      const planned = step.kind === 'pack' ? plannedFor(plan, step.order.id) : [];
      const work = workOfStep(step, yard, { planned, sticks });
      const named = work.kind === 'poured' || work.kind === 'packed' ? (work.cutFrom ?? []) : [];
      const reason = doubt(step, yard, named);
      if (reason) return refuse(step.name, reason);
      sticks = sticksAfter(step, late, sticks, yard);
      return done(work);
    },
  }));
};

/**
 * All work of sessions that are over which is not recorded is, as it was planned and in order of time: one change, of all
 * sessions or of the one that is named. When one of its steps can't be, none is, and the fault stands at the name of that
 * step.
 */
export const writeLateWork = (
  context: UseCaseContext,
  session: string | null = null,
): Promise<Outcome<Changed<readonly LateStep[]>>> =>
  recordingWork<readonly LateStep[]>(
    context,
    { kind: 'as planned', words: (steps) => `${lateWords(steps)} as planned` },
    async (_tx, yard, plan, work) => {
      const steps = stepsOfSession(toAnswer(yard, plan, work), session);
      if (steps.length === 0)
        return refuse('late', 'There is nothing left to be recorded as planned. Nothing was changed.');
      return done({ steps: workSteps(steps, work), value: steps });
    },
  );
