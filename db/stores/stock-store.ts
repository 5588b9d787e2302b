import { asc, eq, sql } from 'drizzle-orm';
import type { StockEntry } from '../../shared/stock-entry.ts';
import { materials } from '../tables/material.ts';
import { stockEntries } from '../tables/stock-entry.ts';
import type { Tx } from '../transaction.ts';
import { addOffcuts, offcutsOf } from './offcut-store.ts';
import { present } from './rows.ts';

/** A line to be written: `quantity` is what was brought or taken, be it there by the book or not. Who did it is of the change. */
export type StockMove = Omit<StockEntry, 'by' | 'beyond'>;
/** Why stock is another amount, said of a count: all of a move but what it comes to. */
export type StockReason = Omit<StockMove, 'quantity' | 'material' | 'lengthMm'>;

/** Amounts add up to fractions: so little is none. */
const ROUNDING = 1e-6;

/** Of the change that is being written, where there is one. */
const change = sql<number | null>`(select "change" from "changeUnderWay" where "id" = 1)`;
const by = sql<
  string | null
>`(select "by" from "changes" where "id" = (select "change" from "changeUnderWay" where "id" = 1))`;

const write = async (tx: Tx, move: StockMove, beyond = 0): Promise<void> => {
  await tx.insert(stockEntries).values({ ...move, beyond, by, change });
};

/** What there is of a material by its lines, in its own unit; of sticks whole ones. */
const onHandOf = async (tx: Tx, material: string): Promise<number | null> =>
  (await tx.select({ onHand: materials.onHand }).from(materials).where(eq(materials.id, material)))[0]?.onHand ?? null;

const moveStock = async (tx: Tx, move: StockMove): Promise<void> => {
  const before = await onHandOf(tx, move.material);
  if (before === null) return;
  const after = Math.max(0, before + move.quantity);
  const short = before + move.quantity < -ROUNDING ? -(before + move.quantity) : 0;
  await tx
    .update(materials)
    .set({ onHand: after, shortBy: sql`${materials.shortBy} + ${short}` })
    .where(eq(materials.id, move.material));
  if (after !== before || short > 0) await write(tx, { ...move, quantity: after - before }, short);
};

const moveOffcuts = async (tx: Tx, move: StockMove, lengthMm: number): Promise<void> => {
  const there = (await offcutsOf(tx, move.material)).find((one) => one.lengthMm === lengthMm)?.count ?? 0;
  const quantity = Math.max(-there, move.quantity);
  if (quantity === 0) return;
  await addOffcuts(tx, move.material, lengthMm, quantity);
  await write(tx, { ...move, quantity });
};

/**
 * The one way in which stock becomes more or less: a line in the stock book, and what is in the yard with it. More than there
 * is cannot be taken: of a material the rest is kept as taken beyond the book until it is counted, of offcuts it is nothing.
 * A material that the book does not have is left alone.
 */
export const moveInStock = (tx: Tx, move: StockMove): Promise<void> =>
  move.lengthMm === undefined ? moveStock(tx, move) : moveOffcuts(tx, move, move.lengthMm);

/** So much is there of a material, in its own unit, and nothing is short any more; what that changes is written. */
export const setOnHand = async (tx: Tx, material: string, onHand: number, why: StockReason): Promise<void> => {
  const before = await onHandOf(tx, material);
  if (before === null) return;
  await tx.update(materials).set({ onHand }).where(eq(materials.id, material));
  if (onHand !== before) await write(tx, { ...why, material, quantity: onHand - before });
};

/** These are all the offcuts of a material, no two of one length; what that changes is written. */
export const setOffcuts = async (
  tx: Tx,
  material: string,
  now: readonly { lengthMm: number; count: number }[],
  why: StockReason,
): Promise<void> => {
  const changes = new Map(now.map(({ lengthMm, count }) => [lengthMm, count]));
  for (const { lengthMm, count } of await offcutsOf(tx, material))
    changes.set(lengthMm, (changes.get(lengthMm) ?? 0) - count);
  for (const [lengthMm, quantity] of changes) await moveInStock(tx, { ...why, material, lengthMm, quantity });
};

/** All lines of the stock book, in the order in which they were written. */
export const stockBook = async (tx: Tx): Promise<StockEntry[]> =>
  (await tx.select().from(stockEntries).orderBy(asc(stockEntries.id))).map(({ id: _id, change: _change, ...row }) => {
    const { beyond, ...rest } = row;
    return { ...present(rest), ...(beyond > 0 ? { beyond } : {}) };
  });
