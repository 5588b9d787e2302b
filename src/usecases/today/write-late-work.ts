import type { YardFile } from '../../../shared/yard-file.ts';
import { type Goods, goodsOfBatch, goodsOfOrder, shortOf } from '../../engine/book/goods.ts';
import { isMendedByDay, isOut } from '../../engine/book/mould-state.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import type { Changed } from '../plan/changing.ts';
import { stepsOfSession, toAnswer } from '../plan/late-sessions.ts';
import { workOfStep } from '../plan/late-step-work.ts';
import type { LateStep } from '../plan/late-steps.ts';
import { lateWords } from '../plan/late-words.ts';
import { plannedFor, recordingWork, type WorkStep } from '../plan/recording-work.ts';

/** What a step takes from the stock. */
const goodsOf = (step: LateStep, yard: YardFile): Goods[] => {
  if (step.kind === 'pack') return goodsOfOrder(yard.orders.find(({ id }) => id === step.order.id)?.lines ?? [], yard);
  const mix = step.kind === 'batch' && yard.mixes.find(({ id }) => id === step.mix.batch.mix);
  if (step.kind !== 'batch' || !mix) return [];
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
const doubt = (step: LateStep, yard: YardFile): string | null => {
  const damaged = damagedIn(step, yard);
  if (damaged) return `${damaged} is marked damaged. If it was poured before that, write this batch down by itself.`;
  const short = shortOf(yard, goodsOf(step, yard));
  const it = step.kind === 'pack' ? 'order' : 'batch';
  return (
    short &&
    `By the stock book there is too little ${short} for it. Write down what arrived or count it, or write this ${it} down by itself.`
  );
};

/** A step of late work; what is wrong with it stands at its own name. */
const workStep = (step: LateStep): WorkStep => ({
  name: step.name,
  answers: step.name,
  work: ({ yard, plan }) => {
    const reason = doubt(step, yard);
    if (reason) return refuse(step.name, reason);
    return done(workOfStep(step, yard, step.kind === 'pack' ? plannedFor(plan, step.order.id) : []));
  },
});

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
      return done({ steps: steps.map(workStep), value: steps });
    },
  );
