import { ARCHIVE_VERSION, type Archive, archive } from '../../shared/archive.ts';
import { FLOAT_DAYS } from '../../shared/habits.ts';
import type { Mix } from '../../shared/mix.ts';
import type { OrderMoney } from '../../shared/money.ts';
import type { StockEntry } from '../../shared/stock-entry.ts';
import type { Tx } from '../transaction.ts';
import { changeLog } from './log-store.ts';
import { belongings, present } from './rows.ts';
import { stockBook } from './stock-store.ts';
import { type StoreRows, storeRows } from './store-rows.ts';
import { loadYardFile } from './yard-store.ts';

type ById<T> = ReadonlyMap<string, T>;
const byId = <T extends { id: string }>(rows: readonly T[]): ById<T> => new Map(rows.map((row) => [row.id, row]));

const ordersOf = ({ orders, orderLines }: StoreRows): Archive['orders'] => {
  const lines = belongings(
    orderLines,
    (row) => row.order,
    ({ kit, casting, material, quantity }) => present({ kit, casting, material, quantity }),
  );
  return orders.map(({ position: _position, customerId, ...row }) => ({
    ...present({ ...row, customer: customerId }),
    lines: lines(row.id),
  }));
};

const sizesOf = ({ castingSizes, kitSizes }: StoreRows) => ({
  ofCasting: new Map(
    castingSizes.map((row) => [
      row.casting,
      {
        length: { typed: row.lengthTyped, mm: row.lengthMm },
        height: { typed: row.heightTyped, mm: row.heightMm },
        thickness: { typed: row.thicknessTyped, mm: row.thicknessMm },
      },
    ]),
  ),
  ofKit: new Map(kitSizes.map(({ kit, size }) => [kit, size])),
});

const withSize = <T extends { id: string }, S>(entries: readonly T[], sizes: ReadonlyMap<string, S>) =>
  entries.map((entry) => {
    const size = sizes.get(entry.id);
    return size === undefined ? entry : { ...entry, size };
  });

const withNotes = <T extends { id: string }, N extends string>(
  entries: readonly T[],
  rows: ById<{ [K in N]: string | null }>,
  ...names: N[]
) =>
  entries.map((entry) => ({
    ...entry,
    ...(present(Object.fromEntries(names.map((name) => [name, rows.get(entry.id)?.[name] ?? null]))) as {
      [K in N]?: string;
    }),
  }));

const withShort = <T extends { id: string }>(entries: readonly T[], { materials }: StoreRows) => {
  const short = new Map(materials.map(({ id, shortBy }) => [id, shortBy]));
  return entries.map((entry) => ({ ...entry, ...present({ shortBy: short.get(entry.id) || null }) }));
};

const withService = <T extends { id: string }>(entries: readonly T[], { moulds }: StoreRows) => {
  const rows = byId(moulds);
  return entries.map((entry) => {
    const { serviceEveryTurns = null, cost = null, costTurns = null, parts = null } = rows.get(entry.id) ?? {};
    return { ...entry, ...present({ serviceEveryTurns, cost, costTurns, parts }) };
  });
};

const habitsOf = ({ yardUnits, yardHabits }: StoreRows) => {
  const [units, english, habits] = [yardUnits[0]?.system, yardUnits[0]?.english, yardHabits[0]];
  const { forecastLatitude = null, forecastLongitude = null, forecastContact = null, spares = null } = habits ?? {};
  return {
    ...(units === undefined ? {} : { units }),
    ...(english ? { english } : {}),
    ...(habits
      ? {
          habits: {
            ...{ currency: habits.currency, weekStart: habits.weekStart, demo: habits.demo },
            ...(habits.floatDays === FLOAT_DAYS ? {} : { floatDays: habits.floatDays }),
            ...present({ forecastLatitude, forecastLongitude, forecastContact, spares }),
          },
        }
      : {}),
  };
};

/** Left out where there are none, so that an archive from before there were any comes out as it went in. */
const toMendOf = ({ piecesToMend }: StoreRows): Pick<Archive, 'toMend'> =>
  piecesToMend.length === 0
    ? {}
    : { toMend: piecesToMend.map(({ id: _id, position: _position, ...row }) => present(row)) };

/** Left out where nothing ever was in the yard. */
const stockOf = (book: readonly StockEntry[]): Pick<Archive, 'stockBook'> =>
  book.length === 0 ? {} : { stockBook: [...book] };

/** Left out where nothing is known of any, for the same reason. */
const suppliersOf = ({ suppliers }: StoreRows): Pick<Archive, 'suppliers'> =>
  suppliers.length === 0 ? {} : { suppliers: suppliers.map(({ name, facts }) => ({ name, ...facts })) };

/** How long they take of themselves, also where they are not to be had before a day. */
const withOwnLead = (entries: Archive['materials'], { materials }: StoreRows): Archive['materials'] => {
  const own = new Map(materials.map(({ id, leadDays }) => [id, leadDays]));
  return entries.map(({ leadDays: _days, ...one }) => ({ ...one, ...present({ leadDays: own.get(one.id) ?? null }) }));
};

