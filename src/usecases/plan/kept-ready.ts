import type { Tx } from '../../../db/open.ts';
import { habitsOfYard } from '../../../db/stores/habits-store.ts';
import { type KeptLine, keptLines } from '../../../db/stores/kept-ready-store.ts';
import { countOfRecords } from '../../../db/stores/work-record-store.ts';
import { ENOUGH_RECORD } from '../../../shared/promise-odds.ts';
import { USUAL_SPARES } from '../../../shared/spares.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { YardRecord } from '../../../shared/yard-record.ts';
import { goodsOfLines } from '../../engine/book/goods.ts';
import type { KeptReady } from '../../engine/kept-ready.ts';
import { beliefsOf } from '../../engine/odds/beliefs.ts';
import { yardRecord } from './yard-record.ts';

/** The pieces that so many kits and single pieces come to. */
export const piecesOfKept = (lines: readonly KeptLine[], yard: Pick<YardFile, 'kits' | 'materials'>): KeptReady[] =>
  [
    ...goodsOfLines(
      lines.map(({ count, ...what }) => ({ ...what, quantity: count })),
      yard,
    ).pieces,
  ].map(([casting, count]) => ({ casting, count }));

/** The pieces that are to stand ready in the yard, for whoever comes. */
export const keptReadyOf = async (tx: Tx, yard: Pick<YardFile, 'kits' | 'materials'>): Promise<KeptReady[]> =>
  piecesOfKept(await keptLines(tx), yard);

/** What went wrong so far, where enough of it is on record to promise by; else null. */
export const enoughRecordOf = async (tx: Tx, yard: YardFile): Promise<YardRecord | null> => {
  // Most yards end here: all records are read only where there are enough of them.
  if ((await countOfRecords(tx, 'stripped')) < ENOUGH_RECORD.pieces) return null;
  const record = yard.record ?? (await yardRecord(tx, yard));
  return beliefsOf(record).isEnough ? record : null;
};

/**
 * What went wrong so far, where pieces to spare are poured by it: always, never, or once enough is on record, as the yard says.
 * Null where none are.
 */
export const sparesByOf = async (tx: Tx, yard: YardFile): Promise<YardRecord | null> => {
  const { spares = USUAL_SPARES } = await habitsOfYard(tx);
  if (spares === 'never') return null;
  return spares === 'always' ? (yard.record ?? yardRecord(tx, yard)) : enoughRecordOf(tx, yard);
};

/** What is poured behind all orders: to stand ready, and by what pieces to spare. */
export interface BehindOrders {
  keptReady: KeptReady[];
  sparesBy?: YardRecord;
}

/** What is poured behind all orders of a yard. */
export const behindOrders = async (tx: Tx, yard: YardFile): Promise<BehindOrders> => {
  const keptReady = await keptReadyOf(tx, yard);
  const sparesBy = await sparesByOf(tx, yard);
  return { keptReady, ...(sparesBy ? { sparesBy } : {}) };
};
