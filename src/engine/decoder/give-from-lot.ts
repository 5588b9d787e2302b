import type { DecoderState } from './decoder-state.ts';
import { NONE } from './problem.ts';

/** Gives pieces of a lot to an order, NONE for one that is gone; the queues are left as they are. */
export const giveFromLot = (state: DecoderState, lot: number, order: number, count: number): void => {
  const { placed, demand, orders, problem } = state;
  demand.lotsLeft[lot] = demand.lotsLeft[lot]! - count;
  const deal = placed.deals++;
  placed.dealLot[deal] = lot;
  placed.dealOrder[deal] = order;
  placed.dealCount[deal] = count;
  if (order !== NONE) orders.readyAt[order] = Math.max(orders.readyAt[order]!, problem.finished[lot]!.readyAt);
};