const withBuying = <T extends { id: string }>(entries: readonly T[], { materialBuyings }: StoreRows) => {
  const buyings = new Map(materialBuyings.map(({ material, facts }) => [material, facts]));
  return entries.map((entry) => ({ ...entry, ...present({ buying: buyings.get(entry.id) ?? null }) }));
};

/** Left out where there is none, for the same reason. */
const workOf = ({ workRecords }: StoreRows): Pick<Archive, 'workDone'> =>
  workRecords.length === 0 ? {} : { workDone: workRecords.map(({ record }) => record) };

const withWater = (mixes: readonly Mix[], { mixWaters, mixWetCures }: StoreRows): Archive['mixes'] => {
  const litres = new Map(mixWaters.map(({ mix, litresPerBag }) => [mix, litresPerBag]));
  const wet = new Map(mixWetCures.map(({ mix, hours }) => [mix, hours]));
  return mixes.map((mix) => ({
    ...mix,
    ...present({ waterLitresPerBag: litres.get(mix.id) ?? null, wetCureHours: wet.get(mix.id) ?? null }),
  }));
};

const withKept = <T extends { id: string }>(entries: readonly T[], kept: ReadonlyMap<string, number>) =>
  entries.map((entry) => ({ ...entry, ...present({ keptReady: kept.get(entry.id) ?? null }) }));

const keptOf = ({ keptKits, keptCastings }: StoreRows) => ({
  ofKits: new Map(keptKits.map(({ kit, count }) => [kit, count])),
  ofCastings: new Map(keptCastings.map(({ casting, count }) => [casting, count])),
});

const withPrices = <T extends { id: string }>(entries: readonly T[], { kitPrices }: StoreRows) => {
  const prices = new Map(kitPrices.map(({ kit, price }) => [kit, price]));
  return entries.map((entry) => ({ ...entry, ...present({ price: prices.get(entry.id) ?? null }) }));
};

/** Orders of which anything is known, with what was paid of each. */
const orderMoneyOf = ({ orders, orderMoney, orderPayments }: StoreRows): OrderMoney[] => {
  const payments = belongings(
    orderPayments,
    ({ order }) => order,
    ({ id: _id, position: _position, order: _order, ...row }) => present(row),
  );
  const known = new Map(orderMoney.map((row) => [row.order, row]));
  return orders.flatMap(({ id: order }) => {
    const own = known.get(order);
    return own || payments(order).length > 0 ? [{ ...present({ ...own, order }), payments: payments(order) }] : [];
  });
};

/** Left out where there is none, so that an archive from before there was any comes out as it went in. */
const moneyOf = (rows: StoreRows): Pick<Archive, 'costs' | 'orderMoney'> => {
  const [costs] = rows.yardCosts;
  const orderMoney = orderMoneyOf(rows);
  const { id: _id, ...figures } = costs ?? {};
  return { ...(costs ? { costs: present(figures) } : {}), ...(orderMoney.length > 0 ? { orderMoney } : {}) };
};

/** All that is written down about the yard, as of `now`, each field where the schema has it. */
export const loadArchive = async (tx: Tx, now: string): Promise<Archive> => {
  const rows = await storeRows(tx);
  const { format: _format, version: _version, orders: _open, keep: _keep, ...file } = await loadYardFile(tx, now);
  const keep = rows.yards[0]?.keep;
  const { ofCasting, ofKit } = sizesOf(rows);
  const { ofCastings, ofKits } = keptOf(rows);
  const { suppliers: _days, ...ofFile } = file;
  return archive.parse({
    ...ofFile,
    format: 'mould-rota/archive',
    version: ARCHIVE_VERSION,
    yard: { ...file.yard, fixedHours: rows.yards[0]?.fixedHours },
    ...habitsOf(rows),
    materials: withBuying(
      withShort(withNotes(withOwnLead(file.materials, rows), byId(rows.materials), 'openedNote'), rows),
      rows,
    ),
    ...suppliersOf(rows),
    incoming: rows.incomings.map(({ id: _id, position: _position, ...row }) => present(row)),
    mixes: withWater(file.mixes, rows),
    castings: withKept(withSize(file.castings, ofCasting), ofCastings),
    moulds: withService(withNotes(file.moulds, byId(rows.moulds), 'note', 'damageNote', 'emptiedAt'), rows),
    kits: withPrices(withKept(withSize(file.kits, ofKit), ofKits), rows),
    finished: rows.finishedPieces.map(({ id: _id, position: _position, ...row }) => present(row)),
    inMould: rows.piecesInMould.map(({ position: _position, ...row }) => present(row)),
    ...toMendOf(rows),
    ...workOf(rows),
    ...stockOf(await stockBook(tx)),
    customers: rows.customers.map(present),
    orders: ordersOf(rows),
    ...(keep ? { keep } : {}),
    ...moneyOf(rows),
    guesses: rows.guesses,
    typed: rows.typedFigures,
    log: await changeLog(tx),
  } satisfies Archive);
};
