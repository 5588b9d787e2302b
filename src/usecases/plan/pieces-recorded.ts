import type { Tx } from '../../../db/open.ts';
import { standingPieces } from '../../../db/stores/finished-store.ts';
import { addWorkRecords } from '../../../db/stores/work-record-store.ts';
import type { OrderLine } from '../../../shared/order.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Booked } from '../../engine/book/entry.ts';
import { packedRecords, piecesTaken } from '../../engine/book/pieces-taken.ts';

/** Keeps which pieces an order takes that goes out without having been packed; before the book is written. */
export const recordPiecesTaken = async (
  tx: Tx,
  yard: YardFile,
  booked: Booked,
  taking: { order: string; lines: readonly OrderLine[] },
): Promise<void> => {
  if (!booked.ok) return;
  const { marked } = piecesTaken(await standingPieces(tx), booked.entries);
  await addWorkRecords(tx, packedRecords({ ...taking, at: yard.yard.now }, yard, marked));
};
