import type { DecoderState } from '../decoder/decoder-state.ts';
import type { Dispatch } from '../decoder/dispatch.ts';

/**
 * The dispatch with the orders that the plan in `state` leaves out put last: settled again it leaves out the same ones, while
 * one of them before others could take what they need.
 */
export const leftOutLast = (state: DecoderState, dispatch: Dispatch): Dispatch => {
  const all = Array.from(dispatch.sequence);
  const isOut = (order: number) => state.orders.excluded[order] === 1;
  const sequence = Int32Array.from([...all.filter((o) => !isOut(o)), ...all.filter(isOut)]);
  // Orders left out have no place in what is set up either, wherever they stand there.
  return { ...dispatch, sequence };
};
