import type { Dispatch } from '../place/dispatch.ts';
import type { Placing } from '../place/placing.ts';
import { settle } from '../place/settle.ts';
import { type Effort, stopRule } from './effort.ts';
import { evaluate } from './evaluation.ts';
import { type Found, improvePlan, improveSequence } from './improve.ts';
import type { PresentPours } from './nearness.ts';
import { randomFrom } from './random.ts';

/**
 * The dispatch with the orders that the plan in `at` leaves out put last: settled again it leaves out the same ones, while
 * one of them before others could take what they need.
 */
export const leftOutLast = (at: Placing, dispatch: Dispatch): Dispatch => {
  const all = Array.from(dispatch.sequence);
  const isOut = (order: number) => at.orders.excluded[order] === 1;
  return { ...dispatch, sequence: Int32Array.from([...all.filter((o) => !isOut(o)), ...all.filter(isOut)]) };
};

/** Searches on from a plan: first for a better sequence by the rough model, then step by step on whole plans. */
export const searchOn = (
  at: Placing,
  start: Found,
  effort: Exclude<Effort, 'quick'>,
  seed: number,
  present?: PresentPours,
): Found => {
  const stop = stopRule(at.problem, effort);
  const random = randomFrom(seed);
  // Which orders can be made at all is settled once; the search then moves only those.
  settle(at, start.dispatch);
  const settled: Found = { ...start, evaluation: evaluate(at) };
  const found = improvePlan(at, improveSequence(at, settled, stop, random, present), stop, random, present);
  return { ...found, dispatch: leftOutLast(at, found.dispatch) };
};
