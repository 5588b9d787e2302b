import type { Placing } from '../decoder/decoder-state.ts';
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
  const improved = improvePlan(at, improveSequence(at, settled, stop, random, present), stop, random, present);
  const found = polish(at, dealAgain(at, improved, stop, random, present), stop.polishing, present);
  return { ...found, dispatch: leftOutLast(at, found.dispatch) };
};
