import { and, asc, desc, eq, gte, inArray, like, lt, ne, type SQL, sql } from 'drizzle-orm';
import type { OrderLine } from '../../shared/order.ts';
import { customers } from '../tables/customer.ts';
import { finishedPieces, piecesInMould } from '../tables/mould.ts';
import { orderLines, orders } from '../tables/order.ts';
import type { Tx } from '../transaction.ts';
import type { Customer } from './customer-store.ts';
import { belongings, inParts, insertAll, nextPosition, present } from './rows.ts';

type OrderRow = typeof orders.$inferSelect;

/** An order of any status, with its customer and lines; null stands for what was not said. */
export interface StoredOrder extends Omit<OrderRow, 'position'> {
  customer: Customer | null;
  lines: OrderLine[];
}

/** An order to be taken. It will be open; its number has to be new, its customer there. */
export type NewOrder = Omit<
  OrderRow,
  'position' | 'status' | 'handedOverOn' | 'packedAt' | 'packedMinutes' | 'partOf' | 'firstPromisedOn'
> & {
  lines: OrderLine[];
  partOf?: string | null;
  /** Where nothing is said, the date that it comes with. */
  firstPromisedOn?: string | null;
};

const linesOf = async (tx: Tx, ids: string[]) => {
  const rows = await tx
    .select()
    .from(orderLines)
    .where(inArray(orderLines.order, ids))
    .orderBy(asc(orderLines.position));
  return belongings(
    rows,
    (row) => row.order,
    ({ kit, casting, material, quantity }): OrderLine => present({ kit, casting, material, quantity }),
  );
};

const withLines = async (tx: Tx, rows: { order: OrderRow; customer: Customer | null }[]): Promise<StoredOrder[]> => {
  const lines = await linesOf(
    tx,
    rows.map(({ order: { id } }) => id),
  );
  return rows.map(({ order: { position: _position, ...facts }, customer }) => ({
    ...facts,
    customer,
    lines: lines(facts.id),
  }));
};

const ordersWhere = (tx: Tx, where: SQL | undefined, order: SQL, most?: number): Promise<StoredOrder[]> =>
  inParts(async (limit, offset) => {
    const rows = tx
      .select({ order: orders, customer: customers })
      .from(orders)
      .leftJoin(customers, eq(customers.id, orders.customerId))
      .where(where)
      .orderBy(order, asc(orders.id))
      .limit(limit)
      .offset(offset);
    return withLines(tx, await rows);
  }, most);

/** In the order in which they were taken. */
export const openOrders = (tx: Tx): Promise<StoredOrder[]> =>
  ordersWhere(tx, eq(orders.status, 'open'), asc(orders.position));

/** The day promised of each open order; null where none was. */
export const promisedDays = async (tx: Tx): Promise<ReadonlyMap<string, string | null>> => {
  const rows = await inParts((limit, offset) =>
    tx
      .select({ id: orders.id, promisedOn: orders.promisedOn })
      .from(orders)
      .where(eq(orders.status, 'open'))
      .orderBy(asc(orders.id))
      .limit(limit)
      .offset(offset),
  );
  return new Map(rows.map(({ id, promisedOn }) => [id, promisedOn]));
};

/** Handed over, cancelled and lapsed, the newest first. */
export const pastOrders = (tx: Tx, limit: number): Promise<StoredOrder[]> =>
  ordersWhere(tx, ne(orders.status, 'open'), desc(orders.position), limit);

/** One order of any status, or null where none has that number. */
export const orderById = async (tx: Tx, id: string): Promise<StoredOrder | null> =>
  (await ordersWhere(tx, eq(orders.id, id), asc(orders.position)))[0] ?? null;

/** What went out of an order before the rest, the first first. */
export const partsOfOrder = (tx: Tx, id: string): Promise<StoredOrder[]> =>
  ordersWhere(tx, eq(orders.partOf, id), asc(orders.position));

/** Orders of any status by their numbers, in the order in which they were taken; those that are not there are left out. */
export const ordersOfIds = (tx: Tx, ids: readonly string[]): Promise<StoredOrder[]> =>
  ordersWhere(tx, inArray(orders.id, [...ids]), asc(orders.position));

