/**
 * How likely so many are good of so many that are poured, each of them not good with the same share, whatever the others are
 * (the binomial).
 *
 * Example: of 12 poured at 1 in 20 all 12 are good in 0.540 of all cases; of 13 poured 12 in 0.865.
 */
export const chanceOfGood = (good: number, poured: number, share: number): number => {
  let chance = 0;
  // So many are not good: each term follows from the one before.
  let term = (1 - share) ** poured;
  for (let bad = 0; bad <= poured - good; bad++) {
    chance += term;
    term *= ((poured - bad) / (bad + 1)) * (share / (1 - share));
  }
  return chance;
};

/** Pieces of one casting that an order lacks, and what pouring one or two more would do. */
export interface Spare {
  casting: string;
  count: number;
  /** How likely none of them has to be poured again. */
  allGood: number;
  /** So many poured at once, and how likely enough of them are good. */
  poured: number;
  enoughGood: number;
}

/** A spare piece that gains less is not worth a turn of a mould. */
const LEAST_GAIN = 0.1;

/**
 * Whether pouring one more than an order lacks is worth telling: where it makes it likelier by a tenth or more that nothing has to be
 * poured again. Null where it does not.
 *
 * Example: `spareFor('panel-900', 12, 0.05)` is to pour 13: 0.865 in place of 0.540.
 */
export const spareFor = (casting: string, count: number, share: number): Spare | null => {
  const [allGood, enoughGood] = [chanceOfGood(count, count, share), chanceOfGood(count, count + 1, share)];
  if (enoughGood - allGood < LEAST_GAIN) return null;
  return { casting, count, allGood, poured: count + 1, enoughGood };
};
