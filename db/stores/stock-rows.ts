import type { StockEntry } from '../../shared/stock-entry.ts';
import type { materials } from '../tables/material.ts';
import type { offcuts } from '../tables/offcut.ts';
import type { stockEntries } from '../tables/stock-entry.ts';

type EntryRow = typeof stockEntries.$inferSelect;
type Row = Omit<EntryRow, 'id'> & { id?: number };

/** What is there, and the lines that should come to it. */
interface StockRows {
  materials: readonly Pick<typeof materials.$inferSelect, 'id' | 'onHand'>[];
  offcuts: readonly (typeof offcuts.$inferSelect)[];
  stockEntries: readonly Row[];
}

/** Amounts add up to fractions: so little is no difference. */
const ROUNDING = 1e-9;

/** A line as a row of the store, of no change of its own. */
export const entryRow = ({ lengthMm, useBy, openedAt, beyond, work, reason, by, ...entry }: StockEntry): Row => ({
  ...entry,
  ...{ lengthMm: lengthMm ?? null, useBy: useBy ?? null, openedAt: openedAt ?? null, beyond: beyond ?? 0 },
  ...{ work: work ?? null, reason: reason ?? null, by: by ?? null, change: null },
});

const keyOf = (material: string, lengthMm: number | null): string => JSON.stringify([material, lengthMm]);

const sumsOf = (entries: readonly Row[]): Map<string, number> => {
  const sums = new Map<string, number>();
  for (const { material, lengthMm, quantity } of entries) {
    const key = keyOf(material, lengthMm);
    sums.set(key, (sums.get(key) ?? 0) + quantity);
  }
  return sums;
};

/** All that rows say is there: of each material, and of each length of its offcuts. */
const thereOf = ({ materials, offcuts }: Pick<StockRows, 'materials' | 'offcuts'>): Map<string, number> =>
  new Map([
    ...materials.map(({ id, onHand }): [string, number] => [keyOf(id, null), onHand]),
    ...offcuts.map(({ material, lengthMm, count }): [string, number] => [keyOf(material, lengthMm), count]),
  ]);

/**
 * Rows in which the stock book comes to what is there: where they say another amount than its lines add up to, a line more
 * says that it was set right, or that it was there when the book of that material began. Lines of materials that are gone go.
 */
export const withStockBook = <R extends StockRows>(
  rows: R,
  act: Pick<Row, 'at' | 'by' | 'change'> & Partial<Pick<Row, 'reason'>>,
): R & { stockEntries: Row[] } => {
  const known = new Set(rows.materials.map(({ id }) => id));
  const lines = rows.stockEntries.filter(({ material }) => known.has(material));
  const begun = new Set(lines.map(({ material }) => material));
  const sums = sumsOf(lines);
  const there = thereOf(rows);
  const keys = new Set([...there.keys(), ...sums.keys()]);
  const settling = [...keys].flatMap((key): Row[] => {
    const quantity = (there.get(key) ?? 0) - (sums.get(key) ?? 0);
    if (Math.abs(quantity) < ROUNDING) return [];
    const [material, lengthMm] = JSON.parse(key) as [string, number | null];
    const kind = begun.has(material) ? 'corrected' : 'opening';
    return [
      {
        ...{ material, lengthMm, kind, quantity, useBy: null, openedAt: null, beyond: 0, work: null },
        ...{ reason: kind === 'opening' ? null : (act.reason ?? null), at: act.at, by: act.by, change: act.change },
      },
    ];
  });
  return { ...rows, stockEntries: [...lines, ...settling] };
};
