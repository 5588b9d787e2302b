import type { BagsMoved } from '../../../shared/bags.ts';
import type { Cut, Material, SheetCut } from '../../../shared/material.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { countedOnHand } from '../cut/offcuts.ts';
import type { Entry, StockWhy } from './entry.ts';
import type { Goods, Taken } from './goods.ts';
import { usableMm } from './offcuts.ts';
import { type CutFrom, type SheetTaken, sheetsCut, sizeKey } from './sheets-cut.ts';
import { restOfStick, type StickCut, sticksCut } from './sticks-cut.ts';
import { bagsTaken, withBags } from './stock-lots.ts';

type Stock = Pick<YardFile, 'materials' | 'castings'>;

/** Amounts add up to fractions. */
const TOLERANCE = 1e-6;

/** How much of each material work takes, in its own unit: sticks and sheets whole ones. */
export const amountsTaken = (stock: Stock, { goods, cuts, sheets = [] }: Taken, named: readonly CutFrom[]): Goods[] => [
  ...goods,
  ...sticksCut(stock.materials, cuts, named)
    .sticks.filter(({ offcutMm }) => offcutMm === undefined)
    .map(({ material }) => ({ material, quantity: 1 })),
  ...sheetsCut(stock, sheets, named)
    .sheets.filter(({ rest }) => rest === undefined)
    .map(({ material }) => ({ material, quantity: 1 })),
];

const sumOf = (goods: readonly Goods[], id: string): number =>
  goods.reduce((sum, one) => (one.material === id ? sum + one.quantity : sum), 0);

/** A material of which work takes more than the yard has. */
interface Shortage {
  material: Material;
  /** All that is taken of it. */
  amount: number;
}

/**
 * The materials that work takes more of than the yard has; none when all of them are there. `named` says which sticks and
 * sheets the plan cuts it from.
 */
export const shortages = (stock: Stock, taken: Taken, named: readonly CutFrom[]): Shortage[] => {
  const amounts = amountsTaken(stock, taken, named);
  return stock.materials.flatMap((material) => {
    const amount = sumOf(amounts, material.id);
    return amount > 0 && countedOnHand(material) - amount < -TOLERANCE ? [{ material, amount }] : [];
  });
};

/** Name of the first of them; null when all are there. */
export const shortOf = (stock: Stock, taken: Taken, named: readonly CutFrom[]): string | null =>
  shortages(stock, taken, named)[0]?.material.name ?? null;

/** Whole sticks that are in the book: nobody knows what others were cut from, and so nothing is left of them. */
const inTheBook = (sticks: readonly StickCut[], material: Material): StickCut[] => {
  let whole = countedOnHand(material);
  return sticks.filter(({ offcutMm }) => offcutMm !== undefined || whole-- > 0);
};

/** Rests that are gone and rests that are left, by their lengths; one that is too short to be of use is thrown away. */
const offcutEntries = (material: Material, sticks: readonly StickCut[], usable: number, why: StockWhy): Entry[] => {
  const changes = new Map<number, number>();
  const add = (lengthMm: number, count: number) => changes.set(lengthMm, (changes.get(lengthMm) ?? 0) + count);
  for (const stick of inTheBook(sticks, material)) {
    const rest = restOfStick(stick, material);
    if (stick.offcutMm !== undefined) add(stick.offcutMm, -1);
    if (rest > 0 && rest >= usable) add(rest, 1);
  }
  return [...changes].flatMap(([lengthMm, count]): Entry[] =>
    count === 0 ? [] : [{ kind: 'offcuts', material: material.id, lengthMm, count, why }],
  );
};

/**
 * Lengths that are cut: whole sticks are opened, offcuts are used, and what is left of either is an offcut, unless it is
 * too short for any piece that the yard cuts from it.
 */
const cutEntries = (
  yard: Pick<YardFile, 'materials' | 'castings' | 'kits'>,
  cuts: readonly Cut[],
  named: readonly CutFrom[],
  why: StockWhy,
): Entry[] => {
  const { sticks } = sticksCut(yard.materials, cuts, named);
  return yard.materials.flatMap((material): Entry[] => {
    const own = sticks.filter((stick) => stick.material === material.id);
    const opened = own.filter(({ offcutMm }) => offcutMm === undefined).length;
    return [
      ...(opened > 0 ? [{ kind: 'stock' as const, material: material.id, quantity: -opened, why }] : []),
      ...offcutEntries(material, own, usableMm(yard, material.id), why),
    ];
  });
};

