import type { Material } from '../../../shared/material.ts';
import type { YardFile } from '../../../shared/yard-file.ts';

/** Rests of opened sticks, the longest first, those of one length together. */
type Offcuts = NonNullable<Material['offcuts']>;

/**
 * A material with so many offcuts of a length more, or fewer where `count` is below 0: never fewer than none. The field is
 * left out where there are none.
 *
 * Example: `withOffcuts({ offcuts: [{ lengthMm: 700, count: 1 }] }, 700, 2).offcuts` is [{ lengthMm: 700, count: 3 }].
 */
export const withOffcuts = <M extends Pick<Material, 'offcuts'>>(material: M, lengthMm: number, count: number): M => {
  const { offcuts = [], ...rest } = material;
  const before = offcuts.reduce((sum, one) => (one.lengthMm === lengthMm ? sum + one.count : sum), 0);
  const others = offcuts.filter((one) => one.lengthMm !== lengthMm);
  const own: Offcuts = before + count > 0 ? [{ lengthMm, count: before + count }] : [];
  const all = [...others, ...own].sort((a, b) => b.lengthMm - a.lengthMm);
  return (all.length > 0 ? { ...rest, offcuts: all } : rest) as M;
};

/**
 * The shortest length that a rest of a material has to have to be of use, mm: as long as the shortest piece that any
 * casting or kit needs from it; endless where none needs any.
 *
 * Example: `usableMm({ castings: [], kits: [] }, 'rod')` is Infinity.
 */
export const usableMm = ({ castings, kits }: Pick<YardFile, 'castings' | 'kits'>, material: string): number =>
  [...castings, ...kits]
    .flatMap(({ cuts }) => cuts)
    .reduce(
      (least, cut) => (cut.material === material && cut.count > 0 ? Math.min(least, cut.lengthMm) : least),
      Number.POSITIVE_INFINITY,
    );
