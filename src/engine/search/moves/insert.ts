/**
 * Takes the order at one place out and puts it in at another. A new sequence; the old one stays.
 *
 * Example: `Array.from(insertMove(Int32Array.of(0, 1, 2, 3), 0, 2))` is [1, 2, 0, 3].
 */
export const insertMove = (sequence: Int32Array, from: number, to: number): Int32Array => {
  const moved = sequence.slice();
  const order = moved[from]!;
  if (from < to) moved.copyWithin(from, from + 1, to + 1);
  else moved.copyWithin(to + 1, to, from);
  moved[to] = order;
  return moved;
};
