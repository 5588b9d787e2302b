import { readYardFile, type YardFile } from '../../../shared/yard-file.ts';
import { diceOf } from './dice.ts';

/** The yard with mixes whose pieces are kept wet out of their moulds. By dice of their own, so that all else of a seed's yard is what it was. */
export const wetYard = (yard: YardFile, seed: number): YardFile => {
  const dice = diceOf(seed + 900_000_000);
  const mixes = yard.mixes.map((mix) =>
    dice.chance(0.7)
      ? { ...mix, wetCure: { hours: dice.pick([12, 26, 72, 168]), minutes: dice.pick([1, 10, 25, 60]) } }
      : mix,
  );
  const read = readYardFile({ ...yard, mixes });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.yard;
};
