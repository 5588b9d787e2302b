import { decode } from '../decoder/decode.ts';
import type { DecoderState } from '../decoder/decoder-state.ts';
import type { StopRule } from './effort.ts';
import { isBetter } from './evaluation.ts';
import { type Found, foundIn } from './found.ts';
import type { PresentPours } from './nearness.ts';
import type { Random } from './random.ts';
import { searchSurrogate, surrogateOf } from './surrogate.ts';

/** Rounds of dealing, each from the plan of the one before. */
const ROUNDS = 3;
/** Share of the surrogate's evaluations that one round may use. */
const SHARE = 0.05;

/**
 * Deals the pieces of a finished plan again: what is set up stays in the order in which it was, and the sequence that
 * says who gets a piece becomes the best that the surrogate finds for the days on which pieces are ready. Returns the
 * plan it was given when no deal is better.
 */
export const dealAgain = (
  state: DecoderState,
  start: Found,
  stop: StopRule,
  random: Random,
  present?: PresentPours,
): Found => {
  let best = start;
  for (let round = 0; round < ROUNDS; round++) {
    decode(state, best.dispatch);
    const { sequence, setUp = sequence } = best.dispatch;
    const dealt = searchSurrogate(surrogateOf(state), sequence, random, Math.floor(stop.judged * SHARE)).sequence;
    if (dealt.every((order, i) => order === sequence[i])) break;
    const dispatch = { ...best.dispatch, sequence: dealt, setUp };
    decode(state, dispatch);
    const found = foundIn(state, dispatch, present);
    if (!isBetter(found.evaluation, best.evaluation)) break;
    best = found;
  }
  return best;
};
