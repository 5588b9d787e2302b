import { type CastingSize, sizesOfCastings } from '../../../db/stores/casting-size-store.ts';
import { sizesOfKits } from '../../../db/stores/kit-store.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import type { Kit } from '../../../shared/kit.ts';
import type { KitSize } from '../../../shared/kit-size.ts';
import type { OrderLine } from '../../../shared/order.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { UseCaseContext } from '../core/context.ts';
import { kitPieces } from './kit-contents.ts';
import { type KitDrawing, kitDrawing } from './kit-drawing.ts';
import { kitLaid } from './kit-laid.ts';
import { panelKinds } from './panel-kinds.ts';

export interface DrawnKit {
  name: string;
  drawing: KitDrawing;
}

const sameCounts = (one: Kit['pieces'], other: Kit['pieces']): boolean =>
  one.length === other.length &&
  one.every(({ casting, count }) => other.some((piece) => piece.casting === casting && piece.count === count));

/**
 * A kit as it was worked out from its size, laid again from the panels it holds alone: they were the choice then, so they
 * are again. Null when it has since come to hold other panels, or the panels have other sizes: no drawing is better than a
 * wrong one.
 */
export const drawKit = (
  kit: Kit,
  size: KitSize,
  yard: YardFile,
  sizes: readonly CastingSize[],
  system: UnitSystem,
): DrawnKit | null => {
  const own = new Set(kit.pieces.map(({ casting }) => casting));
  const [kind, other] = panelKinds({ ...yard, castings: yard.castings.filter(({ id }) => own.has(id)) }, sizes);
  if (!kind || other) return null;
  const { made } = kitLaid(size, kind);
  if (!made) return null;
  const pieces = kitPieces(made, kind).map(({ casting, count }) => ({ casting: casting.id, count }));
  if (!sameCounts(pieces, kit.pieces)) return null;
  return { name: kit.name, drawing: kitDrawing(made, size.shape, kind.thicknessMm, system) };
};

/** Drawings of the kits an order is for, those that can be drawn, each once. */
export const drawKits = async (
  { database }: UseCaseContext,
  yard: YardFile,
  lines: readonly OrderLine[],
): Promise<DrawnKit[]> => {
  const ids = new Set(lines.flatMap(({ kit }) => (kit === undefined ? [] : [kit])));
  if (ids.size === 0) return [];
  const { sizes, kitSizes, system } = await database.read(async (tx) => ({
    sizes: await sizesOfCastings(tx),
    kitSizes: await sizesOfKits(tx),
    system: await unitsOfYard(tx),
  }));
  return yard.kits.flatMap((kit) => {
    const size = ids.has(kit.id) ? kitSizes.find((one) => one.kit === kit.id)?.size : undefined;
    return (size && drawKit(kit, size, yard, sizes, system)) ?? [];
  });
};
