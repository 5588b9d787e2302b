/**
 * Exchanges the orders at two places. A new sequence; the old one stays.
 *
 * Example: `Array.from(swapMove(Int32Array.of(0, 1, 2, 3), 0, 2))` is [2, 1, 0, 3].
 */
export const swapMove = (sequence: Int32Array, a: number, b: number): Int32Array => {
  const moved = sequence.slice();
  moved[a] = sequence[b]!;
  moved[b] = sequence[a]!;
  return moved;
};
