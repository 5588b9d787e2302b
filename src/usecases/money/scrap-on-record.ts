import type { Tx } from '../../../db/open.ts';
import { scrapCounts } from '../../../db/stores/work-record-store.ts';

/** How many of so many pieces came out as scrap. */
export interface ScrapShare {
  scrapped: number;
  of: number;
}

/** Of fewer pieces nothing is said: one bad one would be a share of its own. */
const ENOUGH = 30;

/** The yard's own share of scrap, once enough pieces are on record. */
export const scrapOnRecord = async (tx: Tx): Promise<ScrapShare | null> => {
  const share = await scrapCounts(tx);
  return share.of < ENOUGH ? null : share;
};
