import { curedAt, outAt } from '../book/curing-times.ts';
import { placeBegun, reserveFixed, reservePacks } from './apply-fixed.ts';
import { completeOrder } from './complete.ts';
import { dealAsStood, hadOf } from './deal-as-stood.ts';
import { takeThere } from './deal-lots.ts';
import type { DecoderState } from './decoder-state.ts';
import { MOST_PARTS } from './dispatch.ts';
import { giveFromLot } from './give-from-lot.ts';
import { NEVER, NONE } from './problem.ts';
import { addSpell, packingLeft, resetSpells } from './spells.ts';

const resetMoulds = (state: DecoderState): void => {
  const { problem, moulds, placed, demand } = state;
  demand.prepped.fill(0);
  placed.firstStripStart.fill(NONE);
  placed.firstOrder.fill(NONE);
  moulds.held.fill(NONE);
  moulds.heldOrder.fill(NONE);
  moulds.heldPour.fill(NONE);
  moulds.stripAt.fill(NONE);
  problem.moulds.forEach((mould, k) => {
    moulds.setFor[k] = mould.setFor;
    moulds.dirty[k] = mould.dirty ? 1 : 0;
    moulds.turnsSinceOil[k] = mould.turnsSinceOil;
    moulds.freeAt[k] = mould.usableFrom;
    moulds.preppedFor[k] = mould.prepped && mould.usableFrom < NEVER ? mould.setFor : NONE;
    moulds.prepStart[k] = NONE;
    moulds.prepEnd[k] = mould.usableFrom;
    moulds.coatStart[k] = NONE;
    moulds.coatEnd[k] = NONE;
  });
  for (const { mould, start, end } of problem.begun.preps) {
    moulds.prepStart[mould] = start;
    moulds.prepEnd[mould] = end;
  }
  for (const piece of problem.inMould) {
    if (piece.isBegun) continue;
    const mix = problem.mixes[problem.castings[piece.casting]!.mix]!;
    moulds.held[piece.mould] = piece.casting;
    moulds.outAt[piece.mould] = outAt(mix, piece.filledAt);
    moulds.curedAt[piece.mould] = curedAt(mix, piece.filledAt);
    moulds.preppedFor[piece.mould] = NONE;
    moulds.setFor[piece.mould] = piece.casting;
    moulds.dirty[piece.mould] = 1;
  }
  for (let k = 0; k < problem.moulds.length; k++) {
    const casting = moulds.preppedFor[k]!;
    if (casting !== NONE) demand.prepped[casting] = demand.prepped[casting]! + 1;
  }
};

const joinWanted = (state: DecoderState, place: number, order: number, casting: number, count: number): void => {
  const { demand } = state;
  const end = demand.wantedEnd[casting]!;
  demand.wantedPlace[end] = place;
  demand.wantedOrder[end] = order;
  demand.wantedLeft[end] = count;
  demand.wantedEnd[casting] = end + 1;
};

const joinQueue = (state: DecoderState, order: number, casting: number, left: number): void => {
  const { demand } = state;
  if (!state.dispatch.setUp) joinWanted(state, state.orders.place[order]!, order, casting, left);
  const end = demand.end[casting]!;
  demand.order[end] = order;
  demand.left[end] = left;
  demand.end[casting] = end + 1;
  if (state.heldUntil[order]! > 0) return;
  demand.need[casting] = demand.need[casting]! + left;
  demand.total += left;
};

const addDemand = (state: DecoderState, order: number): void => {
  const { orders } = state;
  for (const piece of state.problem.orders[order]!.pieces) {
    const had = hadOf(state, order, piece.casting);
    const count = piece.count - had.lots - had.inMoulds - had.pours;
    const { got, inMoulds } = takeThere(state, order, piece.casting, count);
    const left = count - got;
    orders.unstripped[order] = orders.unstripped[order]! + left + had.pours + inMoulds + had.inMoulds;
    orders.unpoured[order] = orders.unpoured[order]! + left + had.pours;
    if (left > 0) joinQueue(state, order, piece.casting, left);
  }
};

/** How often each order stands in a list. */
const timesListed = (orders: number, list: readonly number[]): Int32Array => {
  const times = new Int32Array(orders);
  for (const order of list) times[order] = times[order]! + 1;
  return times;
};

/** Pieces asked for beyond those to be poured, by casting: so many are there already. */
const piecesThere = (state: DecoderState, orders: readonly number[]): Int32Array => {
  const { demand, problem } = state;
  const there = new Int32Array(demand.need.length);
  for (const order of orders)
    for (const { casting, count } of problem.orders[order]!.pieces) there[casting] = there[casting]! + count;
  for (let c = 0; c < there.length; c++)
    for (let i = demand.head[c]!; i < demand.end[c]!; i++) there[c] = there[c]! - demand.left[i]!;
  return there;
};

