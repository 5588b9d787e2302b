import type { YardFile } from '../../../shared/yard-file.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { type LateStep, lateSteps } from '../plan/late-steps.ts';
import { lateWords } from '../plan/late-words.ts';
import { lateWork } from '../plan/late-work.ts';
import { listText } from './record-pour.ts';

const stepWords = (step: LateStep, yard: YardFile): string => {
  if (step.kind === 'batch') return `${listText(step.mix.pours.map(({ mould }) => mould))} not poured`;
  if (step.kind === 'strip') return `${step.strip.mould} not stripped`;
  if (step.kind === 'prep') return `${step.pour.mould} not set up`;
  const { id } = step.order;
  return `Not packed for ${yard.orders.find((order) => order.id === id)?.customer ?? `order ${id}`}`;
};

interface GivenUp {
  words: string;
  names: string[];
}

/**
 * Late work was not done: it is planned anew at once, all that is left of it or, where a step is named, that step with
 * what cannot be without it. Undone within the hour, it is on its list again.
 */
export const giveUpLateWork = (context: UseCaseContext, name: string | null): Promise<Outcome<Changed<GivenUp>>> =>
  changing<GivenUp>(
    context,
    { kind: 'not done', words: ({ words }) => words },
    async (_tx, yard, _change, plan) => {
      const late = lateWork(yard, plan);
      const steps = late ? lateSteps(late).filter((step) => name === null || step.name === name) : [];
      const [first] = steps;
      if (!first) return refuse('late', 'That is no longer to be written down. Nothing was changed.');
      const words = name === null ? lateWords(steps, 'not ') : stepWords(first, yard);
      return done({ words, names: steps.map((step) => step.name) });
    },
    { unfixed: ({ names }) => ({ notDone: names }) },
  );
