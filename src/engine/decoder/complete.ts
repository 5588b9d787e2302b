import type { DecoderState } from './decoder-state.ts';
import { NONE, PACK } from './problem.ts';

/** Asks the stock for what an order is packed with, unless that is taken already. */
export const askParts = (state: DecoderState, order: number): void => {
  const { parts, cuts } = state.problem.orders[order]!;
  state.stock.ask();
  if (state.orders.partsTaken[order]) return;
  state.stock.add(parts);
  state.stock.addCuts(cuts);
};

const finish = (state: DecoderState, order: number, packStart: number, completesAt: number): void => {
  state.stock.use(packStart === NONE ? completesAt : packStart);
  state.orders.packStart[order] = packStart;
  state.orders.completesAt[order] = completesAt;
  state.orders.open--;
};

/** Packs an order at the minute that is fixed for it, if it is ready by then; its people and parts are taken already. */
const packAsFixed = (state: DecoderState, order: number): boolean => {
  const { packAt, readyAt } = state.orders;
  const start = packAt[order]!;
  if (start === NONE || readyAt[order]! > start || state.problem.orders[order]!.from > start) {
    packAt[order] = NONE;
    return false;
  }
  state.stock.ask();
  finish(state, order, start, start + state.problem.orders[order]!.packMinutes);
  return true;
};

/** An order's last piece is ready at `orders.readyAt`: it is complete when its parts are there, or waits to be packed. */
export const completeOrder = (state: DecoderState, order: number): void => {
  if (state.problem.orders[order]!.packMinutes > 0) {
    if (!packAsFixed(state, order)) state.orders.waiting.push(order);
    return;
  }
  askParts(state, order);
  const ready = state.stock.earliest(state.orders.readyAt[order]!);
  if (ready < state.problem.horizonEnd) finish(state, order, NONE, ready);
};

const handoverOn = (state: DecoderState, day: number): number => state.problem.handover[day - state.problem.today]!;

/** Whether packing in the next shift instead would miss the hand-over day that packing in this one makes. */
const wouldSlip = (state: DecoderState): boolean => {
  const { shifts } = state.problem;
  const next = shifts.nextPack[state.shift]!;
  return next >= shifts.count || handoverOn(state, shifts.day[next]!) > handoverOn(state, shifts.day[state.shift]!);
};

const pack = (state: DecoderState, order: number, late: boolean): boolean => {
  const { timeline, problem } = state;
  const { packMinutes: minutes, from: notBefore } = problem.orders[order]!;
  askParts(state, order);
  const from = state.stock.earliest(Math.max(state.orders.readyAt[order]!, timeline.from, notBefore));
  if (from + minutes > timeline.to) return false;
  const by = Math.min(timeline.to, problem.horizonEnd - 1);
  const start = late ? timeline.latest(PACK, minutes, 1, from, by) : timeline.earliest(PACK, minutes, 1, from, by);
  if (start === NONE) return false;
  timeline.take(start, minutes, 1);
  finish(state, order, start, start + minutes);
  return true;
};

/**
 * Packs orders whose pieces are ready in this shift. With `urgentOnly` only those that would otherwise miss a hand-over
 * day, as late in the shift as they fit, so that the early hours stay free for pours.
 */
export const packWaiting = (state: DecoderState, urgentOnly: boolean): void => {
  const { waiting } = state.orders;
  if (waiting.length === 0 || (urgentOnly && !wouldSlip(state))) return;
  const oneDay = state.timeline.to <= state.problem.calendar.midnightOf(state.problem.shifts.day[state.shift]! + 1);
  let kept = 0;
  waiting.sort((a, b) => state.orders.place[a]! - state.orders.place[b]!);
  for (const order of waiting) if (!pack(state, order, urgentOnly && oneDay)) waiting[kept++] = order;
  waiting.length = kept;
};
