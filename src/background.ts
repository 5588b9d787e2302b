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

/** Two threads: one looks for better plans, the other answers what pages ask, so that neither waits for the other. */
export const startBackground = (parts: BackgroundParts): Background & { close(): Promise<void> } => {
  const { improvementLimitMs, questionLimitMs, tell } = parts;
  const search = planThread({ limitMs: improvementLimitMs, tell });
  const questions = planThread({ limitMs: questionLimitMs, tell });
  const { planMade, improving, close } = keepImproving({ ...parts, think: search.think, giveUp: search.giveUp });
  return {
    planMade,
    improving,
    think: questions.think,
    close: async () => {
      await Promise.all([questions.close(), search.close(), close()]);
    },
  };
};
