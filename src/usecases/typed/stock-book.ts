import type { Material } from '../../../shared/material.ts';
import { minuteOf } from '../../../shared/time.ts';

/** What the stock book has of a material: whole ones, of what is cut the offcuts, or the rests of sheets, and bags by their dates. */
type InBook = Pick<Material, 'onHand' | 'offcuts' | 'rests' | 'lots'>;

/**
 * The same as a text, the same for equal contents: a form sends along what it was filled in from.
 *
 * `bookOf({ onHand: 3, offcuts: [{ lengthMm: 900, count: 2 }] })` is "3 2x900".
 */
export const bookOf = ({ onHand, offcuts = [], rests = [], lots = [] }: InBook): string => {
  const lengths = [...offcuts].sort((a, b) => a.lengthMm - b.lengthMm);
  const sizes = rests.map(({ widthMm, lengthMm, count }) => `${count}x${widthMm}x${lengthMm}`).sort();
  const bags = lots.map(({ quantity, useBy = '', openedAt }) => {
    const opened = openedAt === undefined ? '' : minuteOf(openedAt);
    return `${quantity}of${useBy}/${opened}`;
  });
  return [
    String(onHand),
    ...lengths.map(({ lengthMm, count }) => `${count}x${lengthMm}`),
    ...sizes,
    ...bags.sort(),
  ].join(' ');
};
