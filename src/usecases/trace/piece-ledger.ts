import type { PouredRecord } from '../../../shared/batch-record.ts';
import type { PieceMark } from '../../../shared/piece-mark.ts';
import { markKey } from '../../../shared/piece-mark.ts';
import type { CameOut } from '../../../shared/piece-to-mend.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';

/** Where a piece is, as far as it was recorded; "gone" is one that a count or a file no longer has. */
type PieceIs = 'in its mould' | 'in the yard' | 'to mend' | 'scrapped' | 'packed' | 'gone';

/** One piece, from its batch to the order it went into. */
export interface TracedPiece extends PieceMark {
  casting: string;
  /** Null for a piece that was poured before batches were recorded. */
  batch: PouredRecord | null;
  strippedAt: string | null;
  cameOut: CameOut | null;
  /** What was wrong with it. */
  reason: string | null;
  is: PieceIs;
  /** Of a packed piece the order it went into; else whom it is set aside for, or has by the plan. */
  order: string | null;
}

/** What stands in the yard by now, each with the order that has it, if any. */
export interface PiecesNow {
  inMoulds: readonly (PieceMark & { casting: string; order: string | null })[];
  inYard: readonly (PieceMark & { casting: string; order: string | null })[];
  toMend: readonly (PieceMark & { casting: string })[];
}

type Ledger = Map<string, TracedPiece>;

const pieceOf = (ledger: Ledger, piece: PieceMark & { casting: string }): TracedPiece => {
  const { mould, filledAt, casting } = piece;
  const blank = { strippedAt: null, cameOut: null, reason: null, is: 'gone' as const, order: null };
  const found = ledger.get(markKey(piece)) ?? { mould, filledAt, casting, batch: null, ...blank };
  ledger.set(markKey(piece), found);
  return found;
};

const unpacked = (ledger: Ledger, order: string): void => {
  for (const piece of ledger.values())
    if (piece.is === 'packed' && piece.order === order) Object.assign(piece, { is: 'gone', order: null });
};

const enter = (ledger: Ledger, record: WorkRecord): void => {
  if (record.kind === 'poured')
    for (const pour of record.pours) Object.assign(pieceOf(ledger, pour), { batch: record });
  if (record.kind === 'stripped' || record.kind === 'after mending') {
    const { cameOut, reason, at } = record;
    const piece = pieceOf(ledger, record);
    piece.cameOut = cameOut;
    piece.reason = reason ?? piece.reason;
    if (record.kind === 'stripped') piece.strippedAt = at;
    if (cameOut === 'scrap') piece.is = 'scrapped';
  }
  if (record.kind === 'unpacked') unpacked(ledger, record.order);
  if (record.kind === 'packed')
    for (const one of record.pieces) Object.assign(pieceOf(ledger, one), { is: 'packed', order: record.order });
};

/**
 * Every piece that was ever recorded, in the order in which it was poured, with where it is by now: from the record of all
 * that was done, and what stands in the yard.
 */
export const pieceLedger = (records: readonly WorkRecord[], now: PiecesNow): TracedPiece[] => {
  const ledger: Ledger = new Map();
  for (const record of records) enter(ledger, record);
  for (const piece of now.inMoulds)
    Object.assign(pieceOf(ledger, piece), { is: 'in its mould' as const, order: piece.order });
  for (const piece of now.inYard)
    Object.assign(pieceOf(ledger, piece), { is: 'in the yard' as const, order: piece.order });
  for (const piece of now.toMend) Object.assign(pieceOf(ledger, piece), { is: 'to mend' as const, order: null });
  return [...ledger.values()].sort((a, b) => Date.parse(a.filledAt) - Date.parse(b.filledAt));
};
