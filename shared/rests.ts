import type { Material } from './material.ts';

/** Rests of opened sheets, the largest first, those of one size together. */
type Rests = NonNullable<Material['rests']>;
type Size = Omit<Rests[number], 'count'>;

const isOfSize =
  ({ widthMm, lengthMm }: Size) =>
  (one: Size): boolean =>
    one.widthMm === widthMm && one.lengthMm === lengthMm;

/**
 * A list of rests with so many of a size more, or fewer where `count` is below 0: never fewer than none.
 *
 * Example: `restsWith([{ widthMm: 600, lengthMm: 900, count: 1 }], { widthMm: 600, lengthMm: 900 }, -1)` is [].
 */
export const restsWith = (rests: Rests, { widthMm, lengthMm }: Size, count: number): Rests => {
  const isSame = isOfSize({ widthMm, lengthMm });
  const before = rests.filter(isSame).reduce((sum, one) => sum + one.count, 0);
  const own = before + count > 0 ? [{ widthMm, lengthMm, count: before + count }] : [];
  return [...rests.filter((one) => !isSame(one)), ...own].sort(
    (a, b) => b.widthMm * b.lengthMm - a.widthMm * a.lengthMm || b.widthMm - a.widthMm,
  );
};
