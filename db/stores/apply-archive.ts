import type { Archive } from '../../shared/archive.ts';
import type { Tx } from '../transaction.ts';
import { archiveRows } from './archive-rows.ts';
import { replaceLog } from './log-store.ts';
import { lotsWanted } from './stock-rows.ts';
import { putStoreRows, storeRows } from './store-rows.ts';

/** Puts an archive in place of all there is, as part of a change before which `makeRoomInLog` made room for its log. */
export const applyArchive = async (tx: Tx, change: number, archive: Archive): Promise<void> => {
  const held = await storeRows(tx);
  await putStoreRows(tx, held, archiveRows(held, archive), archive.yard.now, lotsWanted(archive.materials));
  await replaceLog(tx, change, archive.log);
};
