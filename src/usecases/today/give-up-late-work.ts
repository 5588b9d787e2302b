import type { PlanOfWork } from '../../../shared/late-work.ts';
import { listText } from '../../../shared/list-text.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { stepsOfSession, toAnswer } from '../plan/late-sessions.ts';
import type { LateStep } from '../plan/late-steps.ts';
import { lateDaysWords, lateWords } from '../plan/late-words.ts';
import { stepsToRecord } from '../plan/steps-to-record.ts';

const stepWords = (step: LateStep, yard: YardFile): string => {
  if (step.kind === 'batch') return `${listText(step.mix.pours.map(({ mould }) => mould))} not poured`;
  if (step.kind === 'strip') return `${step.strip.mould} not stripped`;
  if (step.kind === 'coat') return `${step.coat.mould} not coated`;
  if (step.kind === 'prep') return `${step.pour.mould} not set up`;
  const { id } = step.order;
  return `Not packed for ${yard.orders.find((order) => order.id === id)?.customer ?? `order ${id}`}`;
};

interface GivenUp {
  words: string;
  names: string[];
}

/** Which late work was not done: one step, all of one session, or all of it. */
export interface NotDone {
  step: string | null;
  session: string | null;
}

const stepsGivenUp = (
  yard: YardFile,
  plan: PlanOfWork,
  work: PlanOfWork,
  { step: name, session }: NotDone,
): LateStep[] => {
  if (name === null) return stepsOfSession(toAnswer(yard, plan, work), session);
  return stepsToRecord(yard, work).filter((step) => step.name === name);
};

/**
 * Late work was not done, or what counts as under way was not begun: it is planned anew at once, with what cannot be
 * without it. Undone, it is on its list again.
 */
export const giveUpLateWork = (context: UseCaseContext, what: NotDone): Promise<Outcome<Changed<GivenUp>>> =>
  changing<GivenUp>(
    context,
    { kind: 'not done', words: ({ words }) => words },
    async (_tx, yard, _change, plan, work) => {
      const steps = stepsGivenUp(yard, plan, work, what);
      const [first] = steps;
      if (!first) return refuse('late', 'That is no longer to be recorded. Nothing was changed.');
      const said = what.step === null ? lateWords(steps, 'not ') : stepWords(first, yard);
      const words = `${said}${lateDaysWords(steps, todayIn(yard))}`;
      return done({ words, names: steps.map((step) => step.name) });
    },
    { unfixed: ({ names }) => ({ notDone: names }) },
  );
