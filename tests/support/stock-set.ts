import type { Tx } from '../../db/open.ts';
import { moveInStock, type StockReason, setOnHand } from '../../db/stores/stock-store.ts';

const COUNTED: StockReason = { kind: 'counted', at: '2027-04-08T07:00:00Z' };

/** So much is there of a material from now on, as if it had been counted. */
export const countedNow = (tx: Tx, material: string, onHand: number): Promise<void> =>
  setOnHand(tx, material, onHand, COUNTED);

/** So much more of a material is there, or less, down to nothing. */
export const moreOf = (tx: Tx, material: string, quantity: number): Promise<void> =>
  moveInStock(tx, { ...COUNTED, material, quantity });
