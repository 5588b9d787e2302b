import type { Mix } from '../../../shared/mix.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { massText } from '../../engine/units/mass.ts';
import type { Outcome } from '../core/context.ts';
import { type FieldWords, fitsYardFile, sayAt } from '../typed/fits-yard-file.ts';

/** The piece of a mix that asks most of it. */
const mostOf = (yard: YardFile, mix: Mix, figure: 'kg' | 'fillMinutes') =>
  yard.castings.filter((one) => one.mix === mix.id).sort((a, b) => b[figure] - a[figure])[0];

/** What a mix must be fit for, in words that name the piece. */
const wordsFor = (yard: YardFile, mix: Mix, system: UnitSystem): FieldWords => {
  const [heaviest, slowest] = [mostOf(yard, mix, 'kg'), mostOf(yard, mix, 'fillMinutes')];
  const largest = massText(mix.maxBags * mix.yieldKgPerBag, system);
  return {
    maxBags: (message) => ({
      path: 'maxBags',
      message: message.includes('multiple')
        ? 'That is no whole number of steps. Choose half bags, or another number.'
        : 'Has to be more than 0.',
    }),
    'castings[].kg': sayAt(
      'maxBags',
      `${heaviest?.name} weighs ${massText(heaviest?.kg ?? 0, system)}, more than so many bags make: ${largest}.`,
    ),
    'castings[].fillMinutes': sayAt(
      'workingMinutes',
      `To fill ${slowest?.name} takes ${slowest?.fillMinutes} minutes. It has to be full before the mix stiffens.`,
    ),
  };
};

/** The yard with a mix put in its place, or last. */
export const withMix = (yard: YardFile, mix: Mix, system: UnitSystem): Outcome<YardFile> => {
  const found = yard.mixes.findIndex(({ id }) => id === mix.id);
  const place = found < 0 ? yard.mixes.length : found;
  const mixes = [...yard.mixes];
  mixes[place] = mix;
  return fitsYardFile({ ...yard, mixes }, `mixes[${place}]`, wordsFor(yard, mix, system));
};
