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
  materials: readonly Pick<typeof materials.$inferSelect, 'id' | 'onHand' | 'rests'>[];
  offcuts: readonly (typeof offcuts.$inferSelect)[];
  stockEntries: readonly Row[];
}

/** Amounts add up to fractions: so little is no difference. */
const ROUNDING = 1e-6;

const entryRow = ({
  lengthMm,
  widthMm,
  useBy,
  openedAt,
  beyond,
  work,
  reason,
  by,
  ofLine: _ofLine,
  ...entry
}: StockEntry): Row => ({
  ...entry,
  ...{
    lengthMm: lengthMm ?? null,
    widthMm: widthMm ?? null,
    useBy: useBy ?? null,
    openedAt: openedAt ?? null,
    beyond: beyond ?? 0,
  },
  ...{ work: work ?? null, reason: reason ?? null, by: by ?? null, change: null, ofLine: null },
});

/** Lines of an archive as rows of the store, of no change of their own; numbered from `first` where any names another. */
export const entryRows = (book: readonly StockEntry[], first: number): Row[] => {
  const rows = book.map(entryRow);
  if (book.every(({ ofLine }) => ofLine === undefined)) return rows;
  return rows.map((row, place) => {
    const of = book[place]?.ofLine;
    return { ...row, id: first + place, ofLine: of === undefined ? null : first + of };
  });
};

/** Offcuts of a length, or rests of sheets of a size: what is left of what was opened. */
interface Left {
  lengthMm: number;
  widthMm: number | null;
  quantity: number;
}

const leftKey = ({ lengthMm, widthMm }: Pick<Row, 'lengthMm' | 'widthMm'>): string => `${widthMm} ${lengthMm}`;

/** All that is left of what was opened of a material. */
const leftOf = ({ materials, offcuts }: Pick<StockRows, 'materials' | 'offcuts'>, id: string): Left[] => [
  ...offcuts.flatMap(({ material, lengthMm, count }) =>
    material === id ? [{ lengthMm, widthMm: null, quantity: count }] : [],
  ),
  ...(materials.find((one) => one.id === id)?.rests ?? []).map(({ count, ...size }) => ({ ...size, quantity: count })),
];

/** What stands in the stock book of one material: of all of it, with the bags that have a date, and of each offcut and rest. */
interface Sums {
  onHand: number;
  lots: { quantity: number; useBy?: string; openedAt?: string }[];
  left: Map<string, Left>;
}

const bagsOf = ({ useBy, openedAt }: Row) => ({
  ...(useBy === null ? {} : { useBy }),
  ...(openedAt === null ? {} : { openedAt }),
});

const sumOf = (lines: readonly Row[]): Sums => {
  const left = new Map<string, Left>();
  const lots = new Map<string, Sums['lots'][number]>();
  let onHand = 0;
  for (const line of lines) {
    const { lengthMm, widthMm, quantity } = line;
    if (lengthMm !== null)
      left.set(leftKey(line), { lengthMm, widthMm, quantity: (left.get(leftKey(line))?.quantity ?? 0) + quantity });
    else {
      onHand += quantity;
      const [bags, key] = [bagsOf(line), `${line.useBy} ${line.openedAt}`];
      if (Object.keys(bags).length > 0) lots.set(key, { ...bags, quantity: (lots.get(key)?.quantity ?? 0) + quantity });
    }
  }
  return { onHand, lots: [...lots.values()], left };
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

/** What is not as the lines have it, those of one size together. */
const leftMoved = ({ left }: Sums, there: readonly Left[]): Left[] => {
  const moved = new Map([...left].map(([key, one]) => [key, { ...one, quantity: -one.quantity }]));
  for (const one of there)
    moved.set(leftKey(one), { ...one, quantity: one.quantity + (moved.get(leftKey(one))?.quantity ?? 0) });
  return [...moved.values()].filter(({ quantity }) => quantity !== 0);
};

/** Whether lines that come to these sums come to what is there. */
export const isSettled = (
  { materials, offcuts }: Pick<StockRows, 'materials' | 'offcuts'>,
  sums: readonly Pick<Row, 'material' | 'lengthMm' | 'widthMm' | 'quantity'>[],
): boolean => {
  const left = new Map(sums.map(({ material, quantity, ...size }) => [`${leftKey(size)} ${material}`, quantity]));
  const take = (key: string, there: number) => left.set(key, (left.get(key) ?? 0) - there);
  for (const { id, onHand } of materials) take(`null null ${id}`, onHand);
  for (const { id } of materials)
    for (const one of leftOf({ materials, offcuts }, id)) take(`${leftKey(one)} ${id}`, one.quantity);
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
    const rest = { ...line, beyond: 0, work: null, ofLine: null };
    return [
      ...bagsMoved(sums, onHand, lots.get(id)).map(({ quantity, useBy = null, openedAt = null }) => ({
        ...rest,
        ...{ quantity, lengthMm: null, widthMm: null, useBy, openedAt },
      })),
      ...leftMoved(sums, leftOf(rows, id)).map((one) => ({ ...rest, ...one, useBy: null, openedAt: null })),
    ];
  });
  const known = rows.stockEntries.filter(({ material }) => linesOf.has(material));
  return { ...rows, stockEntries: [...known, ...settling] };
};

/** The lots of a yard file, by material: none where it says none. */
export const lotsWanted = (materials: readonly { id: string; lots?: readonly BagsMoved[] | undefined }[]): LotsWanted =>
  new Map(materials.map(({ id, lots = [] }) => [id, lots]));
