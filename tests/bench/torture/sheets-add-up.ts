/** A size of sheets or rests, or of pieces that are cut from them, in mm. */
export interface SheetSize {
  widthMm: number;
  lengthMm: number;
}

/** What there is of a material in sheets: whole ones, and rests of opened ones, each by itself. */
export interface SheetsThere {
  whole: number;
  rests: readonly SheetSize[];
}

interface SheetFigures extends SheetSize {
  meshMm: number;
}

const LITTLE = 1e-6;

const areaOf = ({ widthMm, lengthMm }: SheetSize): number => widthMm * lengthMm;
const sum = (sizes: readonly SheetSize[]): number => sizes.reduce((all, one) => all + areaOf(one), 0);

const isSame = (one: SheetSize, other: SheetSize): boolean =>
  one.widthMm === other.widthMm && one.lengthMm === other.lengthMm;

/** Those of one list that are not in the other, each as often as it is there more often. */
const without = (list: readonly SheetSize[], others: readonly SheetSize[]): SheetSize[] => {
  const left = [...others];
  return list.filter((one) => {
    const place = left.findIndex((other) => isSame(one, other));
    if (place >= 0) left.splice(place, 1);
    return place < 0;
  });
};

/** A piece takes whole openings each way, the fewest that are no smaller. */
const inOpenings = ({ widthMm, lengthMm }: SheetSize, meshMm: number): SheetSize => ({
  widthMm: Math.ceil(widthMm / meshMm - LITTLE) * meshMm,
  lengthMm: Math.ceil(lengthMm / meshMm - LITTLE) * meshMm,
});

const fitsOn = (piece: SheetSize, { widthMm, lengthMm }: SheetSize): boolean =>
  (piece.widthMm <= widthMm + LITTLE && piece.lengthMm <= lengthMm + LITTLE) ||
  (piece.lengthMm <= widthMm + LITTLE && piece.widthMm <= lengthMm + LITTLE);

/**
 * Whether what is left of sheets can be what cutting these pieces leaves, by their areas: whole ones and rests that are gone are as large as
 * the pieces and the new rests together, each piece fits on one of them, and so does each new rest. Where no whole one is left by the
 * book pieces may be of others that it does not know of. That pieces lie side by side is for the audit of plans to see.
 */
export const sheetsAddUp = (
  before: SheetsThere,
  after: SheetsThere,
  pieces: readonly SheetSize[],
  { meshMm, ...sheet }: SheetFigures,
): boolean => {
  const opened = before.whole - after.whole;
  if (opened < 0) return false;
  const [gone, made] = [without(before.rests, after.rests), without(after.rests, before.rests)];
  const cut = [...Array.from({ length: opened }, () => sheet), ...gone];
  if (sum(made) > sum(cut) + LITTLE || !made.every((rest) => cut.some((one) => fitsOn(rest, one)))) return false;
  const isUnknown = after.whole === 0;
  if (isUnknown) return true;
  const taken = pieces.map((piece) => inOpenings(piece, meshMm));
  return sum(taken) + sum(made) <= sum(cut) + LITTLE && taken.every((piece) => cut.some((one) => fitsOn(piece, one)));
};