/** Whose orders of any status are, by number; those of nobody that is recorded, and those that are not there, are left out. */
export const customersOfOrders = async (tx: Tx, ids: readonly string[]): Promise<ReadonlyMap<string, string>> => {
  const rows = await tx
    .select({ id: orders.id, name: customers.name })
    .from(orders)
    .innerJoin(customers, eq(customers.id, orders.customerId))
    .where(inArray(orders.id, [...ids]));
  return new Map(rows.map(({ id, name }) => [id, name]));
};

/** Open orders whose date was held until a day before `today`, a date; held until today still holds. */
export const lapsedHolds = (tx: Tx, today: string): Promise<StoredOrder[]> =>
  ordersWhere(tx, and(eq(orders.status, 'open'), lt(orders.heldUntil, today)), asc(orders.position));

/**
 * The next number of the year of `date`, from the highest there is: gaps are not filled, so that the numbers of
 * cancelled orders are not given again. Three digits at least.
 *
 * Example: `nextNumber(['27-014', '26-200'], '2027-04-01')` is "27-015".
 */
export const nextNumber = (ids: Iterable<string>, date: string): string => {
  const year = date.slice(2, 4);
  let last = 0;
  for (const id of ids)
    if (id.startsWith(`${year}-`) && /^\d\d-\d+$/.test(id)) last = Math.max(last, Number(id.slice(3)));
  return `${year}-${String(last + 1).padStart(3, '0')}`;
};

/** The next number among all orders ever taken, those past included (`nextNumber`). */
export const nextOrderId = async (tx: Tx, date: string): Promise<string> => {
  const year = date.slice(2, 4);
  const rows = await tx
    .select({ id: orders.id })
    .from(orders)
    .where(like(orders.id, `${year}-%`));
  return nextNumber(
    rows.map(({ id }) => id),
    date,
  );
};

/** The lines of an order anew, in their order. Whether a line names just one thing is checked before. */
export const replaceLines = async (tx: Tx, id: string, lines: readonly OrderLine[]): Promise<void> => {
  await tx.delete(orderLines).where(eq(orderLines.order, id));
  await insertAll(
    tx,
    orderLines,
    lines.map((line, position) => ({ ...line, order: id, position })),
  );
};

/** Puts an order last among those taken, open. */
export const addOrder = async (tx: Tx, { lines, ...facts }: NewOrder): Promise<void> => {
  const firstPromisedOn = facts.firstPromisedOn ?? facts.promisedOn;
  const position = await nextPosition(tx, orders);
  await tx.insert(orders).values({ ...facts, firstPromisedOn, status: 'open', position });
  await replaceLines(tx, facts.id, lines);
};

/**
 * Sets what the patch has of an order; null takes away what may be left out. Pieces set aside for it stay so. The date it
 * had, or else the one it is given, is its first where none is on record, unless the patch says which is.
 */
export const updateOrder = async (
  tx: Tx,
  id: string,
  patch: Partial<Omit<OrderRow, 'id' | 'position'>>,
): Promise<void> => {
  const { firstPromisedOn, promisedOn } = orders;
  const first =
    patch.promisedOn === undefined
      ? {}
      : { firstPromisedOn: sql`coalesce(${firstPromisedOn}, ${promisedOn}, ${patch.promisedOn})` };
  await tx
    .update(orders)
    .set({ ...first, ...patch })
    .where(eq(orders.id, id));
};

/** The pieces set aside for an order become stock. */
export const freeSetAside = async (tx: Tx, id: string): Promise<void> => {
  await tx.update(finishedPieces).set({ order: null }).where(eq(finishedPieces.order, id));
  await tx.update(piecesInMould).set({ order: null }).where(eq(piecesInMould.order, id));
};

/** Orders handed over from a date on and before another, parts too, in the order in which they were taken. */
export const handedOverBetween = (tx: Tx, { from, until }: { from: string; until: string }): Promise<StoredOrder[]> =>
  ordersWhere(
    tx,
    and(eq(orders.status, 'handed over'), gte(orders.handedOverOn, from), lt(orders.handedOverOn, until)),
    asc(orders.position),
  );
