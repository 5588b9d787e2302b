import { planThread } from './plan-thread.ts';
import type { Background, UseCaseContext } from './usecases/context.ts';
import { keepImproving } from './usecases/keep-improving.ts';

interface BackgroundParts {
  database: UseCaseContext['database'];
  now: () => string;
  /** How long a better plan may be looked for before that is given up. */
  improvementLimitMs: number;
  /** How long an answer to a page's question may take. */
  questionLimitMs: number;
  tell: (words: string) => void;
}

/**
 * Three threads, so that none waits for another: one looks for better plans, one answers what pages ask, one makes the
 * plans and dates that a request of a large yard waits for.
 */
export const startBackground = (parts: BackgroundParts): Background & { close(): Promise<void> } => {
  const { improvementLimitMs, questionLimitMs, tell } = parts;
  const search = planThread({ limitMs: improvementLimitMs, tell });
  const questions = planThread({ limitMs: questionLimitMs, tell });
  const requests = planThread({ limitMs: questionLimitMs, tell });
  const { planMade, improving, close } = keepImproving({ ...parts, think: search.think, giveUp: search.giveUp });
  return {
    planMade,
    improving,
    think: questions.think,
    workOut: requests.think,
    close: async () => {
      await Promise.all([questions.close(), requests.close(), search.close(), close()]);
    },
  };
};
