import type { Order } from '../../shared/order.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { filled, inside, listed, placed, placedById } from './row-lists.ts';
import type { StoreRows, WantedRows } from './store-rows.ts';

type OrderRow = StoreRows['orders'][number];
type LineRow = WantedRows['orderLines'][number];

const BLANK = {
  ...{
    wantedOn: null,
    notBefore: null,
    promisedOn: null,
    firstPromisedOn: null,
    heldUntil: null,
    note: null,
    address: null,
    takenAt: null,
    partOf: null,
  },
  ...{ handedOverOn: null, packedAt: null, packedMinutes: null },
};

/** Past orders all of whose lines still name something that is there. */
const pastStaying = (held: StoreRows, file: YardFile): OrderRow[] => {
  const open = new Set(file.orders.map(({ id }) => id));
  const ids = (list: readonly { id: string }[]) => new Set(list.map(({ id }) => id));
  const [kits, castings, materials] = [ids(file.kits), ids(file.castings), ids(file.materials)];
  const isThere = (set: ReadonlySet<string>, id: string | null) => id === null || set.has(id);
  const lost = new Set(
    held.orderLines
      .filter(
        ({ kit, casting, material }) =>
          !isThere(kits, kit) || !isThere(castings, casting) || !isThere(materials, material),
      )
      .map(({ order }) => order),
  );
  return held.orders.filter(({ id, status }) => status !== 'open' && !open.has(id) && !lost.has(id));
};

/** What a file says in other words than the present version does. */
export interface SaidOtherwise {
  /** It has one date an order, which was promised or only asked for (version 1). */
  oneDate: boolean;
}

/**
 * The date given is the one promised, the date asked for the one wanted. Where a file has one date only, it is what the
 * store knows it to be, else the one promised: what a customer was told is not to be lost.
 */
const datesOf = ({ due, wanted, notBefore }: Order, was: OrderRow | undefined, { oneDate }: SaidOtherwise) => {
  if (oneDate && was && (was.promisedOn ?? was.wantedOn ?? undefined) === due)
    return { wantedOn: was.wantedOn, notBefore: was.notBefore, promisedOn: was.promisedOn };
  return {
    wantedOn: wanted ?? (oneDate ? (was?.wantedOn ?? null) : null),
    notBefore: notBefore ?? (oneDate ? (was?.notBefore ?? null) : null),
    promisedOn: due ?? null,
  };
};

/** Finds the customer of each order by name, and adds those that are new. */
const customersOf = (held: StoreRows) => {
  const customers = [...held.customers];
  let last = Math.max(0, ...customers.map(({ id }) => id));
  const idOf = ({ customer: name }: Order, was: OrderRow | undefined): number | null => {
    if (name === undefined) return null;
    const named = customers.filter((one) => one.name === name);
    const same = named.find(({ id }) => id === was?.customerId);
    const one = same ?? (named.length === 1 ? named[0] : named.find(({ phone }) => phone === null));
    if (one) return one.id;
    last += 1;
    customers.push({ id: last, name, phone: null, note: null });
    return last;
  };
  return { customers, idOf };
};

/** Packed, and the file asks for nothing more of it either. */
const staysPacked = ({ lines }: Order, was: OrderRow | undefined): was is OrderRow =>
  was?.status === 'open' && was.packedAt !== null && lines.length === 0;

const openRows = (
  held: StoreRows,
  file: YardFile,
  idOf: ReturnType<typeof customersOf>['idOf'],
  how: SaidOtherwise,
) => {
  const before = new Map(held.orders.map((row) => [row.id, row]));
  const rows = file.orders.map((order) => {
    const was = before.get(order.id);
    const dates = datesOf(order, was, how);
    return {
      ...(was ?? BLANK),
      ...dates,
      firstPromisedOn: was?.firstPromisedOn ?? dates.promisedOn,
      id: order.id,
      customerId: idOf(order, was),
      weight: order.weight,
      status: 'open' as const,
      handedOverOn: null,
      packedAt: staysPacked(order, was) ? was.packedAt : null,
      packedMinutes: order.packedMinutes ?? null,
    };
  });
  const [open, past] = [
    held.orders.filter((row) => row.status === 'open'),
    held.orders.filter((row) => row.status !== 'open'),
  ];
  return placedById(rows, open, Math.max(-1, ...past.map(({ position }) => position)) + 1);
};

const lineRows = (held: StoreRows, file: YardFile, past: readonly OrderRow[]): LineRow[] => {
  const before = new Map(held.orders.map((row) => [row.id, row]));
  const asIs = new Set([
    ...past.map(({ id }) => id),
    ...file.orders.filter((order) => staysPacked(order, before.get(order.id))).map(({ id }) => id),
  ]);
  const lines = inside(
    file.orders.filter(({ id }) => !asIs.has(id)),
    'order',
    (order) => order.lines,
  );
  return [
    ...held.orderLines.filter(({ order }) => asIs.has(order)),
    ...lines.map((line) => filled(line, 'kit', 'casting', 'material')),
  ];
};

/** Who has an order now, or had none before. */
const customersStaying = (
  held: StoreRows,
  customers: StoreRows['customers'],
  orders: readonly { customerId: number | null }[],
) => {
  const now = new Set(orders.map(({ customerId }) => customerId));
  const before = new Set(held.orders.map(({ customerId }) => customerId));
  return customers.filter(({ id }) => now.has(id) || !before.has(id));
};

const pieceRows = (held: StoreRows, file: YardFile, past: readonly OrderRow[]) => {
  const isPast = new Set(past.map(({ id }) => id));
  const open = new Set(held.orders.filter(({ status }) => status === 'open').map(({ id }) => id));
  /** Set aside for an order that is past: the file says nothing of it. */
  const asSaid = (order: string | null) => (order !== null && open.has(order) ? order : null);
  const stillFor = (order: string | null, was: string | null | undefined) =>
    order ?? (was && isPast.has(was) ? was : null);
  const finished = listed(
    file.finished.map((pieces) => filled(pieces, 'readyAt', 'order')),
    held.finishedPieces.map((row) => ({ ...row, was: row.order })),
    ({ casting, count, readyAt, order }) => ({ readyAt, order: asSaid(order), casting, count }),
    { was: null, mould: null, filledAt: null },
  );
  const inMould = new Map(held.piecesInMould.map((row) => [row.mould, row]));
  const filling = file.inMould.map((piece) => {
    const { order, ...rest } = filled(piece, 'order');
    const was = inMould.get(piece.mould);
    const same = was?.casting === piece.casting && was.filledAt === piece.filledAt;
    return { ...rest, order: stillFor(order, same ? was.order : null) };
  });
  return {
    finishedPieces: finished.map(({ was, ...row }) => ({ ...row, order: stillFor(row.order, was) })),
    piecesInMould: placed(
      filling,
      held.piecesInMould,
      ({ mould }) => mould,
      ({ mould }: { mould: string }) => mould,
    ),
  };
};

/** Orders, customers and pieces as the file has them, with what only the store knows of those that stay. */
export const orderRows = (held: StoreRows, file: YardFile, how: SaidOtherwise) => {
  const past = pastStaying(held, file);
  const { customers, idOf } = customersOf(held);
  const orders = [...past, ...openRows(held, file, idOf, how)];
  return {
    customers: customersStaying(held, customers, orders),
    orders,
    orderLines: lineRows(held, file, past),
    ...pieceRows(held, file, past),
  };
};
