import { and, asc, desc, eq, getTableColumns, gt, gte, inArray, isNotNull, isNull, lt, or, sql } from 'drizzle-orm';
import type { StockEntry } from '../../shared/stock-entry.ts';
import { stockEntries } from '../tables/stock-entry.ts';
import type { Tx } from '../transaction.ts';
import { inPartsById, present } from './rows.ts';

/** Whether what a line says stands, or was undone since; or it says of another that this was undone, or done again. */
type LineStanding = 'stands' | 'undone' | 'undoes' | 'again';

type Row = Omit<typeof stockEntries.$inferSelect, 'change'>;

/** A line of the stock book with what it left: of the material, of offcuts of its length, or of rests of its size. */
export type StockLine = Row & { left: number; standing: LineStanding };

/** How often a line was undone, or done again; of a line that says so of another, the how manieth of these it is. */
const turns = sql<number>`(
  select count(*) from "stockEntries" as "turn"
  where "turn"."ofLine" = coalesce("stockEntries"."ofLine", "stockEntries"."id")
    and ("stockEntries"."ofLine" is null or "turn"."id" <= "stockEntries"."id")
)`;

const standingOf = ({ ofLine }: Row, turned: number): LineStanding => {
  const isOdd = turned % 2 === 1;
  if (ofLine === null) return isOdd ? 'undone' : 'stands';
  return isOdd ? 'undoes' : 'again';
};

const ofMaterial = (material: string, before: number | undefined) =>
  and(eq(stockEntries.material, material), before === undefined ? undefined : lt(stockEntries.id, before));

const sizeOf = ({ lengthMm, widthMm }: Pick<Row, 'lengthMm' | 'widthMm'>): string => `${widthMm} ${lengthMm}`;

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
    .select({ ...getTableColumns(stockEntries), turned: turns })
    .from(stockEntries)
    .where(ofMaterial(material, before))
    .orderBy(desc(stockEntries.id))
    .limit(limit);
  return rows.map(({ change: _change, turned, ...row }) => {
    const left = sums.get(sizeOf(row)) ?? 0;
    sums.set(sizeOf(row), left - row.quantity);
    return { ...row, left, standing: standingOf(row, turned) };
  });
};

/** Lines of the stock book of some orders, and of the batches that were full at some instants, in the order in which they were written; none that was undone. */
export const stockTakenFor = async (
  tx: Tx,
  { orders, batches }: { orders: readonly string[]; batches: readonly string[] },
): Promise<StockEntry[]> => {
  const ofOrder = sql`json_extract(${stockEntries.work}, '$.order')`;
  const ofBatch = sql`json_extract(${stockEntries.work}, '$.at')`;
  const rows = await tx
    .select()
    .from(stockEntries)
    .where(
      and(
        or(inArray(ofOrder, [...orders]), inArray(ofBatch, [...batches])),
        isNull(stockEntries.ofLine),
        sql`${turns} % 2 = 0`,
      ),
    )
    .orderBy(asc(stockEntries.id));
  return rows.map(({ id: _id, change: _change, ofLine: _ofLine, ...row }) => present(row));
};

/** Lines that were undone, and not done again: counted at once, for to ask it of each line of a year takes seconds. */
const undoneLines = async (tx: Tx): Promise<ReadonlySet<number>> => {
  const rows = await tx
    .select({ line: stockEntries.ofLine, turns: sql<number>`count(*)` })
    .from(stockEntries)
    .where(isNotNull(stockEntries.ofLine))
    .groupBy(stockEntries.ofLine);
  return new Set(rows.flatMap(({ line, turns: times }) => (line !== null && times % 2 === 1 ? [line] : [])));
};

/** Lines of the stock book from a date on and before another, as instants are written; what was undone is none. In the order in which they were written. */
export const stockBetween = async (tx: Tx, { from, until }: { from: string; until: string }): Promise<StockEntry[]> => {
  const undone = await undoneLines(tx);
  const rows = await inPartsById((after, limit) =>
    tx
      .select()
      .from(stockEntries)
      .where(
        and(
          ...[gt(stockEntries.id, after), isNull(stockEntries.ofLine)],
          ...[gte(stockEntries.at, from), lt(stockEntries.at, until)],
        ),
      )
      .orderBy(asc(stockEntries.id))
      .limit(limit),
  );
  return rows
    .filter(({ id }) => !undone.has(id))
    .map(({ id: _id, change: _change, ofLine: _ofLine, ...row }) => present(row));
};
