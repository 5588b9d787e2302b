import { planThread } from './plan-thread.ts';
import type { Background, UseCaseContext } from './usecases/core/context.ts';
import { keepImproving } from './usecases/plan/keep-improving.ts';

interface BackgroundParts {
  database: UseCaseContext['database'];
  now: () => string;
  /** How long a better plan may be looked for before that is given up. */
  improvementLimitMs: number;
  /** How long an answer to a page's question may take. */
  questionLimitMs: number;
  tell: (words: string) => void;
}

/** Somebody at work is back sooner than this, and should not wait for a thread to start. */
const REQUESTS_IDLE_MS = 600_000;

/**
 * Three threads, so that none waits for another: one looks for better plans and ponders questions, one answers what pages ask, one makes the
 * plans and dates that a request of a large yard waits for.
 */
export const startBackground = (parts: BackgroundParts): Background & { close(): Promise<void> } => {
  const { improvementLimitMs, questionLimitMs, tell } = parts;
  const search = planThread({ limitMs: improvementLimitMs, tell, standsBack: true });
  const questions = planThread({ limitMs: questionLimitMs, tell });
  // What it gives up is worked out on the thread of the requests, so that is the very last thing to happen.
  const requests = planThread({ limitMs: improvementLimitMs, idleMs: REQUESTS_IDLE_MS, tell });
  const { planMade, improving, close } = keepImproving({
    ...parts,
    ...{ compute: search.compute, giveUp: search.giveUp, computeForRequest: requests.compute },
  });
  return {
    // What is pondered beside a plan that is no more is given up.
    planMade: () => {
      search.giveUp();
      planMade();
    },
    improving,
    ponder: search.compute,
    compute: questions.compute,
    computeForRequest: requests.compute,
    close: async () => {
      await Promise.all([questions.close(), requests.close(), search.close(), close()]);
    },
  };
};
