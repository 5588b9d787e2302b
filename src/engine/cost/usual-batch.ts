import type { Casting } from '../../../shared/casting.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { bagsFor } from '../pack/bags.ts';
import { fillBatch } from '../pack/fill.ts';

/** A batch as a casting is usually mixed for. */
export interface UsualBatch {
  /** How many of it. */
  pieces: number;
  /** What else of the same mix is poured with it. */
  others: readonly Casting[];
  bags: number;
}

const TOLERANCE = 1e-9;

const mouldsOf = ({ id }: Casting, { moulds }: YardFile): number =>
  moulds.filter(({ condition, makes }) => condition !== 'retired' && makes.some(({ casting }) => casting === id))
    .length;

/** As many as moulds, working time and the mixer allow at once; one at the least. */
const mostAtOnce = (casting: Casting, yard: YardFile): number => {
  const mix = yard.mixes.find(({ id }) => id === casting.mix)!;
  const moulds = mouldsOf(casting, yard);
  const byKg = casting.kg > 0 ? Math.floor((mix.maxBags * mix.yieldKgPerBag) / casting.kg + TOLERANCE) : moulds;
  return Math.max(1, Math.min(moulds, byKg, Math.floor(mix.workingMinutes / casting.fillMinutes)));
};

/** So many of it, with what else fills its bags best. */
const filledUp = (casting: Casting, pieces: number, yard: YardFile): UsualBatch => {
  const mix = yard.mixes.find(({ id }) => id === casting.mix)!;
  const bags = bagsFor(pieces * casting.kg, mix.yieldKgPerBag, mix.bagStep);
  const beside = yard.castings.filter((one) => one.mix === casting.mix && one.id !== casting.id && one.kg > 0);
  const options = beside.map((one, place) => ({
    ...{ casting: place, kg: one.kg, fillMinutes: one.fillMinutes, most: mouldsOf(one, yard), worth: one.kg },
  }));
  const kgLeft = bags * mix.yieldKgPerBag - pieces * casting.kg;
  const counts = fillBatch(options, kgLeft, mix.workingMinutes - pieces * casting.fillMinutes);
  const others = beside.flatMap((one, place) => new Array<Casting>(counts[place]!).fill(one));
  return { pieces, others, bags };
};

/**
 * How a casting is usually mixed for, to say what one costs: beside what fills its bags best, so that least of the mix is left
 * over, of equals with the most of its own. What a plan puts together may leave less or more.
 *
 * Example: a bag of a mix makes 27.5 kg; a piece of 18 kg is poured with one of 9 kg, where there is a mould for it: 0.5 kg
 * is left, and not 9.5.
 */
export const usualBatch = (casting: Casting, yard: YardFile): UsualBatch => {
  const { yieldKgPerBag } = yard.mixes.find(({ id }) => id === casting.mix)!;
  const tried = Array.from({ length: mostAtOnce(casting, yard) }, (_, before) => {
    const batch = filledUp(casting, before + 1, yard);
    const poured = batch.others.reduce((sum, { kg }) => sum + kg, batch.pieces * casting.kg);
    return { batch, share: poured > 0 ? (batch.bags * yieldKgPerBag) / poured : 1 };
  });
  return tried.reduce((best, one) => (one.share <= best.share + TOLERANCE ? one : best)).batch;
};
