import type { FinishedPieces } from '../../../shared/mould.ts';
import type { OrderLine } from '../../../shared/order.ts';
import type { PieceMark } from '../../../shared/piece-mark.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Entry } from './entry.ts';
import { goodsOfLines, linesToTake } from './goods.ts';
import { changePieces } from './lots.ts';

/** Finished pieces with the mark of the one that stands for itself; null where it is not known. */
export interface Standing extends FinishedPieces {
  mark: PieceMark | null;
}

/** A piece that is known by its mark. */
export interface MarkedPiece extends PieceMark {
  casting: string;
}

/** What left the rack and what stands on it afterwards. */
interface Taken {
  marked: MarkedPiece[];
  standing: Standing[];
}

/**
 * Which pieces leave the yard by entries of the book, applied one after another to what stands there.
 *
 * Example: of [A, B] with "1 out at place 0", A is taken and B stands.
 */
export const piecesTaken = (before: readonly Standing[], entries: readonly Entry[]): Taken => {
  const marked: MarkedPiece[] = [];
  let standing = [...before];
  for (const entry of entries) {
    const lot = entry.kind === 'pieces out' ? standing[entry.place] : undefined;
    if (lot?.mark) marked.push({ casting: lot.casting, ...lot.mark });
    const mark = (entry.kind === 'pieces in' && entry.mark) || null;
    standing = changePieces(standing, entry, (pieces) => ({ ...pieces, mark }));
  }
  return { marked, standing };
};

/** An order that takes what it is made of, at an instant. */
interface Taking {
  order: string;
  lines: readonly OrderLine[];
  at: string;
}

/**
 * What packing an order comes to in the record of all that was done: its pieces by their marks, and how many of each kind
 * nobody knows the mark of. None where it takes no piece, or took them with an earlier packing. `yard` as it was before.
 */
export const packedRecords = (
  { order, lines, at }: Taking,
  yard: YardFile,
  marked: readonly MarkedPiece[],
): WorkRecord[] => {
  const wanted = goodsOfLines(linesToTake({ order, lines }, yard), yard).pieces;
  const others = [...wanted].flatMap(([casting, count]) => {
    const left = count - marked.filter((piece) => piece.casting === casting).length;
    return left > 0 ? [{ casting, count: left }] : [];
  });
  return marked.length + others.length === 0 ? [] : [{ kind: 'packed', at, order, pieces: [...marked], others }];
};

/** The pieces that are packed for an order by the record of all that was done, each by its mark. */
export const piecesPacked = (records: readonly WorkRecord[], order: string): MarkedPiece[] => {
  const last = records.findLast((one) => (one.kind === 'packed' || one.kind === 'unpacked') && one.order === order);
  return last?.kind === 'packed' ? [...last.pieces] : [];
};
