/**
 * Moves a run of orders to another place, counted in what is left without it. A new sequence; the old one stays.
 *
 * Example: two from 1, to 0: `Array.from(blockMove(Int32Array.of(0, 1, 2, 3, 4), 1, 2, 0))` is [1, 2, 0, 3, 4].
 */
export const blockMove = (sequence: Int32Array, from: number, length: number, to: number): Int32Array => {
  const block = sequence.slice(from, from + length);
  const rest = [...sequence.slice(0, from), ...sequence.slice(from + length)];
  return Int32Array.from([...rest.slice(0, to), ...block, ...rest.slice(to)]);
};
