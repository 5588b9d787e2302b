import { type ComputationKind, type Computations, computeHere } from './computations.ts';
import type { UseCaseContext } from './context.ts';

/** What a request knows beside the data: where they are, when it is, and what can be worked out elsewhere. */
export type Moment = Pick<UseCaseContext, 'database' | 'now' | 'background'>;

/**
 * Works out what a request waits for: in a thread where there is one, so that the other requests do not wait for it too.
 * Even the plan of a small yard takes a quarter of a second when it is the first.
 */
export const computeForRequest = async <K extends ComputationKind>(
  background: UseCaseContext['background'],
  kind: K,
  question: Computations[K]['question'],
): Promise<Computations[K]['answer']> =>
  (await background?.computeForRequest(kind, question)) ?? computeHere(kind, question);
