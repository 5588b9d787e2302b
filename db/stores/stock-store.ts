import { and, asc, eq, isNotNull, or, sql } from 'drizzle-orm';
import { type BagsMoved, bagsGone, lotsInOrder } from '../../shared/bags.ts';
import type { Material } from '../../shared/material.ts';
import type { StockEntry } from '../../shared/stock-entry.ts';
import { materials } from '../tables/material.ts';
import { stockEntries } from '../tables/stock-entry.ts';
import type { Tx } from '../transaction.ts';
import { addOffcuts, offcutsOf } from './offcut-store.ts';
import { addRests, restsOf } from './rest-store.ts';
import { present } from './rows.ts';

/** A line to be written: `quantity` is what was brought or taken, be it there by the book or not. Who did it is of the change. */
export type StockMove = Omit<StockEntry, 'by' | 'beyond' | 'ofLine'>;
/** Why stock is another amount, said of a count: all of a move but what it comes to. */
export type StockReason = Omit<StockMove, 'quantity' | 'material' | 'lengthMm' | 'widthMm'>;

type Lots = NonNullable<Material['lots']>;

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

/** Bags that have a date or are opened, by material, as a yard file has them. */
export const lotsByMaterial = async (tx: Tx, material?: string): Promise<ReadonlyMap<string, Lots>> => {
  // As the index has it, which these are read from alone; offcuts have no date.
  const { quantity, useBy, openedAt } = stockEntries;
  const dated = or(isNotNull(useBy), isNotNull(openedAt));
  const rows = await tx
    .select({ material: stockEntries.material, useBy, openedAt, quantity: sql<number>`sum(${quantity})` })
    .from(stockEntries)
    .where(material === undefined ? dated : and(dated, eq(stockEntries.material, material)))
    .groupBy(stockEntries.material, useBy, openedAt);
  const lots = new Map<string, Lots>();
  for (const { material: id, ...lot } of rows) lots.set(id, [...(lots.get(id) ?? []), present(lot)]);
  return new Map([...lots].map(([id, own]) => [id, lotsInOrder(own)]));
};

const stockOf = async (tx: Tx, material: string): Promise<{ onHand: number; lots: Lots } | null> => {
  const [row] = await tx.select({ onHand: materials.onHand }).from(materials).where(eq(materials.id, material));
  return row ? { ...row, lots: (await lotsByMaterial(tx, material)).get(material) ?? [] } : null;
};

/** Lines for so much more or less: what is less and is of no named bags is of those that go first. */
const writeMoved = async (tx: Tx, stock: { onHand: number; lots: Lots }, move: StockMove): Promise<number> => {
  const isUnnamed = move.useBy === undefined && move.openedAt === undefined;
  const parts = isUnnamed && move.quantity < 0 ? bagsGone(stock, -move.quantity) : [{ quantity: move.quantity }];
  let after = stock.onHand;
  const lines: (BagsMoved & { short: number })[] = [];
  for (const part of parts) {
    const left = Math.max(0, after + part.quantity);
    const short = after + part.quantity < -ROUNDING ? -(after + part.quantity) : 0;
    const last = lines.at(-1);
    // What the book has nothing of stands with what was taken before it.
    if (left === after && last) last.short += short;
    else if (left !== after || short > 0) lines.push({ ...part, quantity: left - after, short });
    after = left;
  }
  for (const { short, ...line } of lines) await write(tx, { ...move, ...line }, short);
  return after;
};

const moveStock = async (tx: Tx, move: StockMove): Promise<void> => {
  const stock = await stockOf(tx, move.material);
  if (stock === null) return;
  const after = await writeMoved(tx, stock, move);
  const short = Math.max(0, -(stock.onHand + move.quantity));
  await tx
    .update(materials)
    .set({ onHand: after, shortBy: sql`${materials.shortBy} + ${short > ROUNDING ? short : 0}` })
    .where(eq(materials.id, move.material));
};

const moveOffcuts = async (tx: Tx, move: StockMove, lengthMm: number): Promise<void> => {
  const there = (await offcutsOf(tx, move.material)).find((one) => one.lengthMm === lengthMm)?.count ?? 0;
  const quantity = Math.max(-there, move.quantity);
  if (quantity === 0) return;
  await addOffcuts(tx, move.material, lengthMm, quantity);
  await write(tx, { ...move, quantity });
};

