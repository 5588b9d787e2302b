import type { Entry } from '../../src/engine/book/entry.ts';
import type { Tx } from '../transaction.ts';
import { addFinished, finishedPieces, setFinishedCount } from './finished-store.ts';
import { emptyMould, fillMould, updateMould } from './mould-store.ts';
import { freeSetAside, updateOrder } from './order-store.ts';
import { addPieceToMend, removePieceToMend } from './piece-to-mend-store.ts';
import { moveInStock } from './stock-store.ts';

const takePieces = async (tx: Tx, place: number, count: number): Promise<void> => {
  const row = (await finishedPieces(tx))[place];
  if (!row) throw new Error(`There are no finished pieces at place ${place}.`);
  await setFinishedCount(tx, row.id, Math.max(0, row.count - count));
};

const write = async (tx: Tx, entry: Entry): Promise<void> => {
  switch (entry.kind) {
    case 'mould':
      return updateMould(tx, entry.mould, entry.patch);
    case 'filled':
      return fillMould(tx, { ...entry.piece, order: entry.piece.order ?? null });
    case 'emptied':
      return emptyMould(tx, entry.mould);
    case 'stock':
      return moveInStock(tx, { ...entry.why, ...entry.bags, material: entry.material, quantity: entry.quantity });
    case 'offcuts':
      return moveInStock(tx, {
        ...entry.why,
        ...{ material: entry.material, lengthMm: entry.lengthMm, quantity: entry.count },
      });
    case 'rests':
      return moveInStock(tx, {
        ...{ ...entry.why, material: entry.material, quantity: entry.count },
        ...{ widthMm: entry.widthMm, lengthMm: entry.lengthMm },
      });
    case 'pieces in':
      return addFinished(tx, { ...entry.lot, ...entry.mark, count: entry.count });
    case 'pieces out':
      return takePieces(tx, entry.place, entry.count);
    case 'put aside':
      return addPieceToMend(tx, entry.piece);
    case 'aside no more':
      return removePieceToMend(tx, entry.id);
    case 'freed':
      return freeSetAside(tx, entry.order);
    case 'packed':
      return updateOrder(tx, entry.order, { packedAt: entry.at, packedMinutes: null });
    case 'packed in part':
      return updateOrder(tx, entry.order, { packedMinutes: entry.minutes });
    case 'unpacked':
      return updateOrder(tx, entry.order, { packedAt: null, packedMinutes: null });
    case 'handed over':
      return updateOrder(tx, entry.order, { status: 'handed over', handedOverOn: entry.on, heldUntil: null });
  }
};

/**
 * Writes entries of the book, one after another, in the transaction of the change they are part of. Loading the yard file
 * afterwards gives what `apply` makes of the one before.
 */
export const writeEntries = async (tx: Tx, entries: readonly Entry[]): Promise<void> => {
  for (const entry of entries) await write(tx, entry);
};
