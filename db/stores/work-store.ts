import { asc, eq } from 'drizzle-orm';
import type { ExtraWindow, WorkWindow } from '../../shared/work.ts';
import { closedDays as closedTable, extraWindows as extraTable, workWindows as workTable } from '../tables/work.ts';
import type { Tx } from '../transaction.ts';
import { insertAll, nextPosition } from './rows.ts';

type WorkRow = Omit<typeof workTable.$inferSelect, 'position'>;

/** Hours that repeat, each with its id. */
export const workWindows = async (tx: Tx): Promise<WorkRow[]> =>
  (await tx.select().from(workTable).orderBy(asc(workTable.position))).map(({ position: _position, ...row }) => row);

/** Dates on which no repeating window opens, each with its id; in no order of dates. */
export const closedDays = (tx: Tx): Promise<{ id: number; date: string }[]> =>
  tx.select({ id: closedTable.id, date: closedTable.date }).from(closedTable).orderBy(asc(closedTable.position));

/** One-off hours, each with its id. */
export const extraWindows = async (tx: Tx): Promise<(ExtraWindow & { id: number })[]> =>
  (await tx.select().from(extraTable).orderBy(asc(extraTable.position))).map(({ position: _position, ...row }) => row);

/** Puts hours that repeat last in the list. */
export const addWork = async (tx: Tx, window: WorkWindow): Promise<void> => {
  await tx.insert(workTable).values({ ...window, position: await nextPosition(tx, workTable) });
};

/** Sets what the patch has of hours that repeat; `until` null: without end. */
export const updateWork = async (tx: Tx, id: number, patch: Partial<Omit<WorkRow, 'id'>>): Promise<void> => {
  await tx.update(workTable).set(patch).where(eq(workTable.id, id));
};

/** Takes hours that repeat out, for all of their dates, past ones too. */
export const removeWork = async (tx: Tx, id: number): Promise<void> => {
  await tx.delete(workTable).where(eq(workTable.id, id));
};

/** Puts hours of one date last in the list, beside the repeating ones of that date. */
export const addExtra = async (tx: Tx, window: ExtraWindow): Promise<void> => {
  await tx.insert(extraTable).values({ ...window, position: await nextPosition(tx, extraTable) });
};

/** Takes hours of one date out. A closed date stays closed. */
export const removeExtra = async (tx: Tx, id: number): Promise<void> => {
  await tx.delete(extraTable).where(eq(extraTable.id, id));
};

/** Repeating hours open again on that date; one-off hours stay as they are. */
export const reopenDay = async (tx: Tx, date: string): Promise<void> => {
  await tx.delete(closedTable).where(eq(closedTable.date, date));
};

/** That date has exactly these hours, none of the repeating ones. Without any, no work is done that day. */
export const replaceDay = async (
  tx: Tx,
  date: string,
  windows: readonly Omit<ExtraWindow, 'date'>[],
): Promise<void> => {
  const closed = await tx.select().from(closedTable).where(eq(closedTable.date, date));
  if (closed.length === 0) await tx.insert(closedTable).values({ date, position: await nextPosition(tx, closedTable) });
  await tx.delete(extraTable).where(eq(extraTable.date, date));
  const from = await nextPosition(tx, extraTable);
  await insertAll(
    tx,
    extraTable,
    windows.map((window, index) => ({ ...window, date, position: from + index })),
  );
};

/** One-off hours beside the usual ones of their date, or in their place. */
export const updateExtra = async (tx: Tx, id: number, window: ExtraWindow): Promise<void> => {
  await tx.update(extraTable).set(window).where(eq(extraTable.id, id));
};

/** No repeating hours open on these dates; those closed already stay so, and so do their one-off hours. */
export const closeDays = async (tx: Tx, dates: readonly string[]): Promise<void> => {
  const closed = new Set((await closedDays(tx)).map(({ date }) => date));
  const from = await nextPosition(tx, closedTable);
  const fresh = [...new Set(dates)].filter((date) => !closed.has(date));
  await insertAll(
    tx,
    closedTable,
    fresh.map((date, index) => ({ date, position: from + index })),
  );
};
