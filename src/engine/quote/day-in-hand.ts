import type { Order } from '../../../shared/order.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { NEVER } from '../decoder/problem.ts';
import type { Answer } from './answer.ts';
import { completesCastAgain } from './cast-again.ts';
import { handoverOn, promiseDay } from './promise.ts';

/**
 * The day with the yard's sessions in hand, which also have to do for a piece that is cast again. Null beyond the horizon, and
 * for an order that is never complete.
 */
export const dayInHand = (yard: YardFile, order: Order, answer: Answer): number | null => {
  const { problem } = answer.asking;
  const { completesAt } = answer.earliest;
  const day = completesAt >= NEVER ? null : promiseDay(problem, completesAt);
  if (day === null || yard.yard.sessionsInHand === 0) return day;
  const again = completesCastAgain(yard, order, answer);
  return again >= problem.horizonEnd ? day : Math.max(day, handoverOn(problem, again));
};
