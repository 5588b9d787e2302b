import { listText } from '../../shared/list-text.ts';
import type { OrderModel } from '../../src/usecases/orders/show-order.ts';

type PieceProgress = OrderModel['together']['progress'][number];

/** What a piece of an order can be, the furthest first. */
export const PROGRESS = ['inYard', 'curing', 'inMoulds', 'toPour'] as const;

/** What the look of a piece stands for. */
export const PROGRESS_WORDS: Readonly<Record<(typeof PROGRESS)[number], string>> = {
  inYard: 'in the yard',
  curing: 'curing',
  inMoulds: 'in moulds',
  toPour: 'to pour',
};

const wordFor = (part: (typeof PROGRESS)[number], count: number): string =>
  part === 'inMoulds' && count === 1 ? 'in a mould' : PROGRESS_WORDS[part];

/** "3 in the yard, 1 in a mould and 4 to pour": of pieces of one kind. */
export const progressText = (piece: PieceProgress): string =>
  listText(PROGRESS.filter((part) => piece[part] > 0).map((part) => `${piece[part]} ${wordFor(part, piece[part])}`));

/** "How far its 16 pieces are" */
export const progressTitle = (progress: readonly PieceProgress[]): string => {
  const all = progress.reduce((sum, piece) => PROGRESS.reduce((more, part) => more + piece[part], sum), 0);
  return all === 1 ? 'How far its one piece is' : `How far its ${all} pieces are`;
};
