import type { Compute } from '../core/computations.ts';
import type { Background, UseCaseContext } from '../core/context.ts';
import { logLines } from '../core/log-lines.ts';
import { giveUpImproving, improvePlan } from './improve-plan.ts';
import { currentPlan } from './make-plan.ts';

export interface Improving extends Pick<Background, 'planMade' | 'improving'> {
  /** Ends once nothing is written any more. */
  close(): Promise<void>;
}

interface ImprovingParts {
  database: UseCaseContext['database'];
  now: () => string;
  compute: Compute;
  /** Works out, elsewhere than here, what has to be there before anything can be improved. */
  computeForRequest?: Compute;
  /** Makes what is being thought about answer with null. */
  giveUp: () => void;
  /** Told in plain words when something went wrong. */
  tell: (words: string) => void;
}

/**
 * Looks for a better plan whenever one was made in a hurry: one search at a time, and when a newer plan was made in the
 * meantime the search under way is given up for it.
 */
export const keepImproving = ({
  database,
  now,
  compute,
  computeForRequest,
  giveUp,
  tell,
}: ImprovingParts): Improving => {
  let running: Promise<void> | null = null;
  let newer = false;
  let closed = false;

  const improveOnce = async (): Promise<void> => {
    // What is made here is improved right after: nobody has to be told.
    const background = computeForRequest && {
      planMade: () => {},
      improving: () => true,
      compute: computeForRequest,
      computeForRequest,
    };
    const context = { database, now: now(), ...(background ? { background } : {}) };
    await currentPlan(context);
    const outcome = await improvePlan(context, compute);
    if (outcome === 'given up' && !newer && !closed) await giveUpImproving(context);
  };
  const improveUntilNewest = async (): Promise<void> => {
    do {
      newer = false;
      await improveOnce().catch(
        (error: unknown) => !closed && tell(`No better plan could be looked for: ${logLines(error)}`),
      );
    } while (newer && !closed);
    running = null;
  };
  return {
    planMade: () => {
      if (closed) return;
      newer = running !== null;
      if (running) giveUp();
      else running = improveUntilNewest();
    },
    improving: () => running !== null,
    close: async () => {
      closed = true;
      giveUp();
      await running;
    },
  };
};