const moveRests = async (tx: Tx, move: StockMove, size: { widthMm: number; lengthMm: number }): Promise<void> => {
  const isSame = (one: typeof size) => one.widthMm === size.widthMm && one.lengthMm === size.lengthMm;
  const there = (await restsOf(tx, move.material)).filter(isSame).reduce((sum, one) => sum + one.count, 0);
  const quantity = Math.max(-there, move.quantity);
  if (quantity === 0) return;
  await addRests(tx, move.material, size, quantity);
  await write(tx, { ...move, quantity });
};

/**
 * The one way in which stock becomes more or less: a line in the stock book, and what is in the yard with it. More than there
 * is cannot be taken: of a material the rest is kept as taken beyond the book until it is counted, of offcuts and rests it is nothing.
 * A material that the book does not have is left alone.
 */
export const moveInStock = (tx: Tx, move: StockMove): Promise<void> => {
  const { lengthMm, widthMm } = move;
  if (lengthMm === undefined) return moveStock(tx, move);
  return widthMm === undefined ? moveOffcuts(tx, move, lengthMm) : moveRests(tx, move, { widthMm, lengthMm });
};

/** So much is there of a material, in its own unit, and nothing is short any more; what that changes is written. */
export const setOnHand = async (tx: Tx, material: string, onHand: number, why: StockReason): Promise<void> => {
  const stock = await stockOf(tx, material);
  if (stock === null) return;
  await writeMoved(tx, stock, { ...why, material, quantity: onHand - stock.onHand });
  await tx.update(materials).set({ onHand }).where(eq(materials.id, material));
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

/** These are all the rests of sheets of a material; what that changes is written. */
export const setRests = async (
  tx: Tx,
  material: string,
  now: NonNullable<Material['rests']>,
  why: StockReason,
): Promise<void> => {
  const changes = new Map<string, NonNullable<Material['rests']>[number]>();
  const add = ({ widthMm, lengthMm, count }: NonNullable<Material['rests']>[number]) => {
    const key = `${widthMm} ${lengthMm}`;
    changes.set(key, { widthMm, lengthMm, count: (changes.get(key)?.count ?? 0) + count });
  };
  for (const one of now) add(one);
  for (const one of await restsOf(tx, material)) add({ ...one, count: -one.count });
  for (const { count: quantity, ...size } of changes.values())
    await moveInStock(tx, { ...why, material, ...size, quantity });
};

/**
 * What a line says is undone: it stays in the book, and one more of the same bags, offcuts or rests takes back what it brought, or
 * brings back what it took. Undone in turn, that line has one more as well; all of them name the first. What is on hand is the caller's to put back.
 */
export const undoLine = async (tx: Tx, id: number, at: string): Promise<void> => {
  const [line] = await tx.select().from(stockEntries).where(eq(stockEntries.id, id));
  if (!line) throw new Error(`The stock book has no line ${id}.`);
  const { id: own, quantity, ofLine, ...of } = line;
  const back = { quantity: 0 - quantity, beyond: 0, work: null, reason: null, ofLine: ofLine ?? own };
  await tx.insert(stockEntries).values({ ...of, ...back, at, by, change });
};

/** What the lines come to, of each material (`lengthMm` null), of each length of its offcuts and of each size of its rests. */
export const stockSums = (
  tx: Tx,
): Promise<{ material: string; lengthMm: number | null; widthMm: number | null; quantity: number }[]> =>
  tx
    .select({
      ...{ material: stockEntries.material, lengthMm: stockEntries.lengthMm, widthMm: stockEntries.widthMm },
      quantity: sql<number>`sum(${stockEntries.quantity})`,
    })
    .from(stockEntries)
    .groupBy(stockEntries.material, stockEntries.lengthMm, stockEntries.widthMm);

/** All lines of the stock book, in the order in which they were written. */
export const stockBook = async (tx: Tx): Promise<StockEntry[]> => {
  const rows = await tx.select().from(stockEntries).orderBy(asc(stockEntries.id));
  const places = new Map(rows.map(({ id }, place) => [id, place]));
  return rows.map(({ id: _id, change: _change, beyond, ofLine, ...row }) => ({
    ...present({ ...row, ofLine: ofLine === null ? null : (places.get(ofLine) ?? null) }),
    ...(beyond > 0 ? { beyond } : {}),
  }));
};
