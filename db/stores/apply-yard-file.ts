import type { YardFile } from '../../shared/yard-file.ts';
import type { Tx } from '../transaction.ts';
import { putStoreRows, storeRows } from './store-rows.ts';
import { yardRows } from './yard-rows.ts';

/** Makes the yard what the file says, row by row: ids that stay keep what only the store knows of them. */
export const applyYardFile = async (tx: Tx, file: YardFile): Promise<void> => {
  const held = await storeRows(tx);
  await putStoreRows(tx, held, yardRows(held, file));
};
