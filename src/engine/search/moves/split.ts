import { MOST_PARTS } from '../../decoder/dispatch.ts';
import { insertMove } from './insert.ts';

/**
 * Splits an order that stands once in a list of what is set up first, part of it moved to another place; one that is
 * split is put together again where it stands at `from`. A new list; the old one stays.
 *
 * Example: `Array.from(splitMove(Int32Array.of(0, 1, 2, 3), 2, 0))` is [2, 0, 1, 2, 3], and
 * `Array.from(splitMove(Int32Array.of(2, 0, 1, 2, 3), 3, 0))` is [0, 1, 2, 3].
 */
export const splitMove = (setUp: Int32Array, from: number, to: number): Int32Array => {
  const order = setUp[from]!;
  const places = Array.from(setUp.keys()).filter((place) => setUp[place] === order);
  if (places.length < MOST_PARTS) return insertMove(Int32Array.of(...setUp, order), setUp.length, to);
  return setUp.filter((_, place) => place !== places.find((other) => other !== from));
};
