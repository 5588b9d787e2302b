import type { DecoderState } from './decoder-state.ts';
import { goesInOneGo } from './in-one-go.ts';
import { NONE, PACK } from './problem.ts';
import { addSpell, isInSpells, LEAST_SPELL, lastSpellEnd, packingLeft } from './spells.ts';

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
  if (isInSpells(state, order)) return packSpellsAsFixed(state, order);
  state.stock.ask();
  finish(state, order, start, start + state.problem.orders[order]!.packMinutes);
  return true;
};

/** The last spell of an order is placed, at the end of which it is complete; its parts are taken. */
const finishSpells = (state: DecoderState, order: number): void => {
  state.stock.ask();
  finish(state, order, state.orders.packStart[order]!, lastSpellEnd(state, order));
};

/** As `packAsFixed`, in its spells; false where more of its packing is to come after them. */
const packSpellsAsFixed = (state: DecoderState, order: number): boolean => {
  for (const pack of state.problem.fixed.packs)
    if (pack.order === order) addSpell(state, order, pack.start, pack.minutes);
  if (packingLeft(state, order) > 0) return false;
  finishSpells(state, order);
  return true;
};

/** An order's last piece is ready at `orders.readyAt`: it is complete when its parts are there, or waits to be packed. */
export const completeOrder = (state: DecoderState, order: number): void => {
  if (state.problem.orders[order]!.packMinutes > 0) {
    if (!packAsFixed(state, order)) state.orders.waiting.push(order);
    return;
  }
  askParts(state, order);
  // The minute at which its parts are there where they were taken already, or NONE, which is before any.
  const ready = state.stock.earliest(Math.max(state.orders.readyAt[order]!, state.orders.packAt[order]!));
  if (ready < state.problem.horizonEnd) finish(state, order, NONE, ready);
};

const handoverOn = (state: DecoderState, day: number): number => state.problem.handover[day - state.problem.today]!;

/** Whether packing in the next shift instead would miss the hand-over day that packing in this one makes. */
const wouldSlip = (state: DecoderState): boolean => {
  const { shifts } = state.problem;
  const next = shifts.nextPack[state.shift]!;
  return next >= shifts.count || handoverOn(state, shifts.day[next]!) > handoverOn(state, shifts.day[state.shift]!);
};

/** Whether what is left of packing an order is more than the shifts after this one have time for up to its hand-over day. */
const spellsWouldSlip = (state: DecoderState, order: number): boolean => {
  const { shifts } = state.problem;
  const on = handoverOn(state, shifts.day[state.shift]!);
  let left = packingLeft(state, order);
  let s = shifts.nextPack[state.shift]!;
  for (; left > 0 && s < shifts.count && handoverOn(state, shifts.day[s]!) === on; s = shifts.nextPack[s]!)
    left -= shifts.to[s]! - shifts.from[s]!;
  return left > 0;
};

/** The next spell of an order in this shift: what is left of it where that fits, else as much as does. */
const nextSpell = (state: DecoderState, order: number, from: number, late: boolean) => {
  const { timeline, problem } = state;
  const by = Math.min(timeline.to, problem.horizonEnd - 1);
  const left = packingLeft(state, order);
  const start = late ? timeline.latest(PACK, left, 1, from, by) : timeline.earliest(PACK, left, 1, from, by);
  return start === NONE ? timeline.longest(PACK, 1, from, by) : { start, minutes: left };
};

/** An order that is not begun yet waits for a session in which it is packed in one go, where spells come to no sooner end. */
const waitsForLonger = ({ orders, problem, shift }: DecoderState, order: number): boolean =>
  orders.partsTaken[order] === 0 &&
  problem.yard.orders[order]!.packedMinutes === undefined &&
  goesInOneGo(problem.packing, problem.packing.ofShift[shift]!, problem.orders[order]!.packMinutes);

/** Packs an order, or some of it, in this shift: once in each. True when all of it is packed. */
const packSpell = (state: DecoderState, order: number, late: boolean): boolean => {
  const { timeline, problem, orders } = state;
  if (lastSpellEnd(state, order) > timeline.from) return false;
  askParts(state, order);
  const from = state.stock.earliest(Math.max(orders.readyAt[order]!, timeline.from, problem.orders[order]!.from));
  if (from >= timeline.to) return false;
  const { start, minutes } = nextSpell(state, order, from, late);
  if (minutes > 0 && !state.stock.isThere(start)) return false;
  if (minutes < packingLeft(state, order) && (minutes < LEAST_SPELL || waitsForLonger(state, order))) return false;
  timeline.take(start, minutes, 1);
  state.stock.use(start);
  orders.partsTaken[order] = 1;
  addSpell(state, order, start, minutes);
  if (packingLeft(state, order) > 0) return false;
  finishSpells(state, order);
  return true;
};

const pack = (state: DecoderState, order: number, late: boolean): boolean => {
  if (isInSpells(state, order)) return packSpell(state, order, late);
  const { timeline, problem } = state;
  const { packMinutes: minutes, from: notBefore } = problem.orders[order]!;
  askParts(state, order);
  const from = state.stock.earliest(Math.max(state.orders.readyAt[order]!, timeline.from, notBefore));
  if (from + minutes > timeline.to) return false;
  const by = Math.min(timeline.to, problem.horizonEnd - 1);
  const start = late ? timeline.latest(PACK, minutes, 1, from, by) : timeline.earliest(PACK, minutes, 1, from, by);
  if (start === NONE || !state.stock.isThere(start)) return false;
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
  if (waiting.length === 0) return;
  const slips = !urgentOnly || wouldSlip(state);
  if (!slips && state.orders.spells.length === 0) return;
  const oneDay = state.timeline.to <= state.problem.calendar.midnightOf(state.problem.shifts.day[state.shift]! + 1);
  let kept = 0;
  waiting.sort((a, b) => state.orders.place[a]! - state.orders.place[b]!);
  for (const order of waiting) {
    const isTime = slips || (isInSpells(state, order) && spellsWouldSlip(state, order));
    if (!isTime || !pack(state, order, urgentOnly && oneDay)) waiting[kept++] = order;
  }
  waiting.length = kept;
};
