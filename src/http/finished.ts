import type { Context, MiddlewareHandler } from 'hono';

/** What is done to an answer before it goes out, or is kept. */
export type Finish = (c: Context) => Promise<void>;

const DONE = 'finished';

/** What is answered was finished before it was kept. */
export const isFinished = (c: Context): void => c.set(DONE, true);

/** Every step in turn, once to each answer, whoever asks for it. */
export const finishing =
  (...steps: readonly Finish[]): Finish =>
  async (c) => {
    if (c.get(DONE)) return;
    isFinished(c);
    for (const step of steps) await step(c);
  };

/** Every answer is finished, whoever made it. */
export const finished =
  (finish: Finish): MiddlewareHandler =>
  async (c, next) => {
    await next();
    await finish(c);
  };
