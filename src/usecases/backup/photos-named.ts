import { capturedRows } from '../../../db/stores/change-store.ts';
import { workRecords } from '../../../db/stores/work-record-store.ts';
import type { Tx } from '../../../db/transaction.ts';
import { photosByPiece } from '../trace/piece-photos.ts';

const NAME = /[0-9a-f]{64}/g;

/** The photos that a piece has, and those that undoing a change may bring back: all others nobody can see again. */
export const photosNamed = async (tx: Tx): Promise<ReadonlySet<string>> => {
  const kept = [...photosByPiece(await workRecords(tx)).values()].flat();
  const captured = await capturedRows(tx, 'workRecords');
  return new Set([
    ...kept.map(({ photo }) => photo),
    ...captured.flatMap((row) => JSON.stringify(row).match(NAME) ?? []),
  ]);
};
