import { countText } from '../../shared/plural.ts';
import type { SessionStep } from '../../src/usecases/today/session-step.ts';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { isOver, isWork, workText } from './today-text.ts';

/** The steps of a session as somebody needs them who stands in the yard. */
export interface AtHand {
  /** Over and not recorded, but for the one below: nobody looks for it among what comes next. */
  past: readonly SessionStep[];
  /** Over a little while ago and not recorded: who did it is about to say so. */
  justOver: SessionStep | null;
  /** Under way, or the next to begin. */
  due: SessionStep | null;
  next: readonly SessionStep[];
  rest: readonly SessionStep[];
}

const LITTLE_WHILE_MS = 30 * 60_000;
const NEXT = 2;

/** Of what was over lately the last batch, for what it leaves waits for nobody; else what was over last. */
const justOverOf = (over: readonly SessionStep[], now: string): SessionStep | null => {
  const lately = over.filter((step) => isWork(step) && Date.parse(now) - Date.parse(step.until) < LITTLE_WHILE_MS);
  return lately.findLast(({ kind }) => kind === 'batch') ?? lately.at(-1) ?? null;
};

/**
 * What of a session's steps is shown at once. What is under way is never over, and before a session nothing is. Opening the
 * yard and clearing it up are known without a list.
 *
 * At 9:00, with steps over at 8:22 and 8:52 and others to come, the first is past, the second just over and the third due.
 */
export const atHand = ({
  steps,
  begun,
  now,
  underWay,
}: Pick<TodayModel, 'steps' | 'begun' | 'now' | 'underWay'>): AtHand => {
  const isPast = (step: SessionStep) => underWay && isOver(step, { now }) && !begun.some((one) => one.step === step);
  const over = steps.filter(isPast);
  const [due = null, ...next] = steps.filter((step) => isWork(step) && !isPast(step)).slice(0, 1 + NEXT);
  const justOver = justOverOf(over, now);
  return {
    past: over.filter((step) => step !== justOver),
    ...{ justOver, due, next },
    rest: steps.filter((step) => !isPast(step) && step !== due && !next.includes(step)),
  };
};

/** "3 steps not recorded: pour 2 pieces"; null where nothing of it is work. */
export const pastText = (past: readonly SessionStep[]): string | null => {
  const work = past.filter(isWork);
  return work.length === 0 ? null : `${countText(work.length, 'step')} not recorded: ${workText(work)}`;
};

/** "After that 9 steps more: pour 4 pieces and strip 2"; null where there is nothing. */
export const restText = (rest: readonly SessionStep[]): string | null => {
  const work = rest.filter(isWork);
  if (rest.length === 0) return null;
  if (work.length === 0) return 'After that the yard is cleared up';
  return `After that ${countText(work.length, 'step')} more: ${workText(work)}`;
};
