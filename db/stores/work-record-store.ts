import { asc } from 'drizzle-orm';
import type { WorkRecord } from '../../shared/work-record.ts';
import { workRecords as table } from '../tables/work-record.ts';
import type { Tx } from '../transaction.ts';
import { insertAll } from './rows.ts';

/** All that was done, in the order in which it was recorded. */
export const workRecords = async (tx: Tx): Promise<WorkRecord[]> =>
  (await tx.select({ record: table.record }).from(table).orderBy(asc(table.id))).map(({ record }) => record);

/** Keeps what was done, as part of the change that records it: undoing that takes it back. */
export const addWorkRecords = (tx: Tx, records: readonly WorkRecord[]): Promise<void> =>
  insertAll(
    tx,
    table,
    records.map((record) => ({ record })),
  );
