import type { YardFile } from '../../shared/yard-file.ts';
import type { Tx } from '../transaction.ts';
import type { SaidOtherwise } from './order-rows.ts';
import { lotsWanted } from './stock-rows.ts';
import { putStoreRows, storeRows } from './store-rows.ts';
import { yardRows } from './yard-rows.ts';

/**
 * Makes the yard what the file says, row by row: ids that stay keep what only the store knows of them. `how` tells of a file
 * that says it otherwise: one of version 1 has one date an order.
 */
export const applyYardFile = async (tx: Tx, file: YardFile, how?: SaidOtherwise): Promise<void> => {
  const held = await storeRows(tx);
  await putStoreRows(tx, held, yardRows(held, file, how), file.yard.now, lotsWanted(file.materials));
};
