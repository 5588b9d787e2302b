import { asc, eq, isNull, sql } from 'drizzle-orm';
import type { AnySQLiteColumn, SQLiteTable } from 'drizzle-orm/sqlite-core';
import { isFetched, type SupplierInFile } from '../../shared/supplier.ts';
import { clockIn, type DayNumber, dateIn, dateOfDay, dayNumber } from '../../shared/time.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { castingCuts, castingMaterials, castings } from '../tables/casting.ts';
import { customers } from '../tables/customer.ts';
import { kitCuts, kitParts, kitPieces, kits } from '../tables/kit.ts';
import { incomings, materials } from '../tables/material.ts';
import { mixes, mixMaterials } from '../tables/mix.ts';
import { finishedPieces, mouldMakes, moulds, piecesInMould } from '../tables/mould.ts';
import { orderLines, orders } from '../tables/order.ts';
import { temperatureSteps } from '../tables/temperature.ts';
import { closedDays, extraWindows, workWindows } from '../tables/work.ts';
import { revisions, yards } from '../tables/yard.ts';
import type { Tx } from '../transaction.ts';
import { wetCures } from './mix-wet-cure-store.ts';
import { offcutsByMaterial } from './offcut-store.ts';
import { belongings, inParts, present } from './rows.ts';
import { lotsByMaterial } from './stock-store.ts';
import { materialBuyingsById, suppliersByName } from './supplier-store.ts';
import { weatherOf } from './temperature-store.ts';

const ONE = 1;

/** All rows of a table in their order. */
const listed = <T extends SQLiteTable & { position: AnySQLiteColumn }>(tx: Tx, table: T) =>
  inParts(
    (limit, offset) =>
      tx
        .select()
        .from(table as SQLiteTable)
        .orderBy(asc(table.position), sql`rowid`)
        .limit(limit)
        .offset(offset) as unknown as Promise<T['$inferSelect'][]>,
  );

const materialQuantity = ({ material, quantity }: { material: string; quantity: number }) => ({ material, quantity });
const cut = ({ material, lengthMm, count }: { material: string; lengthMm: number; count: number }) => ({
  material,
  lengthMm,
  count,
});

const loadYard = async (tx: Tx, now: string) => {
  const [row] = await tx.select().from(yards);
  if (!row) throw new Error('The database holds no yard.');
  const { id: _id, keep, fixedHours: _fixedHours, coldestAt, warmestAt, ...facts } = row;
  const weather = await weatherOf(tx, { coldestAt, warmestAt });
  return { yard: { ...present(facts), now }, ...(keep ? { keep } : {}), ...(weather ? { weather } : {}) };
};

const loadWork = async (tx: Tx) => ({
  work: (await listed(tx, workWindows)).map(({ id: _id, position: _position, ...window }) => present(window)),
  closed: (await listed(tx, closedDays)).map(({ date }) => date),
  extra: (await listed(tx, extraWindows)).map(({ id: _id, position: _position, ...window }) => window),
  temperatures: (await listed(tx, temperatureSteps)).map(({ from, celsius }) => ({ from, celsius })),
});

/** What is not to be had before a day takes so much longer to come. */
const daysUntil = (notBefore: string | undefined, today: DayNumber): number =>
  notBefore === undefined ? 0 : Math.max(0, dayNumber(notBefore) - today);

const loadMaterials = async (tx: Tx, today: DayNumber) => {
  const [rests, lots] = [await offcutsByMaterial(tx), await lotsByMaterial(tx)];
  const buyings = await materialBuyingsById(tx);
  return (await listed(tx, materials)).map(
    ({ position: _position, openedNote: _note, shortBy: _short, ...material }) => {
      const [offcuts, own = []] = [rests.get(material.id), lots.get(material.id)];
      const { leadDays, ...rest } = material;
      const waits = daysUntil(buyings.get(material.id)?.notBefore, today);
      return {
        ...present({ ...rest, leadDays: leadDays === null ? null : leadDays + waits }),
        ...(own.length > 0 ? { lots: own } : {}),
        ...(offcuts ? { offcuts } : {}),
      };
    },
  );
};

/** Suppliers that sell something and of whom days are known, as planning asks of them; a yard that has none says nothing. */
const loadSuppliers = async (tx: Tx): Promise<Pick<YardFile, 'suppliers'>> => {
  const own = await listed(tx, materials);
  const named = new Set(own.map(({ supplier }) => supplier));
  const suppliers = (await suppliersByName(tx)).flatMap((one): SupplierInFile[] => {
    const { name, opens, delivers, closed } = one;
    if (!named.has(name) || (!opens && !delivers && closed.length === 0)) return [];
    return [{ name, ...(opens && { opens }), ...(delivers && { delivers }), closed, fetched: isFetched(one, own) }];
  });
  return suppliers.length === 0 ? {} : { suppliers };
};

