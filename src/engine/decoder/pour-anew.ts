import type { DecoderState } from './decoder-state.ts';
import { MOST_PARTS } from './dispatch.ts';

/** Where an order stands in a stretch of a list; its end where it does not. */
const placeOf = (list: Int32Array, from: number, end: number, order: number): number => {
  let i = from;
  while (i < end && list[i] !== order) i++;
  return i;
};

/** Puts one more piece into the queue of those who get what is poured. */
const queueAgain = ({ demand }: DecoderState, order: number, casting: number): void => {
  const end = demand.end[casting]!;
  const i = placeOf(demand.order, demand.start[casting]!, end, order);
  if (i === end) {
    demand.order[i] = order;
    demand.left[i] = 0;
    demand.end[casting] = end + 1;
  }
  demand.left[i] = demand.left[i]! + 1;
  demand.head[casting] = Math.min(demand.head[casting]!, i);
};

/** Puts one more piece into the list of what is wanted first. */
const wantAgain = ({ demand, orders }: DecoderState, order: number, casting: number): void => {
  const end = demand.wantedEnd[casting]!;
  const i = placeOf(demand.wantedOrder, MOST_PARTS * demand.start[casting]!, end, order);
  if (i === end) {
    demand.wantedPlace[i] = orders.place[order]!;
    demand.wantedOrder[i] = order;
    demand.wantedLeft[i] = 0;
    demand.wantedEnd[casting] = end + 1;
  }
  demand.wantedLeft[i] = demand.wantedLeft[i]! + 1;
  demand.wantedHead[casting] = Math.min(demand.wantedHead[casting]!, i);
};

/** A piece of an order came out and is not good: the order lacks it again, from the present shift on and in its own place. */
export const pourAnew = (state: DecoderState, order: number, casting: number): void => {
  const { demand, orders } = state;
  queueAgain(state, order, casting);
  wantAgain(state, order, casting);
  orders.unpoured[order] = orders.unpoured[order]! + 1;
  // One that is held back still is counted with the others of its order, when it no longer is.
  if (state.heldUntil[order]! > state.shift) return;
  demand.need[casting] = demand.need[casting]! + 1;
  demand.total++;
};
