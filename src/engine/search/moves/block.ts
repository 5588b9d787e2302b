/**
 * Moves a run of orders to another place, counted in what is left without it: [a b c d e], two from 1, to 0, is
 * [b c a d e].
 */
export const blockMove = (sequence: Int32Array, from: number, length: number, to: number): Int32Array => {
  const block = sequence.slice(from, from + length);
  const rest = [...sequence.slice(0, from), ...sequence.slice(from + length)];
  return Int32Array.from([...rest.slice(0, to), ...block, ...rest.slice(to)]);
};
