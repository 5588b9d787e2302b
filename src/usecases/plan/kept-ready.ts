import type { Tx } from '../../../db/open.ts';
import { type KeptLine, keptLines } from '../../../db/stores/kept-ready-store.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { goodsOfLines } from '../../engine/book/goods.ts';
import type { KeptReady } from '../../engine/kept-ready.ts';

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
