import { asc, desc, eq, sql } from 'drizzle-orm';
import type { WorkRecord } from '../../shared/work-record.ts';
import { workRecords as table } from '../tables/work-record.ts';
import type { Tx } from '../transaction.ts';
import { inPartsById, insertAll } from './rows.ts';

/** All that was done, in the order in which it was recorded. */
export const workRecords = async (tx: Tx): Promise<WorkRecord[]> =>
  (await tx.select({ record: table.record }).from(table).orderBy(asc(table.id))).map(({ record }) => record);

/** More than these are not recorded in a day. */
const RECENT = 300;

/** The last of all that was done, in the order in which it was recorded. */
export const recentWorkRecords = async (tx: Tx): Promise<WorkRecord[]> =>
  (await tx.select({ record: table.record }).from(table).orderBy(desc(table.id)).limit(RECENT))
    .map(({ record }) => record)
    .reverse();

/** Keeps what was done, and by whom where that is known, as part of the change that records it: undoing that takes it back. */
export const addWorkRecords = (tx: Tx, records: readonly WorkRecord[], by?: string): Promise<void> =>
  insertAll(
    tx,
    table,
    records.map((record) => ({ record: by === undefined ? record : { ...record, doneBy: by } })),
  );

/** The same, each with the number by which it is found again. */
export const numberedWorkRecords = (tx: Tx): Promise<{ id: number; record: WorkRecord }[]> =>
  tx.select().from(table).orderBy(asc(table.id));

/** Keeps a record as it is told now, in its place. */
export const setWorkRecord = async (tx: Tx, id: number, record: WorkRecord): Promise<void> => {
  await tx.update(table).set({ record }).where(eq(table.id, id));
};

/** How many records there are of one kind. */
export const countOfRecords = async (tx: Tx, kind: WorkRecord['kind']): Promise<number> =>
  tx.$count(table, eq(sql`json_extract(${table.record}, '$.kind')`, kind));

/** How many pieces came out of their moulds, and how many of them were scrap, then or after mending. */
export const scrapCounts = async (tx: Tx): Promise<{ scrapped: number; of: number }> => {
  const kind = sql`json_extract(${table.record}, '$.kind')`;
  const [counts] = await tx
    .select({
      of: sql<number>`coalesce(sum(${kind} = 'stripped'), 0)`,
      scrapped: sql<number>`coalesce(sum(${kind} in ('stripped', 'after mending') and json_extract(${table.record}, '$.cameOut') = 'scrap'), 0)`,
    })
    .from(table);
  return counts ?? { of: 0, scrapped: 0 };
};

const at = sql<string>`json_extract(${table.record}, '$.at')`;

/** What was done from a date on and before another, as instants are written; in the order in which it was recorded. */
export const workRecordsBetween = async (
  tx: Tx,
  { from, until }: { from: string; until: string },
): Promise<WorkRecord[]> => {
  const rows = await inPartsById((after, limit) =>
    tx
      .select()
      .from(table)
      .where(sql`${table.id} > ${after} and ${at} >= ${from} and ${at} < ${until}`)
      .orderBy(asc(table.id))
      .limit(limit),
  );
  return rows.map(({ record }) => record);
};

/** The instant of the first of all that was done; null where nothing was. */
export const firstRecordAt = async (tx: Tx): Promise<string | null> =>
  (await tx.select({ first: sql<string | null>`min(${at})` }).from(table))[0]?.first ?? null;
