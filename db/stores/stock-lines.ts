import { and, asc, desc, eq, inArray, lt, or, sql } from 'drizzle-orm';
import type { StockEntry } from '../../shared/stock-entry.ts';
import { stockEntries } from '../tables/stock-entry.ts';
import type { Tx } from '../transaction.ts';
import { present } from './rows.ts';

/** A line of the stock book with what it left: of the material, of offcuts of its length, or of rests of its size. */
export type StockLine = Omit<typeof stockEntries.$inferSelect, 'change'> & { left: number };

const ofMaterial = (material: string, before: number | undefined) =>
  and(eq(stockEntries.material, material), before === undefined ? undefined : lt(stockEntries.id, before));

const sizeOf = ({ lengthMm, widthMm }: Pick<StockLine, 'lengthMm' | 'widthMm'>): string => `${widthMm} ${lengthMm}`;

const sumsBefore = async (tx: Tx, material: string, before: number | undefined) => {
  const rows = await tx
    .select({
      lengthMm: stockEntries.lengthMm,
      widthMm: stockEntries.widthMm,
      left: sql<number>`sum(${stockEntries.quantity})`,
    })
    .from(stockEntries)
    .where(ofMaterial(material, before))
    .groupBy(stockEntries.lengthMm, stockEntries.widthMm);
  return new Map(rows.map(({ left, ...size }) => [sizeOf(size), left]));
};

/**
 * The last lines of a material's stock book, the newest first, `limit` at most; with `before` only those that were written
 * before that line, which need not be there any more.
 */
export const stockLinesOf = async (
  tx: Tx,
  material: string,
  limit: number,
  before: number | undefined,
): Promise<StockLine[]> => {
  const sums = await sumsBefore(tx, material, before);
  const rows = await tx
    .select()
    .from(stockEntries)
    .where(ofMaterial(material, before))
    .orderBy(desc(stockEntries.id))
    .limit(limit);
  return rows.map(({ change: _change, ...row }) => {
    const left = sums.get(sizeOf(row)) ?? 0;
    sums.set(sizeOf(row), left - row.quantity);
    return { ...row, left };
  });
};

/** Lines of the stock book of some orders, and of the batches that were full at some instants, in the order in which they were written. */
export const stockTakenFor = async (
  tx: Tx,
  { orders, batches }: { orders: readonly string[]; batches: readonly string[] },
): Promise<StockEntry[]> => {
  const ofOrder = sql`json_extract(${stockEntries.work}, '$.order')`;
  const ofBatch = sql`json_extract(${stockEntries.work}, '$.at')`;
  const rows = await tx
    .select()
    .from(stockEntries)
    .where(or(inArray(ofOrder, [...orders]), inArray(ofBatch, [...batches])))
    .orderBy(asc(stockEntries.id));
  return rows.map(({ id: _id, change: _change, ...row }) => present(row));
};
