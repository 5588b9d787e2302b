import type { Material } from '../../../shared/material.ts';

/** What the stock book has of a material: whole ones, and of what is cut the offcuts. */
type InBook = Pick<Material, 'onHand' | 'offcuts'>;

/**
 * The same as a text, the same for equal contents: a form sends along what it was filled in from.
 *
 * `bookOf({ onHand: 3, offcuts: [{ lengthMm: 900, count: 2 }] })` is "3 2x900".
 */
export const bookOf = ({ onHand, offcuts = [] }: InBook): string => {
  const rests = [...offcuts].sort((a, b) => a.lengthMm - b.lengthMm);
  return [String(onHand), ...rests.map(({ lengthMm, count }) => `${count}x${lengthMm}`)].join(' ');
};
