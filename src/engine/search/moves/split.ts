import { MOST_PARTS } from '../../decoder/dispatch.ts';
import { insertMove } from './insert.ts';

/**
 * Splits an order that stands once in a list of what is set up first, part of it moved to another place; one that is
 * split is put together again. `[a b c d]`, 2 to 0, is `[c a b c d]`, and that, 3 to 0, is `[a b c d]` again.
 */
export const splitMove = (setUp: Int32Array, from: number, to: number): Int32Array => {
  const order = setUp[from]!;
  const places = Array.from(setUp.keys()).filter((place) => setUp[place] === order);
  if (places.length < MOST_PARTS) return insertMove(Int32Array.of(...setUp, order), setUp.length, to);
  return setUp.filter((_, place) => place !== places.find((other) => other !== from));
};