/**
 * Goods on their way. What was to have come before today, and nobody has said a word of, is expected when the yard is brought
 * things next, today or tomorrow: it is not there, and a plan that bought it once more would have it twice. What is fetched has no such time.
 */
const loadStock = async (tx: Tx, { timeZone, deliveredBy, now }: YardFile['yard']) => {
  const today = dayNumber(dateIn(timeZone, now));
  const materials = await loadMaterials(tx, today);
  const fetched = new Set(materials.flatMap(({ id, leadDays }) => (leadDays === 0 ? [id] : [])));
  const isToCome = (material: string) => !fetched.has(material) && clockIn(timeZone, now) < deliveredBy;
  const expectedOn = (material: string, on: DayNumber) => (on >= today ? on : isToCome(material) ? today : today + 1);
  const rows = await tx
    .select({ material: incomings.material, quantity: incomings.quantity, on: incomings.on })
    .from(incomings)
    .where(isNull(incomings.arrivedOn))
    .orderBy(asc(incomings.position));
  return {
    materials,
    incoming: rows.map((row) => ({ ...row, on: dateOfDay(expectedOn(row.material, dayNumber(row.on))) })),
  };
};

const loadMixes = async (tx: Tx) => {
  const perBag = belongings(await listed(tx, mixMaterials), (row) => row.mix, materialQuantity);
  const wet = await wetCures(tx);
  const wetCureOf = (mix: string) => {
    const cure = wet.get(mix);
    return cure !== undefined && cure.minutes > 0 ? { wetCure: cure } : {};
  };
  return (await listed(tx, mixes)).map(({ position: _position, ...mix }) => ({
    ...present(mix),
    ...wetCureOf(mix.id),
    perBag: perBag(mix.id),
  }));
};

const loadCastings = async (tx: Tx) => {
  const perPiece = belongings(await listed(tx, castingMaterials), (row) => row.casting, materialQuantity);
  const cuts = belongings(await listed(tx, castingCuts), (row) => row.casting, cut);
  return (await listed(tx, castings)).map(({ position: _position, ...casting }) => ({
    ...present(casting),
    perPiece: perPiece(casting.id),
    cuts: cuts(casting.id),
  }));
};

const loadMoulds = async (tx: Tx) => {
  const makes = belongings(
    await listed(tx, mouldMakes),
    (row) => row.mould,
    ({ casting, changeMinutes }) => ({ casting, changeMinutes }),
  );
  return (await listed(tx, moulds)).map(
    ({
      position: _position,
      note: _note,
      damageNote: _damageNote,
      emptiedAt: _emptied,
      serviceEveryTurns: _service,
      cost: _cost,
      costTurns: _turns,
      parts: _parts,
      ...mould
    }) => ({
      ...present(mould),
      makes: makes(mould.id),
    }),
  );
};

const loadKits = async (tx: Tx) => {
  const pieces = belongings(
    await listed(tx, kitPieces),
    (row) => row.kit,
    ({ casting, count }) => ({ casting, count }),
  );
  const parts = belongings(await listed(tx, kitParts), (row) => row.kit, materialQuantity);
  const cuts = belongings(await listed(tx, kitCuts), (row) => row.kit, cut);
  return (await listed(tx, kits)).map(({ position: _position, ...kit }) => ({
    ...kit,
    pieces: pieces(kit.id),
    parts: parts(kit.id),
    cuts: cuts(kit.id),
  }));
};

/** Lines of open orders: those of past ones are many more with the years. */
const openLines = (tx: Tx) =>
  inParts((limit, offset) =>
    tx
      .select({
        order: orderLines.order,
        ...{ kit: orderLines.kit, casting: orderLines.casting, material: orderLines.material },
        quantity: orderLines.quantity,
      })
      .from(orderLines)
      .innerJoin(orders, eq(orders.id, orderLines.order))
      .where(eq(orders.status, 'open'))
      .orderBy(asc(orders.position), asc(orders.id), asc(orderLines.position))
      .limit(limit)
      .offset(offset),
  );

const openRows = (tx: Tx) =>
  inParts((limit, offset) =>
    tx
      .select({
        id: orders.id,
        customer: customers.name,
        due: orders.promisedOn,
        wanted: orders.wantedOn,
        notBefore: orders.notBefore,
        weight: orders.weight,
        packedAt: orders.packedAt,
        packedMinutes: orders.packedMinutes,
      })
      .from(orders)
      .leftJoin(customers, eq(customers.id, orders.customerId))
      .where(eq(orders.status, 'open'))
      .orderBy(asc(orders.position), asc(orders.id))
      .limit(limit)
      .offset(offset),
  );

