import type { UseCaseContext } from './context.ts';
import { type LongThoughts, type ThoughtKind, thinkThrough } from './long-thought.ts';

/** What a request knows beside the data: where they are, when it is, and what can be worked out elsewhere. */
export type Moment = Pick<UseCaseContext, 'database' | 'now' | 'background'>;

/**
 * Works out what a request waits for: in a thread where there is one, so that the other requests do not wait for it too.
 * Even the plan of a small yard takes a quarter of a second when it is the first.
 */
export const workOut = async <K extends ThoughtKind>(
  background: UseCaseContext['background'],
  kind: K,
  question: LongThoughts[K]['question'],
): Promise<LongThoughts[K]['answer']> => (await background?.workOut(kind, question)) ?? thinkThrough(kind, question);
