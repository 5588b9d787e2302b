import type { Fault } from '../../../shared/fault.ts';
import type { Mix } from '../../../shared/mix.ts';
import { thereIsNo } from '../../../shared/said-back.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Booked, booked, type Entry, refused } from './entry.ts';
import { bagsOfPieces, goodsOfBatch } from './goods.ts';
import { afterPour, isMendedByDay, isRetired, MENDED, makesPiece } from './mould-state.ts';
import { type TakenFor, takeFromStock } from './stock-taken.ts';
import { todayIn } from './today-in.ts';
import type { Filled, PourWork } from './work-done.ts';

/** The one mix that all the pieces are of, or why there is none. */
const mixOf = (pours: readonly Filled[], yard: YardFile): Mix | string => {
  const mixes = new Set(pours.map(({ casting }) => yard.castings.find(({ id }) => id === casting)?.mix));
  const [mix] = [...mixes].map((id) => yard.mixes.find((one) => one.id === id));
  if (mixes.size > 1) return 'These pieces are of different mixes. Record one batch at a time.';
  return mix ?? 'Choose what was poured.';
};

const mouldFault = ({ mould: id, casting }: Filled, yard: YardFile): string | null => {
  const mould = yard.moulds.find((one) => one.id === id);
  if (!mould) return thereIsNo('mould', id);
  if (yard.inMould.some((piece) => piece.mould === id)) return `${id} has a piece in it already. Nothing was recorded.`;
  if (isRetired(mould)) return `${id} is scrapped. Nothing was recorded.`;
  return makesPiece(mould, casting) ? null : `${id} does not make that piece. Nothing was recorded.`;
};

/** What is wrong with the batch as a whole: a mould twice, bags that cannot be, a time to come. */
const batchFaults = ({ pours, bags }: PourWork, mix: Mix, needed: number, yard: YardFile): Fault[] => {
  const twice = pours.length !== new Set(pours.map(({ mould }) => mould)).size;
  const fits = bags === null || (bags === 0 && needed === 0) || (bags > 0 && bags <= mix.maxBags);
  const toCome = pours.some(({ filledAt }) => minuteOf(filledAt) > minuteOf(yard.yard.now));
  return [
    ...(twice ? [{ path: 'pours', message: 'A mould is in it twice.' }] : []),
    ...(fits ? [] : [{ path: 'bags', message: `How many bags? Above 0, up to ${mix.maxBags} at once.` }]),
    ...(toCome ? [{ path: 'filledAt', message: 'That time is still to come.' }] : []),
  ];
};

const fillEntries = ({ mould: id, casting, order, coated, filledAt }: Filled, yard: YardFile): Entry[] => {
  const mould = yard.moulds.find((one) => one.id === id)!;
  // An order that is gone meanwhile (handed over on another screen) leaves the piece to stock.
  const own = order !== null && yard.orders.some((one) => one.id === order) ? { order } : {};
  const mended = isMendedByDay(mould, todayIn(yard)) ? { condition: 'ready' as const, ...MENDED } : {};
  return [
    { kind: 'filled', piece: { mould: id, casting, filledAt, ...own } },
    { kind: 'mould', mould: id, patch: { ...afterPour(mould, casting, coated), ...mended } },
  ];
};

/** How many bags of which mix some pours come to; null when they are of no one mix. `bags` as in the work done. */
export const bagsPoured = ({ pours, bags }: PourWork, yard: YardFile): { mix: Mix; bags: number } | null => {
  const mix = mixOf(pours, yard);
  if (typeof mix === 'string') return null;
  const needed = bagsOfPieces(
    mix,
    pours.map(({ casting }) => casting),
    yard,
  );
  return { mix, bags: bags ?? needed };
};

/** What a batch takes is taken when its mixing began, as far as that is known, and stands in the stock book by its record. */
export const batchTakes = ({ pours, mixedFrom }: PourWork, mix: string): TakenFor => {
  const first = pours.reduce((one, other) => (minuteOf(other.filledAt) < minuteOf(one.filledAt) ? other : one));
  return {
    at: mixedFrom ?? first.filledAt,
    work: { mix, mould: pours[0]!.mould, at: pours.at(-1)!.filledAt },
  };
};

/**
 * A batch is in its moulds: each holds a piece that begins to set at its own fill time, and bags and what goes into the
 * pieces leave the stock. Refused at `pours`, `bags` or `filledAt`: nothing ticked, a mould that is full, scrapped, named
 * twice or of other pieces, different mixes, more bags than one batch holds, a time after the yard's now.
 */
export const pour = (yard: YardFile, work: PourWork): Booked => {
  const { pours } = work;
  if (pours.length === 0) return refused('pours', 'Tick what was poured.');
  const mix = mixOf(pours, yard);
  if (typeof mix === 'string') return refused('pours', mix);
  const castings = pours.map(({ casting }) => casting);
  const faults = batchFaults(work, mix, bagsOfPieces(mix, castings, yard), yard);
  if (faults.length > 0) return { ok: false, faults };
  const wrong = pours.map((one) => mouldFault(one, yard)).find((fault) => fault !== null);
  if (wrong) return refused('pours', wrong);
  const taken = goodsOfBatch(mix, work.bags ?? bagsOfPieces(mix, castings, yard), castings, yard);
  const takenFor = batchTakes(work, mix.id);
  return booked([
    ...pours.flatMap((one) => fillEntries(one, yard)),
    ...takeFromStock(yard, taken, work.cutFrom ?? [], takenFor),
  ]);
};