/** Lists what is to be poured by the places of `setUp`; what is there already counts for the first places. */
const listWanted = (state: DecoderState, setUp: readonly number[]): void => {
  const { orders } = state.problem;
  const there = piecesThere(state, [...new Set(setUp)]);
  const times = timesListed(orders.length, setUp);
  const met = new Int32Array(orders.length);
  setUp.forEach((order, place) => {
    const part = met[order]!;
    met[order] = part + 1;
    for (const { casting, count } of orders[order]!.pieces) {
      const here = Math.floor((count * (part + 1)) / times[order]!) - Math.floor((count * part) / times[order]!);
      const had = Math.min(here, there[casting]!);
      there[casting] = there[casting]! - had;
      if (here > had) joinWanted(state, place, order, casting, here - had);
    }
  });
};

/**
 * A list of orders as it counts. One that is left out has no place: where it stands makes no difference to the others.
 * Those that the dispatch holds back come last, so that no queue waits behind them.
 */
const taken = (state: DecoderState, list: Int32Array): number[] => {
  const there = Array.from(list).filter((order) => !state.orders.excluded[order]);
  const { heldBack } = state.dispatch;
  if (!heldBack) return there;
  const last = new Map(heldBack.map(({ order }, i) => [order, i]));
  const held = there.filter((order) => last.has(order)).sort((a, b) => last.get(a)! - last.get(b)!);
  return [...there.filter((order) => !last.has(order)), ...held];
};

/** Strips under way: the piece is out at their end, and its mould empty. */
const stripBegun = (state: DecoderState): void => {
  const { moulds, placed, orders, problem, rack } = state;
  for (const { mould, start } of problem.begun.strips) {
    const { stripMinutes, rackSpaces } = problem.castings[moulds.held[mould]!]!;
    const end = start + stripMinutes;
    const order = moulds.heldOrder[mould]!;
    const readyAt = Math.max(end, moulds.curedAt[mould]!);
    if (end < readyAt) rack.put(readyAt, rackSpaces);
    placed.firstStripStart[mould] = start;
    placed.firstReadyAt[mould] = readyAt;
    placed.firstOrder[mould] = order;
    moulds.held[mould] = NONE;
    moulds.freeAt[mould] = Math.max(moulds.freeAt[mould]!, end);
    if (order === NONE) continue;
    orders.readyAt[order] = Math.max(orders.readyAt[order]!, readyAt);
    orders.unstripped[order] = orders.unstripped[order]! - 1;
  }
};

/** Orders being packed: they have their pieces and are complete at the end of that, or once the rest of it is packed. */
const packBegun = (state: DecoderState): void => {
  const { orders, problem } = state;
  for (const { order, start, end, isPart, lots } of problem.begun.packs) {
    const isThere = order !== NONE && !(isPart && orders.excluded[order]);
    for (const { finished, count } of lots) giveFromLot(state, finished, isThere ? order : NONE, count);
    if (!isThere) continue;
    if (isPart) addSpell(state, order, start, end - start);
    orders.packStart[order] = start;
    orders.readyAt[order] = Math.max(orders.readyAt[order]!, end);
    if (!isPart || packingLeft(state, order) <= 0) orders.completesAt[order] = end;
  }
};

/**
 * Puts everything back to `now` and shares out what is there: finished pieces and pieces in moulds go to the orders of
 * the sequence in turn, and what they still lack joins the queues of pieces to pour.
 */
export const resetState = (state: DecoderState): void => {
  const { problem, demand, orders, placed, dispatch } = state;
  state.shift = 0;
  state.stock.reset();
  state.rack.reset();
  for (const lot of problem.finished)
    if (lot.readyAt > problem.now) state.rack.put(lot.readyAt, problem.castings[lot.casting]!.rackSpaces * lot.count);
  placed.batches = placed.pours = 0;
  placed.deals = 0;
  problem.finished.forEach((lot, i) => {
    demand.lotsLeft[i] = lot.count;
  });
  resetMoulds(state);
  reserveFixed(state);
  demand.head.set(demand.start.subarray(0, demand.head.length));
  demand.end.set(demand.head);
  for (let c = 0; c < demand.head.length; c++) demand.wantedHead[c] = MOST_PARTS * demand.start[c]!;
  demand.wantedEnd.set(demand.wantedHead);
  demand.need.fill(0);
  demand.total = 0;
  orders.unpoured.fill(0);
  orders.unstripped.fill(0);
  orders.readyAt.fill(problem.now);
  orders.packStart.fill(NONE);
  orders.completesAt.fill(NONE);
  resetSpells(state);
  orders.waiting.length = 0;
  state.waited.fill(0);
  orders.open = 0;
  reservePacks(state);
  packBegun(state);
  const sequence = taken(state, dispatch.sequence).filter((order) => orders.completesAt[order] === NONE);
  dealAsStood(state);
  sequence.forEach((order, place) => {
    orders.place[order] = place;
    orders.open++;
    addDemand(state, order);
  });
  if (dispatch.setUp) {
    const open = taken(state, dispatch.setUp).filter((order) => orders.completesAt[order] === NONE);
    listWanted(state, open);
  }
  placeBegun(state);
  stripBegun(state);
  for (const order of sequence) if (orders.unstripped[order] === 0) completeOrder(state, order);
};
