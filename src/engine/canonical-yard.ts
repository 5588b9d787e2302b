import type { Order } from '../../shared/order.ts';
import type { PlanFile } from '../../shared/plan.ts';
import type { YardFile } from '../../shared/yard-file.ts';

/** Lists compared entry by entry: numbers by size, texts by their letters' numbers, so that it is the same in any language. */
const compareKeys = (a: readonly (string | number)[], b: readonly (string | number)[]): number => {
  for (let i = 0; i < a.length; i++) {
    if (a[i]! < b[i]!) return -1;
    if (a[i]! > b[i]!) return 1;
  }
  return 0;
};

const sorted = <T>(list: readonly T[], key: (one: T) => (string | number)[]): T[] =>
  list
    .map((one) => ({ one, key: key(one) }))
    .sort((a, b) => compareKeys(a.key, b.key))
    .map(({ one }) => one);

const byId = <T extends { id: string }>(list: readonly T[]): T[] => sorted(list, ({ id }) => [id]);

/** After any date. */
const NO_DATE = '9999-99-99';

/** Those with a date first, the soonest of them in front, the more urgent of one day before the others. */
const ordersSorted = (orders: readonly Order[]): Order[] =>
  sorted(orders, ({ id, due, wanted, weight }) => [due ?? NO_DATE, wanted ?? NO_DATE, -weight, id]).map((order) => ({
    ...order,
    lines: sorted(order.lines, ({ kit = '', casting = '', material = '', quantity }) => [
      kit,
      casting,
      material,
      quantity,
    ]),
  }));

const lotsSorted = (material: YardFile['materials'][number]): YardFile['materials'][number] =>
  material.lots === undefined
    ? material
    : {
        ...material,
        lots: sorted(material.lots, ({ useBy = NO_DATE, openedAt, quantity }) => [
          useBy,
          openedAt === undefined ? -Infinity : Date.parse(openedAt),
          quantity,
        ]),
      };

/** A yard in which every list has an order of its own, and by place in its finished pieces the place they have in the file. */
export interface CanonicalYard {
  yard: YardFile;
  lots: readonly number[];
}

/** Packings under way name finished pieces by place. */
const begunSorted = (begun: YardFile['begun'], lots: readonly number[]): YardFile['begun'] =>
  begun && {
    ...begun,
    packs: begun.packs.map((pack) => ({
      ...pack,
      fromFinished: pack.fromFinished.map(({ finished, count }) => ({ finished: lots.indexOf(finished), count })),
    })),
  };

/**
 * The yard with orders by date, weight and id, finished pieces by when they are ready, and everything else by its id: what
 * planning makes of it does not depend on the order in which a file happens to list things.
 *
 * Example: `canonicalYard({ ...yard, moulds: yard.moulds.toReversed() })` is canonicalYard(yard).
 */
export const canonicalYard = (yard: YardFile): CanonicalYard => {
  const lots = sorted(
    yard.finished.map((lot, place) => ({ ...lot, place })),
    ({ casting, readyAt, order = '', count, place }) => [
      casting,
      readyAt === undefined ? -Infinity : Date.parse(readyAt),
      order,
      count,
      place,
    ],
  ).map(({ place }) => place);
  return {
    yard: {
      ...yard,
      materials: byId(yard.materials).map(lotsSorted),
      incoming: sorted(yard.incoming, ({ material, on, quantity }) => [material, on, quantity]),
      mixes: byId(yard.mixes),
      castings: byId(yard.castings),
      moulds: byId(yard.moulds).map((mould) => ({ ...mould, makes: sorted(mould.makes, ({ casting }) => [casting]) })),
      kits: byId(yard.kits),
      finished: lots.map((place) => yard.finished[place]!),
      inMould: sorted(yard.inMould, ({ mould }) => [mould]),
      orders: ordersSorted(yard.orders),
      ...(yard.begun && { begun: begunSorted(yard.begun, lots) }),
    },
    lots,
  };
};

/** A plan of a canonical yard as one of the file it came from: finished pieces by their place there, orders in its order. */
export const asInFile = (plan: PlanFile, { orders: listed, moulds }: YardFile, lots: readonly number[]): PlanFile => {
  const place = new Map(listed.map(({ id }, i) => [id, i]));
  const mouldPlace = new Map(moulds.map(({ id }, i) => [id, i]));
  const orders = plan.orders.map((order) => ({
    ...order,
    fromFinished: order.fromFinished.map(({ finished, count }) => ({ finished: lots[finished]!, count })),
  }));
  return {
    ...plan,
    orders: orders.sort((a, b) => place.get(a.id)! - place.get(b.id)!),
    strips: sorted(plan.strips, ({ mould }) => [mouldPlace.get(mould)!]),
  };
};
