import type { BagsOf } from '../../../shared/bags.ts';
import type { Fault } from '../../../shared/fault.ts';
import type { Mould, PieceInMould } from '../../../shared/mould.ts';
import type { OrderLine } from '../../../shared/order.ts';
import type { PieceMark } from '../../../shared/piece-mark.ts';
import type { StockEntry } from '../../../shared/stock-entry.ts';
import type { MouldState } from './mould-state.ts';

/** What becomes of a mould; what is left out stays, null clears. `damageNote` and `emptiedAt` are kept in the store only. */
export interface MouldPatch extends Partial<MouldState> {
  condition?: Mould['condition'];
  repairedOn?: string | null;
  dryFrom?: string | null;
  damageNote?: string | null;
  emptiedAt?: string;
}

/** Finished pieces of one casting that are fit to go out from the same instant and for the same order. */
export interface Lot {
  casting: string;
  /** Null: they are fit to go out. */
  readyAt: string | null;
  /** Null: for nobody yet. */
  order: string | null;
}

/** A piece that is kept aside to be mended. It stands in the store only: until it is mended it counts for nothing. */
interface PutAside {
  casting: string;
  mould: string;
  filledAt: string;
  strippedAt: string;
  reason: string | null;
}

/** Why stock becomes more or less, as it stands in the stock book. */
export type StockWhy = Pick<StockEntry, 'kind' | 'at' | 'work'>;

/**
 * One line of the book: what work done in the yard changes. Applied to a yard file (`apply`) and written to the store
 * (`book-store`) it does the same. Quantities are in the unit of the material, above zero where they come in.
 */
export type Entry =
  | { kind: 'mould'; mould: string; patch: MouldPatch }
  | { kind: 'filled'; piece: PieceInMould }
  | { kind: 'emptied'; mould: string }
  /** Stock never goes below nothing; the store keeps how much more was taken. `bags`: which; left out: of no known date. */
  | { kind: 'stock'; material: string; quantity: number; bags?: BagsOf; why: StockWhy }
  /** So many offcuts of a length more, or fewer where it is below 0: never fewer than none. */
  | { kind: 'offcuts'; material: string; lengthMm: number; count: number; why: StockWhy }
  /** The same of rests of sheets of a size. */
  | { kind: 'rests'; material: string; widthMm: number; lengthMm: number; count: number; why: StockWhy }
  /** With the mark of the piece where it is one that is known; no plan reads it. */
  | { kind: 'pieces in'; lot: Lot; count: number; mark?: PieceMark }
  /** By their place in the yard file as it is just then; none left, the place goes and later ones move up. */
  | { kind: 'pieces out'; place: number; count: number }
  | { kind: 'put aside'; piece: PutAside }
  | { kind: 'aside no more'; id: number }
  /** Pieces set aside for an order, in moulds too, are for nobody again. */
  | { kind: 'freed'; order: string }
  | { kind: 'packed'; order: string; at: string }
  /** So many minutes of its packing are done in all, and the rest is still to come. */
  | { kind: 'packed in part'; order: string; minutes: number }
  | { kind: 'unpacked'; order: string; lines: readonly OrderLine[] }
  /** On a date: it is no open order any more. */
  | { kind: 'handed over'; order: string; on: string };

/** What work done comes to in the book, or why it cannot have been done, each reason at the field it belongs to. */
export type Booked = { ok: true; entries: Entry[] } | { ok: false; faults: Fault[] };

/** Work that can have been done, with what it comes to. */
export const booked = (entries: Entry[]): Booked => ({ ok: true, entries });

/** Work that cannot have been done: the reason, at one field. */
export const refused = (path: string, message: string): Booked & { ok: false } => ({
  ok: false,
  faults: [{ path, message }],
});
