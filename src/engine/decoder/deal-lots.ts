import { curedAt, outAt } from '../book/curing-times.ts';
import { completeOrder } from './complete.ts';
import type { DecoderState } from './decoder-state.ts';
import { giveFromLot } from './give-from-lot.ts';
import { wantedHead } from './holds.ts';
import { firstLeft } from './place-pour.ts';
import { NEVER, NONE } from './problem.ts';

/**
 * Whether an order takes pieces of a lot before anything is poured: they are ready, or ready by the date it is aimed at, or
 * no mould could make another, or the choices say so.
 */
const isInTime = ({ problem, dispatch }: DecoderState, lot: number, order: number): boolean => {
  const { readyAt, goodOn, packedOn, casting } = problem.finished[lot]!;
  const { packMinutes, aimDay } = problem.orders[order]!;
  if (readyAt <= problem.now || problem.castings[casting]!.moulds.length === 0) return true;
  if (problem.calendar.dayOf(readyAt) <= dispatch.choices.lotsUntil) return true;
  if (dispatch.pourFirst?.includes(order)) return false;
  return aimDay < NEVER && (packMinutes > 0 ? packedOn : goodOn) <= aimDay;
};

/** Takes the piece in a mould for an order; false where it is another's, or cannot be stripped any more. */
const takePiece = (state: DecoderState, piece: number, order: number): boolean => {
  const { moulds, problem, lastStrip } = state;
  const { mould, casting } = problem.inMould[piece]!;
  if (moulds.heldOrder[mould] !== NONE || moulds.outAt[mould]! > lastStrip[casting]!) return false;
  moulds.heldOrder[mould] = order;
  return true;
};

/**
 * Gives an order what is there of a casting and helps it: what is set aside for it first, then what is ready soonest, out
 * of lots or out of moulds. Returns how many pieces it got, and how many of them are in moulds.
 */
export const takeThere = (
  state: DecoderState,
  order: number,
  casting: number,
  count: number,
): { got: number; inMoulds: number } => {
  const { problem, demand } = state;
  let [got, inMoulds] = [0, 0];
  for (const setAside of [order, NONE])
    for (const { lot, piece } of problem.there.byCasting[casting]!) {
      if (got === count) break;
      if ((lot === NONE ? problem.inMould[piece]! : problem.finished[lot]!).order !== setAside) continue;
      if (lot === NONE) {
        if (!takePiece(state, piece, order)) continue;
        got++;
        inMoulds++;
      } else if (demand.lotsLeft[lot]! > 0 && isInTime(state, lot, order)) {
        const taken = Math.min(demand.lotsLeft[lot]!, count - got);
        giveFromLot(state, lot, order, taken);
        got += taken;
      }
    }
  return { got, inMoulds };
};

/** When a piece that is poured in the shift entered, or later, is ready at the very soonest; NEVER where none can be. */
const soonestPour = ({ problem, timeline, shift, pourUntil, lastStrip }: DecoderState, casting: number): number => {
  const { mix, fillMinutes, stripMinutes, moulds } = problem.castings[casting]!;
  const setting = problem.mixes[mix]!;
  const filled = timeline.from + setting.mixMinutes + fillMinutes;
  const out = outAt(setting, filled);
  if (moulds.length === 0 || filled > pourUntil || out > lastStrip[casting]!) return NEVER;
  const { shifts } = problem;
  let s = shift;
  while (s < shifts.count && shifts.to[s]! < Math.max(out, shifts.from[s]!) + stripMinutes) s = shifts.nextStrip[s]!;
  if (s >= shifts.count) return NEVER;
  return Math.max(Math.max(out, shifts.from[s]!) + stripMinutes, curedAt(setting, filled));
};

/** Pieces of a casting need no pouring any more: the lists of what is wanted, whoever gets it, are so much shorter. */
const wantLess = (state: DecoderState, casting: number, count: number): void => {
  const { demand } = state;
  demand.need[casting] = demand.need[casting]! - count;
  demand.total -= count;
  for (let left = count; left > 0; ) {
    const i = wantedHead(state, casting);
    const fewer = Math.min(left, demand.wantedLeft[i]!);
    if (fewer === 0) return;
    demand.wantedLeft[i] = demand.wantedLeft[i]! - fewer;
    left -= fewer;
    demand.wantedHead[casting] = firstLeft(demand.wantedLeft, demand.wantedHead[casting]!, demand.wantedEnd[casting]!);
  }
};

/** Deals a lot to those who wait for its casting, first ones of the sequence first. */
const dealLot = (state: DecoderState, lot: number): void => {
  const { demand, orders, problem, heldUntil } = state;
  const { casting, order: setAside } = problem.finished[lot]!;
  for (let i = demand.head[casting]!; i < demand.end[casting]! && demand.lotsLeft[lot]! > 0; i++) {
    const order = demand.order[i]!;
    const count = Math.min(demand.left[i]!, demand.lotsLeft[lot]!);
    if (count === 0 || heldUntil[order]! > state.shift || (setAside !== NONE && setAside !== order)) continue;
    giveFromLot(state, lot, order, count);
    demand.left[i] = demand.left[i]! - count;
    wantLess(state, casting, count);
    orders.unpoured[order] = orders.unpoured[order]! - count;
    orders.unstripped[order] = orders.unstripped[order]! - count;
    if (orders.unstripped[order] === 0) completeOrder(state, order);
  }
  demand.head[casting] = firstLeft(demand.left, demand.head[casting]!, demand.end[casting]!);
};

/**
 * Before anything is poured in a shift: lots that are ready no later than what is poured in it go to whoever still waits
 * for their casting, so that nobody waits for a finished piece longer than for a new one. With `isLast` all that is left.
 */
export const dealLots = (state: DecoderState, isLast = false): void => {
  const { problem, demand, choices } = state;
  for (const lot of problem.there.lateLots) {
    if (demand.total === 0) return;
    const { casting, readyAt } = problem.finished[lot]!;
    if (demand.lotsLeft[lot] === 0 || demand.need[casting] === 0) continue;
    const isWaitedFor = isLast || problem.calendar.dayOf(readyAt) <= choices.lotsUntil;
    if (isWaitedFor || readyAt <= soonestPour(state, casting)) dealLot(state, lot);
  }
};
