import type { Tx } from '../../../db/open.ts';
import { moveInStock } from '../../../db/stores/stock-store.ts';
import { materialBuyingsById } from '../../../db/stores/supplier-store.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';

/**
 * What is used up without a recipe is taken from the stock book with each batch that is recorded: so much
 * for the batch, and so much for each mould it went into. No plan reads it.
 */
export const takeConsumables = async (tx: Tx, records: readonly WorkRecord[]): Promise<void> => {
  const batches = records.flatMap((one) => (one.kind === 'poured' ? [one] : []));
  if (batches.length === 0) return;
  const used = [...(await materialBuyingsById(tx))].filter(([, { perTurn, perBatch }]) => perTurn ?? perBatch);
  for (const { at, mix, pours } of batches)
    for (const [material, { perTurn = 0, perBatch = 0 }] of used) {
      const first = pours[0];
      const work = first && { work: { mix, mould: first.mould, at } };
      await moveInStock(tx, { kind: 'used', at, material, quantity: -(perBatch + perTurn * pours.length), ...work });
    }
};
