import type { Dispatch } from '../decoder/dispatch.ts';

/**
 * The dispatch with the orders that a plan leaves out (1 in `excluded`, by order) put last: settled again it leaves out the same ones, while
 * one of them before others could take what they need.
 */
export const leftOutLast = (excluded: Uint8Array, dispatch: Dispatch): Dispatch => {
  const all = Array.from(dispatch.sequence);
  const isOut = (order: number) => excluded[order] === 1;
  const sequence = Int32Array.from([...all.filter((o) => !isOut(o)), ...all.filter(isOut)]);
  // Orders left out have no place in what is set up either, wherever they stand there.
  return { ...dispatch, sequence };
};
