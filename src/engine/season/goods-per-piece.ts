import { isCutUp, type Material } from '../../../shared/material.ts';
import type { StockEntry } from '../../../shared/stock-entry.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import type { YardFile } from '../../../shared/yard-file.ts';

/** A material beside the recipe, in its own unit. */
export interface GoodsPerPiece {
  material: Material;
  /** Pieces poured that it goes into. */
  pieces: number;
  /** For all of them: by what they weigh and the recipe of today, as the stock book took it, and with what counts found. */
  recipe: number;
  taken: number;
  counted: number;
  /** No good any more, beside that. */
  spoiled: number;
}

type File = Pick<YardFile, 'castings' | 'mixes' | 'materials'>;

/** What one piece takes of each material by the recipe of today. */
const recipeOf = ({ castings, mixes }: File, id: string): ReadonlyMap<string, number> => {
  const casting = castings.find((one) => one.id === id);
  const mix = mixes.find((one) => one.id === casting?.mix);
  const amounts = new Map<string, number>();
  const add = (material: string, quantity: number) => amounts.set(material, (amounts.get(material) ?? 0) + quantity);
  if (!casting || !mix) return amounts;
  for (const { material, quantity } of mix.perBag) add(material, (quantity * casting.kg) / mix.yieldKgPerBag);
  for (const { material, quantity } of casting.perPiece) add(material, quantity);
  return amounts;
};

const sumOf = (book: readonly StockEntry[], kinds: readonly StockEntry['kind'][]): number =>
  book.reduce((sum, { kind, quantity, beyond = 0 }) => (kinds.includes(kind) ? sum + quantity - beyond : sum), 0);

/**
 * What pieces took of each material that is not cut up, beside its recipe: more was taken than the recipe says where bags were
 * not full, and counts find what was taken beyond. Only materials of which the stock book took some for a batch.
 *
 * Example: two pieces of 13.6 kg by a bag that fills 27.5 kg, for which one bag was taken: 0.989 by the recipe, 1 taken.
 */
export const goodsPerPiece = (
  records: readonly WorkRecord[],
  book: readonly StockEntry[],
  file: File,
): GoodsPerPiece[] => {
  const castings = records.flatMap((one) => (one.kind === 'poured' ? one.pours.map(({ casting }) => casting) : []));
  const recipes = new Map([...new Set(castings)].map((casting) => [casting, recipeOf(file, casting)]));
  return file.materials.flatMap((material): GoodsPerPiece[] => {
    const own = book.filter(
      (one) => one.material === material.id && one.lengthMm === undefined && one.widthMm === undefined,
    );
    const taken = -sumOf(
      own.filter(({ work }) => work && 'mix' in work),
      ['used', 'cut', 'returned'],
    );
    const each = castings.flatMap((casting) => recipes.get(casting)?.get(material.id) ?? []);
    if (isCutUp(material) || taken <= 0 || each.length === 0) return [];
    const recipe = each.reduce((sum, one) => sum + one, 0);
    return [
      {
        ...{ material, pieces: each.length, recipe, taken },
        counted: taken - sumOf(own, ['counted']),
        spoiled: -sumOf(own, ['spoiled']),
      },
    ];
  });
};
