import { listText } from '../../shared/list-text.ts';
import type { KitLoad, KitLoads } from '../../src/usecases/kits/kit-model.ts';
import { countWord } from '../parts/quantity-text.ts';

/** "Two loads, none over 200 kg." */
export const loadsAnswer = ({ count, payload }: KitLoads): string => {
  if (count === 0) return `One piece alone is more than ${payload}.`;
  return count === 1 ? `One load, not over ${payload}.` : `${countWord(count)} loads, none over ${payload}.`;
};

/** "One load of 180 kg: 4 × Panel 1200." */
export const loadText = ({ times, mass, pieces }: KitLoad): string => {
  const what = listText(pieces.map(({ casting, count }) => `${count} × ${casting}`));
  return `${times === 1 ? 'One load' : `${countWord(times)} loads, each`} of ${mass}: ${what}.`;
};
