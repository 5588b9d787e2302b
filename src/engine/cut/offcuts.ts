import { isCutUp, type Material } from '../../../shared/material.ts';

/** Stock adds up to fractions: so close to a whole stick is one. */
const TOLERANCE = 1e-6;
/** Lengths are kept to a millionth of a millimetre, so that sums of fractions give one length and not several. */
const DECIMALS = 6;

/**
 * What is there of a material to be counted on, in its own unit: of sticks and sheets whole ones, a share of one counts for
 * nothing.
 *
 * Example: `countedOnHand({ onHand: 1.399, stickMm: 3000 })` is 1, `countedOnHand({ onHand: 1.399 })` is 1.399.
 */
export const countedOnHand = ({ onHand, ...of }: Pick<Material, 'onHand' | 'stickMm' | 'inSheets'>): number =>
  isCutUp(of) ? Math.floor(onHand + TOLERANCE) : onHand;

/**
 * What is left of a stick or an offcut once some pieces are cut from it, mm: each loses a kerf, but for the last where no
 * more is left than the kerf.
 *
 * Example: four of 190 from 3000 with a kerf of 2: `restOf(3000, 2, [{ lengthMm: 190, count: 4 }])` is 2232, and
 * `restOf(1000, 2, [{ lengthMm: 999, count: 1 }])` is 0.
 */
export const restOf = (
  lengthMm: number,
  kerfMm: number,
  cuts: readonly { lengthMm: number; count: number }[],
): number => {
  const cut = cuts.reduce((sum, one) => sum + one.count * (one.lengthMm + kerfMm), 0);
  return Number(Math.max(0, lengthMm - cut).toFixed(DECIMALS));
};

/**
 * Offcuts one by one, the longest first, at most so many.
 *
 * Example: `offcutsOneByOne([{ lengthMm: 500, count: 2 }, { lengthMm: 900, count: 1 }], 2)` is [900, 500].
 */
export const offcutsOneByOne = (offcuts: readonly { lengthMm: number; count: number }[], most: number): number[] =>
  [...offcuts]
    .sort((a, b) => b.lengthMm - a.lengthMm)
    .flatMap(({ lengthMm, count }) => new Array<number>(Math.min(count, most)).fill(lengthMm))
    .slice(0, most);
