import type { OrderLine } from '../../../shared/order.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Booked, booked, type Entry, type Lot, refused } from './entry.ts';
import { goodsOfLines, goodsOfOrder, linesToTake, packMinutesOf } from './goods.ts';
import type { MarkedPiece } from './pieces-taken.ts';
import { giveBackToStock, takeFromStock } from './stock-taken.ts';
import type { PackWork } from './work-done.ts';

/** An order that takes what it is made of. */
type Taking = Pick<PackWork, 'order' | 'lines' | 'planned' | 'named' | 'evenShort' | 'cutFrom'> & { doneAt?: string };

/** How many pieces are taken from which place in the yard file. */
type Taken = ReadonlyMap<number, number>;

/** Places an order may take pieces from by the yard's now: what the plan gives it, then its own, then those of nobody. */
const placesFor = (yard: YardFile, { order: id, planned, named = false }: Taking): number[] => {
  const now = minuteOf(yard.yard.now);
  const given = new Set(planned.map(({ finished }) => finished));
  const rank = (place: number): number => {
    const { order, readyAt } = yard.finished[place]!;
    const isAnothers = order !== undefined && order !== id && !(named && given.has(place));
    if (isAnothers || (readyAt !== undefined && minuteOf(readyAt) > now)) return Number.NaN;
    if (given.has(place)) return 0;
    return order === id ? 1 : 2;
  };
  return yard.finished
    .map((_, place) => place)
    .filter((place) => !Number.isNaN(rank(place)))
    .sort((a, b) => rank(a) - rank(b) || a - b);
};

/** What is taken of each casting, and how many of each are missing. */
const takePieces = (yard: YardFile, work: Taking, wanted: ReadonlyMap<string, number>) => {
  const taken = new Map<number, number>();
  const missing = new Map<string, number>();
  const places = placesFor(yard, work);
  const planned = new Map(work.planned.map(({ finished, count }) => [finished, count]));
  for (const [casting, count] of wanted) {
    const own = places.filter((one) => yard.finished[one]!.casting === casting);
    const take = (place: number, most: number): void => {
      const before = taken.get(place) ?? 0;
      const some = Math.min(left, yard.finished[place]!.count - before, most);
      if (some > 0) taken.set(place, before + some);
      left -= Math.max(0, some);
    };
    let left = count;
    for (const place of own) take(place, planned.get(place) ?? 0);
    for (const place of own) take(place, left);
    if (left > 0) missing.set(casting, left);
  }
  return { taken, missing };
};

/** Pieces that the stock book is short of, in words: "2 × Panel 900, 1 × Panel 600". */
const shortText = (missing: ReadonlyMap<string, number>, { castings }: YardFile): string =>
  [...missing]
    .map(([casting, count]) => `${count} × ${castings.find(({ id }) => id === casting)?.name ?? casting}`)
    .join(', ');

/** The last place first, so that the others stay where they are. */
const takenEntries = (taken: Taken): Entry[] =>
  [...taken].sort(([a], [b]) => b - a).map(([place, count]) => ({ kind: 'pieces out', place, count }));

/** All that an order is made of leaves the stock; or, in words, the pieces the book is short of. */
const takeGoods = (yard: YardFile, work: Taking): { entries: Entry[]; short: string | null } => {
  const lines = linesToTake(work, yard);
  const { taken, missing } = takePieces(yard, work, goodsOfLines(lines, yard).pieces);
  return {
    entries: [
      ...takenEntries(taken),
      ...takeFromStock(yard, goodsOfOrder(lines, yard), work.cutFrom ?? [], {
        at: work.doneAt ?? yard.yard.now,
        work: { order: work.order },
      }),
      { kind: 'freed', order: work.order },
    ],
    short: missing.size === 0 ? null : shortText(missing, yard),
  };
};

/** The order is packed, or some of it is while more of its packing is left. */
const packedEntry = (yard: YardFile, { order: id, minutes, doneAt }: PackWork): Entry => {
  const order = yard.orders.find((one) => one.id === id);
  const inAll = (order?.packedMinutes ?? 0) + (minutes ?? 0);
  const isLeft = minutes !== undefined && order !== undefined && inAll < packMinutesOf(order, yard);
  return isLeft ? { kind: 'packed in part', order: id, minutes: inAll } : { kind: 'packed', order: id, at: doneAt };
};

/**
 * An order is packed: its pieces, parts and cut lengths leave the stock, and pieces set aside for it beyond that are for
 * nobody again. Packed over several sessions, they leave it with the first. Refused at `evenShort` when the book is short of pieces that are fit to go out by the yard's now, unless
 * the maker has counted.
 */
export const pack = (yard: YardFile, work: PackWork): Booked => {
  const { entries, short } = takeGoods(yard, work);
  if (short !== null && !work.evenShort)
    return refused(
      'evenShort',
      `By the stock book these are not in the yard, or not fit to go out yet: ${short}. Nothing was packed.`,
    );
  return booked([...entries, packedEntry(yard, work)]);
};

/**
 * The customer has an order, on a date. What it is made of leaves the stock, unless it was packed, all of it or some, and has
 * left it already.
 * Refused at `evenShort` as packing is.
 */
export const handOver = (yard: YardFile, work: Taking & { isPacked: boolean; on: string }): Booked => {
  const { order, on } = work;
  if (work.isPacked)
    return booked([
      { kind: 'freed', order },
      { kind: 'handed over', order, on },
    ]);
  const { entries, short } = takeGoods(yard, work);
  if (short !== null && !work.evenShort)
    return refused('evenShort', `By the stock book these are not in the yard yet: ${short}. Nothing was handed over.`);
  return booked([...entries, { kind: 'handed over', order, on }]);
};

/**
 * The customer has some of an order, which is an order of its own from then on, `part`; the rest keeps what is set aside for
 * it. Refused at `evenShort` as handing over all of it is.
 */
export const handOverPart = (yard: YardFile, work: Taking & { part: string; on: string }): Booked => {
  const { entries, short } = takeGoods(yard, work);
  if (short !== null && !work.evenShort)
    return refused('evenShort', `By the stock book these are not in the yard yet: ${short}. Nothing was handed over.`);
  const taken = entries.filter(({ kind }) => kind !== 'freed');
  return booked([...taken, { kind: 'handed over', order: work.part, on: work.on }]);
};

/** So many pieces come in: each known one for itself, the others together. */
const backIn = (lot: Lot, count: number, marked: readonly MarkedPiece[]): Entry[] => {
  const known = marked.filter(({ casting }) => casting === lot.casting).slice(0, count);
  const left = count - known.length;
  return [
    ...known.map(({ mould, filledAt }): Entry => ({ kind: 'pieces in', lot, count: 1, mark: { mould, filledAt } })),
    ...(left > 0 ? [{ kind: 'pieces in' as const, lot, count: left }] : []),
  ];
};

/** An order that is packed, all of it or some, comes apart again: its pieces are set aside for it, its parts are in stock, its lengths are offcuts. */
export const unpack = (
  yard: YardFile,
  { order, lines }: { order: string; lines: readonly OrderLine[] },
  marked: readonly MarkedPiece[] = [],
): Booked => {
  const pieces = [...goodsOfLines(lines, yard).pieces].filter(([, count]) => count > 0);
  return booked([
    ...pieces.flatMap(([casting, count]) => backIn({ casting, readyAt: null, order }, count, marked)),
    ...giveBackToStock(goodsOfOrder(lines, yard), { kind: 'returned', at: yard.yard.now, work: { order } }),
    { kind: 'unpacked', order, lines },
  ]);
};
