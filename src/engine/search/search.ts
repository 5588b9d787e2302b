import type { DecoderState } from '../decoder/decoder-state.ts';
import { settle } from '../decoder/settle.ts';
import { dealAgain } from './deal.ts';
import { type Effort, stopRule } from './effort.ts';
import { evaluate } from './evaluation.ts';
import type { Found } from './found.ts';
import { improvePlan, improveSequence } from './improve.ts';
import { leftOutLast } from './left-out.ts';
import type { PresentPours } from './nearness.ts';
import { polish } from './polish.ts';
import { randomFrom } from './random.ts';

/** Searches on from a plan: first for a better sequence by the surrogate, then step by step on whole plans. */
export const searchOn = (
  state: DecoderState,
  start: Found,
  effort: Exclude<Effort, 'quick'>,
  seed: number,
  present?: PresentPours,
): Found => {
  const stop = stopRule(state.problem, effort);
  const random = randomFrom(seed);
  // Which orders can be made at all is settled once; the search then moves only those.
  settle(state, start.dispatch);
  const settled: Found = { ...start, evaluation: evaluate(state) };
  const improved = improvePlan(state, improveSequence(state, settled, stop, random, present), stop, random, present);
  const found = polish(state, dealAgain(state, improved, stop, random, present), stop.polishing, present);
  return { ...found, dispatch: leftOutLast(state.orders.excluded, found.dispatch) };
};
