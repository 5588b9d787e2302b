import type { Order } from '../../shared/order.ts';
import type { Quote } from '../../shared/quote.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { quoteOrder } from '../engine/quote/quote.ts';
import { mouldKind, mouldsFor } from './mould-kind.ts';
import { piecesOfOrder } from './pieces-of-order.ts';

/** Kinds tried, the busiest first: each costs one more quote while the maker waits. */
const MOST_TRIED = 2;

/** Castings of the order by the pieces that wait for each of their moulds, all orders counted, the longest queue first. */
const busiestFirst = (yard: YardFile, order: Order): string[] => {
  const wanted = piecesOfOrder([...yard.orders.flatMap(({ lines }) => lines), ...order.lines], yard).pieces;
  const queue = (casting: string) => (wanted.get(casting) ?? 0) / Math.max(1, mouldsFor(yard, casting).length);
  return [...piecesOfOrder(order.lines, yard).pieces.keys()].sort((a, b) => queue(b) - queue(a));
};

const withOneMore = (yard: YardFile, casting: string): YardFile | null => {
  const [like] = mouldsFor(yard, casting);
  if (!like) return null;
  const { repairedOn: _mended, ...mould } = like;
  const more = {
    ...mould,
    id: `${like.id} and one more`,
    condition: 'ready' as const,
    setFor: casting,
    prepped: false,
  };
  return { ...yard, moulds: [...yard.moulds, more] };
};

/**
 * The moulds that hold a date, found by trying: with one more of their kind the order could be handed over on an earlier
 * day. Null when more moulds would not help, so that nothing is blamed that does not hold it.
 */
export const mouldsThatHold = (yard: YardFile, order: Order, { earliestOn }: Quote) => {
  if (earliestOn === null) return null;
  for (const casting of busiestFirst(yard, order).slice(0, MOST_TRIED)) {
    const more = withOneMore(yard, casting);
    const sooner = more && quoteOrder(more, order).earliestOn;
    if (!sooner || sooner >= earliestOn) continue;
    const moulds = mouldsFor(yard, casting);
    const kinds = new Set(moulds.map(({ id }) => mouldKind(id)));
    const name = yard.castings.find(({ id }) => id === casting)?.name ?? casting;
    return { count: moulds.length, kind: kinds.size === 1 ? [...kinds][0]! : null, makes: name, withOneMoreOn: sooner };
  }
  return null;
};
