/** Exchanges the orders at two places: [a b c d], 0 and 2, is [c b a d]. */
export const swapMove = (sequence: Int32Array, a: number, b: number): Int32Array => {
  const moved = sequence.slice();
  moved[a] = sequence[b]!;
  moved[b] = sequence[a]!;
  return moved;
};
