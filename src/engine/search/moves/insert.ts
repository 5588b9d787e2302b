/** Takes the order at one place out and puts it in at another: [a b c d], 0 to 2, is [b c a d]. */
export const insertMove = (sequence: Int32Array, from: number, to: number): Int32Array => {
  const moved = sequence.slice();
  const order = moved[from]!;
  if (from < to) moved.copyWithin(from, from + 1, to + 1);
  else moved.copyWithin(to + 1, to, from);
  moved[to] = order;
  return moved;
};
