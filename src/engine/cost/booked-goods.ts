import { type BatchRecord, batchKey } from '../../../shared/batch-record.ts';
import { isCutUp, type Material } from '../../../shared/material.ts';
import type { StockEntry, StockWork } from '../../../shared/stock-entry.ts';
import { minuteOf } from '../../../shared/time.ts';

/** What one piece of work took of a material by the stock book, less what came back of it. */
export interface BookedGoods {
  material: Material;
  /** In the material's unit; of sticks and sheets all that was lost of them: a rest that was kept is none of it. */
  quantity: number;
  /** The dates on its bags, as far as they have any. */
  dates: readonly string[];
}

/** What work took, by material. Nothing where the book does not say: it was done before the book was kept. */
export type BookedFor = (work: BatchRecord | { order: string }) => readonly BookedGoods[];

type Line = Pick<StockEntry, 'quantity' | 'lengthMm' | 'widthMm' | 'beyond'>;

/** Lines have fractions: so little is nothing. */
const TOLERANCE = 1e-9;

/** What a line comes to in the material's unit: an offcut is part of a stick, a rest part of a sheet. */
const inUnit = ({ quantity, lengthMm, widthMm, beyond = 0 }: Line, material: Material): number => {
  const { stickMm, sheetWidthMm = 0, sheetLengthMm = 0 } = material;
  if (lengthMm === undefined) return quantity - beyond;
  if (widthMm !== undefined) return (quantity * widthMm * lengthMm) / (sheetWidthMm * sheetLengthMm || Infinity);
  return (quantity * lengthMm) / (stickMm ?? Infinity);
};

const keyOf = (work: StockWork): string =>
  'order' in work ? `order ${work.order}` : `${minuteOf(work.at)} ${work.mould}`;

const keyOfDone = (work: Parameters<BookedFor>[0]): string => {
  if ('order' in work) return keyOf(work);
  const { minute, mould } = batchKey(work);
  return `${minute} ${mould}`;
};

/**
 * Finds what work took of the stock, by lines of the stock book that say what they were for.
 *
 * Example: a stick of 3000 opened for an order, of which a rest of 2385 was kept: 0.205 sticks.
 */
export const bookedGoods = (book: readonly StockEntry[], materials: readonly Material[]): BookedFor => {
  const byWork = new Map<string, Map<string, { quantity: number; dates: Set<string> }>>();
  const known = new Map(materials.map((one) => [one.id, one]));
  for (const { work, material: id, useBy, ...line } of book) {
    const material = known.get(id);
    if (!work || !material) continue;
    const own = byWork.get(keyOf(work)) ?? new Map();
    const goods = own.get(id) ?? { quantity: 0, dates: new Set() };
    goods.quantity -= inUnit(line, material);
    if (useBy !== undefined && !isCutUp(material)) goods.dates.add(useBy);
    byWork.set(keyOf(work), own.set(id, goods));
  }
  return (work) =>
    [...(byWork.get(keyOfDone(work)) ?? [])].flatMap(([id, { quantity, dates }]): BookedGoods[] =>
      quantity > TOLERANCE ? [{ material: known.get(id)!, quantity, dates: [...dates] }] : [],
    );
};
