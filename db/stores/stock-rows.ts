import { type BagsMoved, bagsGone } from '../../shared/bags.ts';
import type { StockEntry } from '../../shared/stock-entry.ts';
import type { materials } from '../tables/material.ts';
import type { offcuts } from '../tables/offcut.ts';
import type { stockEntries } from '../tables/stock-entry.ts';

type EntryRow = typeof stockEntries.$inferSelect;
type Row = Omit<EntryRow, 'id'> & { id?: number };

/** Bags that have a date or are opened, by material. */
export type LotsWanted = ReadonlyMap<string, readonly BagsMoved[]>;

/** What is there, and the lines that should come to it. */
interface StockRows {
  materials: readonly Pick<typeof materials.$inferSelect, 'id' | 'onHand'>[];
  offcuts: readonly (typeof offcuts.$inferSelect)[];
  stockEntries: readonly Row[];
}

/** Amounts add up to fractions: so little is no difference. */
const ROUNDING = 1e-6;

/** A line as a row of the store, of no change of its own. */
export const entryRow = ({ lengthMm, useBy, openedAt, beyond, work, reason, by, ...entry }: StockEntry): Row => ({
  ...entry,
  ...{ lengthMm: lengthMm ?? null, useBy: useBy ?? null, openedAt: openedAt ?? null, beyond: beyond ?? 0 },
  ...{ work: work ?? null, reason: reason ?? null, by: by ?? null, change: null },
});

/** What stands in the stock book of one material: of all of it, with the bags that have a date, and of each offcut. */
interface Sums {
  onHand: number;
  lots: { quantity: number; useBy?: string; openedAt?: string }[];
  offcuts: Map<number, number>;
}

const bagsOf = ({ useBy, openedAt }: Row) => ({
  ...(useBy === null ? {} : { useBy }),
  ...(openedAt === null ? {} : { openedAt }),
});

const sumOf = (lines: readonly Row[]): Sums => {
  const offcuts = new Map<number, number>();
  const lots = new Map<string, Sums['lots'][number]>();
  let onHand = 0;
  for (const line of lines) {
    const { lengthMm, quantity } = line;
    if (lengthMm !== null) offcuts.set(lengthMm, (offcuts.get(lengthMm) ?? 0) + quantity);
    else {
      onHand += quantity;
      const [bags, key] = [bagsOf(line), `${line.useBy} ${line.openedAt}`];
      if (Object.keys(bags).length > 0) lots.set(key, { ...bags, quantity: (lots.get(key)?.quantity ?? 0) + quantity });
    }
  }
  return { onHand, lots: [...lots.values()], offcuts };
};

/** What has to be written for the lots of a material to be just these: what is of no lot any more, and what is. */
const lotsMoved = ({ lots }: Sums, wanted: readonly BagsMoved[]): BagsMoved[] => {
  const keyOf = ({ useBy, openedAt }: BagsMoved) => `${useBy} ${openedAt}`;
  const left = new Map(lots.map((lot) => [keyOf(lot), { ...lot, quantity: -lot.quantity } as BagsMoved]));
  for (const lot of wanted)
    left.set(keyOf(lot), { ...lot, quantity: lot.quantity + (left.get(keyOf(lot))?.quantity ?? 0) });
  return [...left.values()].filter(({ quantity }) => Math.abs(quantity) > ROUNDING);
};

/** Where lots are said, they are those; else what is less is of the bags that go first, and what is more is of no known date. */
const bagsMoved = (sums: Sums, onHand: number, wanted: readonly BagsMoved[] | undefined): BagsMoved[] => {
  const more = onHand - sums.onHand;
  if (wanted === undefined) {
    if (Math.abs(more) <= ROUNDING) return [];
    return more < 0 ? bagsGone(sums, -more) : [{ quantity: more }];
  }
  const moved = lotsMoved(sums, wanted);
  const undated = moved.reduce((rest, { quantity }) => rest - quantity, more);
  // What comes in comes first, so that nothing is below nothing on the way.
  return [...moved, ...(Math.abs(undated) > ROUNDING ? [{ quantity: undated }] : [])].sort(
    (a, b) => b.quantity - a.quantity,
  );
};

const offcutsMoved = ({ offcuts }: Sums, there: ReadonlyMap<number, number>): [lengthMm: number, quantity: number][] =>
  [...new Set([...offcuts.keys(), ...there.keys()])].flatMap((lengthMm): [number, number][] => {
    const quantity = (there.get(lengthMm) ?? 0) - (offcuts.get(lengthMm) ?? 0);
    return quantity === 0 ? [] : [[lengthMm, quantity]];
  });

/** Whether lines that come to these sums come to what is there. */
export const isSettled = (
  { materials, offcuts }: Pick<StockRows, 'materials' | 'offcuts'>,
  sums: readonly Pick<Row, 'material' | 'lengthMm' | 'quantity'>[],
): boolean => {
  const left = new Map(sums.map(({ material, lengthMm, quantity }) => [`${lengthMm} ${material}`, quantity]));
  const take = (key: string, there: number) => left.set(key, (left.get(key) ?? 0) - there);
  for (const { id, onHand } of materials) take(`null ${id}`, onHand);
  for (const { material, lengthMm, count } of offcuts) take(`${lengthMm} ${material}`, count);
  return [...left.values()].every((rest) => Math.abs(rest) < ROUNDING);
};

type Act = Pick<Row, 'at' | 'by' | 'change'> & Partial<Pick<Row, 'reason'>>;

/**
 * Rows in which the stock book comes to what is there: where they say another amount than its lines add up to, a line more
 * says that it was set right, or that it was there when the book of that material began. Lines of materials that are gone go.
 * `lots` says of which bags it is; of a material that is not in it, nobody says.
 */
export const withStockBook = <R extends StockRows>(
  rows: R,
  act: Act,
  lots: LotsWanted = new Map(),
): R & { stockEntries: Row[] } => {
  const linesOf = new Map<string, Row[]>(rows.materials.map(({ id }) => [id, []]));
  for (const line of rows.stockEntries) linesOf.get(line.material)?.push(line);
  const settling = rows.materials.flatMap(({ id, onHand }): Row[] => {
    const lines = linesOf.get(id) ?? [];
    const sums = sumOf(lines);
    const kind = lines.length > 0 ? ('corrected' as const) : ('opening' as const);
    const line = { ...act, material: id, kind, reason: kind === 'opening' ? null : (act.reason ?? null) };
    const rest = { ...line, beyond: 0, work: null };
    const there = new Map(
      rows.offcuts.flatMap((one): [number, number][] => (one.material === id ? [[one.lengthMm, one.count]] : [])),
    );
    return [
      ...bagsMoved(sums, onHand, lots.get(id)).map(({ quantity, useBy = null, openedAt = null }) => ({
        ...rest,
        ...{ quantity, lengthMm: null, useBy, openedAt },
      })),
      ...offcutsMoved(sums, there).map(([lengthMm, quantity]) => ({
        ...rest,
        ...{ quantity, lengthMm, useBy: null, openedAt: null },
      })),
    ];
  });
  const known = rows.stockEntries.filter(({ material }) => linesOf.has(material));
  return { ...rows, stockEntries: [...known, ...settling] };
};

/** The lots of a yard file, by material: none where it says none. */
export const lotsWanted = (materials: readonly { id: string; lots?: readonly BagsMoved[] | undefined }[]): LotsWanted =>
  new Map(materials.map(({ id, lots = [] }) => [id, lots]));
