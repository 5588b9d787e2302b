import type { Casting } from '../../../shared/casting.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { bagsFor } from '../pack/bags.ts';

/** A batch of nothing but one casting. */
export interface UsualBatch {
  pieces: number;
  bags: number;
}

const TOLERANCE = 1e-9;

/** As many as moulds, working time and the mixer allow at once; one at the least. */
const mostAtOnce = (casting: Casting, { mixes, moulds }: YardFile): number => {
  const mix = mixes.find(({ id }) => id === casting.mix)!;
  const own = moulds.filter(
    ({ condition, makes }) => condition !== 'retired' && makes.some((one) => one.casting === casting.id),
  );
  const byKg = casting.kg > 0 ? Math.floor((mix.maxBags * mix.yieldKgPerBag) / casting.kg + TOLERANCE) : own.length;
  return Math.max(1, Math.min(own.length, byKg, Math.floor(mix.workingMinutes / casting.fillMinutes)));
};

/**
 * How a casting is usually mixed for, to say what one costs: as many at once as leave least of the mix over for each, of equals
 * the most. What a plan puts together may leave less or more.
 *
 * Example: of a mix of which a bag makes 27.5 kg, pieces of 9 kg in three moulds: 3 of one bag leave 0.5 kg, 1 of one 18.5 kg.
 */
export const usualBatch = (casting: Casting, yard: YardFile): UsualBatch => {
  const { yieldKgPerBag, bagStep } = yard.mixes.find(({ id }) => id === casting.mix)!;
  const tried = Array.from({ length: mostAtOnce(casting, yard) }, (_, before) => {
    const pieces = before + 1;
    const bags = bagsFor(pieces * casting.kg, yieldKgPerBag, bagStep);
    return { pieces, bags, over: (bags * yieldKgPerBag - pieces * casting.kg) / pieces };
  });
  const { pieces, bags } = tried.reduce((best, one) => (one.over <= best.over + TOLERANCE ? one : best));
  return { pieces, bags };
};
