import { asc, desc, eq, inArray, sql } from 'drizzle-orm';
import type { YardCosts } from '../../shared/money.ts';
import { incomings } from '../tables/material.ts';
import { kitPrices, orderMoney, orderPayments, yardCosts } from '../tables/money.ts';
import { moulds } from '../tables/mould.ts';
import type { Tx } from '../transaction.ts';
import { nextPosition, present } from './rows.ts';

/** What costs are reckoned by, in the yard's money; what nobody said is left out. */
export const costsOfYard = async (tx: Tx): Promise<YardCosts> => {
  const [row] = await tx.select().from(yardCosts);
  if (!row) return {};
  const { id: _id, ...figures } = row;
  return present(figures);
};

/** Sets what costs are reckoned by, all of it; no row is left where nothing is said. */
export const setCostsOfYard = async (tx: Tx, costs: YardCosts): Promise<void> => {
  await tx.delete(yardCosts);
  if (Object.keys(costs).length > 0) await tx.insert(yardCosts).values({ id: 1, ...costs });
};

/** What a mould cost and how many turns that is spread over; null: as the yard says of all. */
export interface MouldCostRow {
  id: string;
  cost: number | null;
  costTurns: number | null;
}

/** What each mould cost, in the order in which the maker lists them, those out of use too. */
export const costsOfMoulds = (tx: Tx): Promise<MouldCostRow[]> =>
  tx
    .select({ id: moulds.id, cost: moulds.cost, costTurns: moulds.costTurns })
    .from(moulds)
    .orderBy(asc(moulds.position));

/** Sets what a mould cost and how many turns it lasts. */
export const setCostOfMould = async (tx: Tx, { id, ...set }: MouldCostRow): Promise<void> => {
  await tx.update(moulds).set(set).where(eq(moulds.id, id));
};

/** What is asked for kits, by kit; those asked for by the margin are left out. */
export const pricesOfKits = async (tx: Tx): Promise<ReadonlyMap<string, number>> =>
  new Map((await tx.select().from(kitPrices)).map(({ kit, price }) => [kit, price]));

/** Sets what is asked for a kit; null: by the margin. */
export const setKitPrice = async (tx: Tx, kit: string, price: number | null): Promise<void> => {
  await tx.delete(kitPrices).where(eq(kitPrices.kit, kit));
  if (price !== null) await tx.insert(kitPrices).values({ kit, price });
};

type MoneyRow = typeof orderMoney.$inferSelect;
/** Money that came for an order, or went back, known by its number. */
export type StoredPayment = Omit<typeof orderPayments.$inferSelect, 'position' | 'order'>;
/** The money of an order; null for what was not said. */
export interface StoredMoney extends Omit<MoneyRow, 'order'> {
  payments: StoredPayment[];
}

/** The money of an order; nothing but nulls where nothing was said of it. */
export const moneyOfOrder = async (tx: Tx, order: string): Promise<StoredMoney> => {
  const [row] = await tx.select().from(orderMoney).where(eq(orderMoney.order, order));
  const { order: _order, ...said } = row ?? {
    order,
    price: null,
    deposit: null,
    estimate: null,
    quote: null,
    papers: null,
  };
  const payments = await tx
    .select()
    .from(orderPayments)
    .where(eq(orderPayments.order, order))
    .orderBy(asc(orderPayments.on), asc(orderPayments.position));
  return { ...said, payments: payments.map(({ position: _position, order: _of, ...payment }) => payment) };
};

/** Sets what the patch has of an order's money; null takes it away. */
export const setMoneyOfOrder = async (
  tx: Tx,
  order: string,
  patch: Partial<Omit<MoneyRow, 'order'>>,
): Promise<void> => {
  await tx
    .insert(orderMoney)
    .values({ order, ...patch })
    .onConflictDoUpdate({ target: orderMoney.order, set: patch });
};

/** Puts a payment last among those of an order. */
export const addPayment = async (tx: Tx, order: string, payment: Omit<StoredPayment, 'id'>): Promise<void> => {
  const position = await nextPosition(tx, orderPayments);
  await tx.insert(orderPayments).values({ ...payment, order, position });
};

/** Takes a payment back that was put down by mistake. */
export const removePayment = async (tx: Tx, id: number): Promise<void> => {
  await tx.delete(orderPayments).where(eq(orderPayments.id, id));
};

/** What is asked for an order and what was paid of it, both in the yard's money. */
export interface AskedAndPaid {
  order: string;
  price: number | null;
  paid: number;
}

/** Of all orders of which a price or a payment is known, in no order. */
export const askedAndPaid = async (tx: Tx): Promise<AskedAndPaid[]> => {
  const paid = await tx
    .select({
      order: orderPayments.order,
      paid: sql<number>`sum(case when ${orderPayments.back} then -${orderPayments.amount} else ${orderPayments.amount} end)`,
    })
    .from(orderPayments)
    .groupBy(orderPayments.order);
  const asked = await tx.select({ order: orderMoney.order, price: orderMoney.price }).from(orderMoney);
  const byOrder = new Map<string, AskedAndPaid>();
  for (const { order, price } of asked) if (price !== null) byOrder.set(order, { order, price, paid: 0 });
  for (const one of paid) byOrder.set(one.order, { ...one, price: byOrder.get(one.order)?.price ?? null });
  return [...byOrder.values()];
};

/** Goods that were bought, in the material's unit, the price for all of them; `arrivedOn` null: on their way. */
export interface BoughtGoods {
  material: string;
  quantity: number;
  on: string;
  arrivedOn: string | null;
  /** The date on the bags that came; null for none. */
  useBy: string | null;
  price: number | null;
}

/** More deliveries than that are not in a yard at once. */
const DELIVERIES_READ = 2000;

/** What was bought, the last first. */
export const boughtGoods = (tx: Tx): Promise<BoughtGoods[]> =>
  tx
    .select({
      material: incomings.material,
      quantity: incomings.quantity,
      on: incomings.on,
      arrivedOn: incomings.arrivedOn,
      useBy: incomings.useBy,
      price: incomings.price,
    })
    .from(incomings)
    .orderBy(desc(incomings.on), desc(incomings.id))
    .limit(DELIVERIES_READ);

/** What is asked for orders, by number; those of which nothing was said are left out. */
export const pricesOfOrders = async (tx: Tx, ids: readonly string[]): Promise<ReadonlyMap<string, number>> => {
  const rows = await tx
    .select({ order: orderMoney.order, price: orderMoney.price })
    .from(orderMoney)
    .where(inArray(orderMoney.order, [...ids]));
  return new Map(rows.flatMap(({ order, price }) => (price === null ? [] : [[order, price] as const])));
};
