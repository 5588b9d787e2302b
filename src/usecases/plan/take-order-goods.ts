import type { Tx } from '../../../db/open.ts';
import { finishedPieces, type StoredFinished, setFinishedCount } from '../../../db/stores/finished-store.ts';
import { addToStock } from '../../../db/stores/material-store.ts';
import type { OrderLine } from '../../../shared/order.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { takeCuts } from './cut-lengths.ts';
import { piecesOfOrder } from './pieces-of-order.ts';

/** Pieces an order may take now: its own first, then those set aside for nobody. */
const takeable = (stock: readonly StoredFinished[], order: string, now: string): StoredFinished[] => {
  const ready = stock.filter(({ readyAt }) => readyAt === null || minuteOf(readyAt) <= minuteOf(now));
  return [...ready.filter((one) => one.order === order), ...ready.filter((one) => one.order === null)];
};

/** Takes what is there of each piece out of stock; returns how many of each are missing. */
const takePieces = async (tx: Tx, wanted: ReadonlyMap<string, number>, from: StoredFinished[]) => {
  const missing = new Map<string, number>();
  for (const [casting, count] of wanted) {
    let left = count;
    for (const pieces of from.filter((one) => one.casting === casting)) {
      const taken = Math.min(left, pieces.count);
      if (taken > 0) await setFinishedCount(tx, pieces.id, pieces.count - taken);
      left -= taken;
    }
    if (left > 0) missing.set(casting, left);
  }
  return missing;
};

/** Pieces that the stock book is short of, in words: "2 × Panel 900, 1 × Panel 600"; null when all were there. */
const shortText = (missing: ReadonlyMap<string, number>, yard: YardFile): string | null => {
  const nameOf = (casting: string) => yard.castings.find(({ id }) => id === casting)?.name ?? casting;
  return missing.size === 0 ? null : [...missing].map(([casting, count]) => `${count} × ${nameOf(casting)}`).join(', ');
};

/** Takes everything an order is made of out of stock: pieces, parts and cut lengths. Says what was not there. */
export const takeOrderGoods = async (
  tx: Tx,
  order: { id: string; lines: readonly OrderLine[] },
  yard: YardFile,
  now: string,
): Promise<string | null> => {
  const { pieces, parts, cuts } = piecesOfOrder(order.lines, yard);
  const missing = await takePieces(tx, pieces, takeable(await finishedPieces(tx), order.id, now));
  for (const [material, quantity] of parts) await addToStock(tx, material, -quantity);
  await takeCuts(tx, yard, cuts);
  return shortText(missing, yard);
};