const loadOrders = async (tx: Tx) => {
  const lines = belongings(
    await openLines(tx),
    (row) => row.order,
    ({ kit, casting, material, quantity }) => present({ kit, casting, material, quantity }),
  );
  // What is packed asks for nothing more, and its pieces and parts are in the stock no longer.
  return (await openRows(tx)).map(({ packedAt, packedMinutes, ...row }) => ({
    ...present(row),
    ...(packedAt === null && packedMinutes !== null ? { packedMinutes } : {}),
    lines: packedAt === null ? lines(row.id) : [],
  }));
};

/** Pieces set aside for an order that is no longer open are stock. */
const openOnly =
  (open: ReadonlySet<string>) =>
  <T extends { order?: string | undefined }>({ order, ...entry }: T) =>
    order !== undefined && open.has(order) ? { ...entry, order } : entry;

const loadPieces = async (tx: Tx, open: ReadonlySet<string>) => ({
  finished: (await listed(tx, finishedPieces))
    .map(({ id: _id, position: _position, mould: _mould, filledAt: _filledAt, ...pieces }) => present(pieces))
    .map(openOnly(open)),
  inMould: (await listed(tx, piecesInMould))
    .map(({ position: _position, ...piece }) => present(piece))
    .map(openOnly(open)),
});

/**
 * Everything a plan depends on, as of `now`, an instant: open orders only. It is not read through the schema again:
 * what is stored was checked when it went in.
 */
export const loadYardFile = async (tx: Tx, now: string): Promise<YardFile> => {
  const { yard, keep, weather } = await loadYard(tx, now);
  const openOrders = await loadOrders(tx);
  const open = new Set(openOrders.map(({ id }) => id));
  return {
    format: 'mould-rota/yard',
    version: 2,
    yard,
    ...(await loadWork(tx)),
    ...(weather ? { weather } : {}),
    ...(await loadStock(tx, yard)),
    ...(await loadSuppliers(tx)),
    mixes: await loadMixes(tx),
    castings: await loadCastings(tx),
    moulds: await loadMoulds(tx),
    kits: await loadKits(tx),
    ...(await loadPieces(tx, open)),
    orders: openOrders,
    ...(keep ? { keep: { ...keep, pours: keep.pours.map(openOnly(open)) } } : {}),
  };
};

/** What holds for the yard as a whole; what the patch leaves out stays. Before there is a yard, nothing changes. */
export const updateYard = async (
  tx: Tx,
  patch: Partial<Omit<typeof yards.$inferSelect, 'id' | 'keep'>>,
): Promise<void> => {
  await tx.update(yards).set(patch);
};

/** True while there is no yard: then the demo, or somebody's own, may go in. */
export const isEmpty = async (tx: Tx): Promise<boolean> => (await tx.select({ id: yards.id }).from(yards)).length === 0;

/** The yard's time zone. Throws while there is no yard. */
export const zoneOfYard = async (tx: Tx): Promise<string> => {
  const [row] = await tx.select({ timeZone: yards.timeZone }).from(yards);
  if (!row) throw new Error('The database holds no yard.');
  return row.timeZone;
};

/** How many hours before a session begins all of it becomes fixed; 0 when they never do ahead of it. */
export const fixedHours = async (tx: Tx): Promise<number> => {
  const [row] = await tx.select({ hours: yards.fixedHours }).from(yards);
  return row?.hours ?? 0;
};

/** Sets how many hours before a session all of it becomes fixed; 0: never ahead of it. */
export const setFixedHours = async (tx: Tx, hours: number): Promise<void> => {
  await tx.update(yards).set({ fixedHours: hours });
};

/** How many times anything a plan depends on has changed. */
export const revision = async (tx: Tx): Promise<number> => {
  const [row] = await tx.select().from(revisions);
  return row?.revision ?? 0;
};

/**
 * Counts one more change of what a plan depends on. The new number, from 1; plans of older ones are no longer shown.
 */
export const bumpRevision = async (tx: Tx): Promise<number> => {
  const [row] = await tx
    .insert(revisions)
    .values({ id: ONE, revision: 1 })
    .onConflictDoUpdate({ target: revisions.id, set: { revision: sql`${revisions.revision} + 1` } })
    .returning();
  if (!row) throw new Error('The revision was not counted.');
  return row.revision;
};