/** Rests that are gone and rests that are left, by their sizes. Nobody knows what sheets beyond the book were cut from. */
const restEntries = (material: Material, sheets: readonly SheetTaken[], why: StockWhy): Entry[] => {
  const changes = new Map<string, { widthMm: number; lengthMm: number; count: number }>();
  const add = ({ widthMm, lengthMm }: { widthMm: number; lengthMm: number }, more: number) => {
    const key = sizeKey({ widthMm, lengthMm });
    changes.set(key, { widthMm, lengthMm, count: (changes.get(key)?.count ?? 0) + more });
  };
  let whole = countedOnHand(material);
  for (const { rest, kept } of sheets) {
    if (rest) add(rest, -1);
    if (rest || whole-- > 0) for (const one of kept) add(one, 1);
  }
  return [...changes.values()].flatMap((one): Entry[] =>
    one.count === 0 ? [] : [{ kind: 'rests', material: material.id, ...one, why }],
  );
};

/** Pieces of sheets: whole ones are opened, rests are used, and what is kept of either is a rest. */
const sheetEntries = (yard: Stock, pieces: readonly SheetCut[], named: readonly CutFrom[], why: StockWhy): Entry[] => {
  const { sheets } = sheetsCut(yard, pieces, named);
  return yard.materials.flatMap((material): Entry[] => {
    const own = sheets.filter((sheet) => sheet.material === material.id);
    const opened = own.filter(({ rest }) => rest === undefined).length;
    return [
      ...(opened > 0 ? [{ kind: 'stock' as const, material: material.id, quantity: -opened, why }] : []),
      ...restEntries(material, own, why),
    ];
  });
};

/** What work takes from the stock is taken at an instant, and for what. */
export type TakenFor = Omit<StockWhy, 'kind'>;

/** Goods one after another, each of the bags that planning takes as well: what one opened is open for the next. */
const goodsEntries = (
  { materials, yard }: Pick<YardFile, 'materials' | 'yard'>,
  goods: readonly Goods[],
  why: StockWhy,
) => {
  const { dayOf } = calendarOf(yard.timeZone);
  const left = new Map(materials.map((one) => [one.id, one]));
  return goods.flatMap(({ material: id, quantity }): Entry[] => {
    const material = left.get(id);
    const moved: BagsMoved[] = material
      ? bagsTaken(material, quantity, why.at, (instant) => dayOf(minuteOf(instant)))
      : [{ quantity: -quantity }];
    if (material)
      left.set(
        id,
        moved.reduce((before, one) => withBags(before, one), material),
      );
    return moved.map(({ quantity: more, ...bags }) => ({
      ...{ kind: 'stock', material: id, quantity: more, why },
      ...(Object.keys(bags).length > 0 ? { bags } : {}),
    }));
  });
};

/**
 * All that work takes leaves the stock. `named` says which sticks and sheets the plan cuts it from; else it is cut where it fits
 * best.
 */
export const takeFromStock = (
  yard: Pick<YardFile, 'materials' | 'castings' | 'kits' | 'yard'>,
  { goods, cuts, sheets = [] }: Taken,
  named: readonly CutFrom[],
  { kind = 'used', ...taken }: TakenFor & Partial<StockWhy>,
): Entry[] => [
  ...goodsEntries(yard, goods, { ...taken, kind }),
  ...cutEntries(yard, cuts, named, { ...taken, kind: 'cut' }),
  ...sheetEntries(yard, sheets, named, { ...taken, kind: 'cut' }),
];

/** What was taken is in stock again: pieces that were cut are offcuts of their lengths. */
export const giveBackToStock = ({ goods, cuts }: Taken, why: StockWhy): Entry[] => [
  ...goods.map(({ material, quantity }): Entry => ({ kind: 'stock', material, quantity, why })),
  ...cuts
    .filter(({ count }) => count > 0)
    .map(({ material, lengthMm, count }): Entry => ({ kind: 'offcuts', material, lengthMm, count, why })),
];
