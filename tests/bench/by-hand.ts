import { decode } from '../../src/engine/decoder/decode.ts';
import { type DecoderState, decoderStateOf } from '../../src/engine/decoder/decoder-state.ts';
import { type Dispatch, dispatchOf } from '../../src/engine/decoder/dispatch.ts';
import type { Problem } from '../../src/engine/decoder/problem.ts';
import { evaluate, isBetter } from '../../src/engine/search/evaluation.ts';
import { BY_HAND, startSequences } from '../../src/engine/search/quick.ts';
import { earliestDueFirst } from '../../src/engine/search/rules.ts';

const planned = (
  problem: Problem,
  dispatch: Dispatch,
  excluded?: Uint8Array,
  heldBack?: ArrayLike<number>,
): DecoderState => {
  const state = decoderStateOf(problem, dispatch, heldBack);
  if (excluded) state.orders.excluded.set(excluded);
  decode(state, dispatch);
  return state;
};

/**
 * The plan a maker makes with a whiteboard, to measure ours by: earliest due date first; strip whatever is due; set up empty
 * moulds for the earliest order, then for the next, until one batch is full; pour; nothing is set up for the next session.
 * `heldBack`: sticks of each material not to count on.
 */
export const planByHand = (problem: Problem, heldBack?: ArrayLike<number>): DecoderState =>
  planned(problem, dispatchOf(earliestDueFirst(problem), BY_HAND[0]), undefined, heldBack);

/** The best that a clever hand makes: by each dispatch rule, weights counted, setting up for the next session or not. */
export const planByCleverHand = (problem: Problem, excluded: Uint8Array): DecoderState => {
  const dispatches = startSequences(problem).flatMap((one) => BY_HAND.map((choices) => dispatchOf(one, choices)));
  const plans = dispatches.map((dispatch) => planned(problem, dispatch, excluded));
  return plans.reduce((best, one) => (isBetter(evaluate(one), evaluate(best)) ? one : best));
};
