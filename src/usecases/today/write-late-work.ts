import type { YardFile } from '../../../shared/yard-file.ts';
import { type Goods, goodsOfBatch, goodsOfOrder, shortOf } from '../../engine/book/goods.ts';
import { isMendedByDay, isOut } from '../../engine/book/mould-state.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import type { Changed } from '../plan/changing.ts';
import { workOfStep } from '../plan/late-step-work.ts';
import { type LateStep, lateSteps } from '../plan/late-steps.ts';
import { lateWords } from '../plan/late-words.ts';
import { lateWork } from '../plan/late-work.ts';
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
  work: ({ yard, plan }) => {
    const reason = doubt(step, yard);
    if (reason) return refuse(step.name, reason);
    return done(workOfStep(step, yard, step.kind === 'pack' ? plannedFor(plan, step.order.id) : []));
  },
});

/**
 * All work of a session that is over and was not written down yet is, as it was planned and in order of time: one change.
 * When one of its steps can't be, none is, and the fault stands at the name of that step.
 */
export const writeLateWork = (context: UseCaseContext): Promise<Outcome<Changed<readonly LateStep[]>>> =>
  recordingWork<readonly LateStep[]>(
    context,
    { kind: 'as planned', words: (steps) => `${lateWords(steps)} as planned` },
    async (_tx, yard, plan) => {
      const late = lateWork(yard, plan);
      if (!late) return refuse('late', 'There is nothing left to be written down as planned. Nothing was changed.');
      const steps = lateSteps(late);
      return done({ steps: steps.map(workStep), value: steps });
    },
  );
