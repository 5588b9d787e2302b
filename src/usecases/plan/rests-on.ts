import type { FigureOf } from '../../../shared/figure.ts';
import type { OrderLine } from '../../../shared/order.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { goodsOfLines } from '../../engine/book/goods.ts';

/** What a date rests on that is still to check: what a bag gives and whether it is there, or how the mix behaves. */
export type Guessed = 'bags' | 'mix';

const BAG_FIGURES = ['yieldKgPerBag', 'kg'];

/**
 * What of the bags and mixes behind these lines is still guessed. What lies finished in the yard is not looked at: the rest
 * may still be poured.
 */
export const restsOn = (yard: YardFile, lines: readonly OrderLine[], guesses: readonly FigureOf[]): Guessed[] => {
  const pieces = new Set(goodsOfLines(lines, yard).pieces.keys());
  const castings = yard.castings.filter(({ id }) => pieces.has(id));
  const mixes = yard.mixes.filter(({ id }) => castings.some(({ mix }) => mix === id));
  const isOf = (kind: FigureOf['kind'], all: readonly { id: string }[]) => (guess: FigureOf) =>
    guess.kind === kind && all.some(({ id }) => id === guess.id);
  // No date follows from the water.
  const ofMixes = guesses.filter(isOf('mix', mixes)).filter(({ figure }) => figure !== 'water');
  const bags = mixes.flatMap(({ perBag }) => perBag.map(({ material }) => ({ id: material })));
  const ofBags = [...guesses.filter(isOf('material', bags)), ...ofMixes, ...guesses.filter(isOf('casting', castings))];
  return [
    ...(ofBags.some(({ kind, figure }) => kind === 'material' || BAG_FIGURES.includes(figure))
      ? ['bags' as const]
      : []),
    ...(ofMixes.some(({ figure }) => !BAG_FIGURES.includes(figure)) ? ['mix' as const] : []),
  ];
};
