import type { Placing } from './decoder-state.ts';
import { NONE, PACK } from './problem.ts';

const askParts = (at: Placing, order: number): void => {
  const { parts, cuts } = at.problem.orders[order]!;
  at.stock.ask();
  at.stock.add(parts);
  at.stock.addCuts(cuts);
};

const finish = (at: Placing, order: number, packStart: number, completesAt: number): void => {
  at.stock.use(packStart === NONE ? completesAt : packStart);
  at.orders.packStart[order] = packStart;
  at.orders.completesAt[order] = completesAt;
  at.orders.open--;
};

/** An order's last piece is ready at `orders.readyAt`: it is complete when its parts are there, or waits to be packed. */
export const completeOrder = (at: Placing, order: number): void => {
  if (at.problem.orders[order]!.packMinutes > 0) {
    at.orders.waiting.push(order);
    return;
  }
  askParts(at, order);
  const ready = at.stock.earliest(at.orders.readyAt[order]!);
  if (ready < at.problem.horizonEnd) finish(at, order, NONE, ready);
};

const handoverOn = (at: Placing, day: number): number => at.problem.handover[day - at.problem.today]!;

/** Whether packing in the next shift instead would miss the hand-over day that packing in this one makes. */
const wouldSlip = (at: Placing): boolean => {
  const { shifts } = at.problem;
  const next = shifts.nextPack[at.shift]!;
  return next >= shifts.count || handoverOn(at, shifts.day[next]!) > handoverOn(at, shifts.day[at.shift]!);
};

const pack = (at: Placing, order: number, late: boolean): boolean => {
  const { timeline, problem } = at;
  const minutes = problem.orders[order]!.packMinutes;
  askParts(at, order);
  const from = at.stock.earliest(Math.max(at.orders.readyAt[order]!, timeline.from));
  if (from + minutes > timeline.to) return false;
  const by = Math.min(timeline.to, problem.horizonEnd - 1);
  const start = late ? timeline.latest(PACK, minutes, 1, from, by) : timeline.earliest(PACK, minutes, 1, from, by);
  if (start === NONE) return false;
  timeline.take(start, minutes, 1);
  finish(at, order, start, start + minutes);
  return true;
};

/**
 * Packs orders whose pieces are ready in this shift. With `urgentOnly` only those that would otherwise miss a hand-over
 * day, as late in the shift as they fit, so that the early hours stay free for pours.
 */
export const packWaiting = (at: Placing, urgentOnly: boolean): void => {
  const { waiting } = at.orders;
  if (waiting.length === 0 || (urgentOnly && !wouldSlip(at))) return;
  const oneDay = at.timeline.to <= at.problem.calendar.midnightOf(at.problem.shifts.day[at.shift]! + 1);
  let kept = 0;
  waiting.sort((a, b) => at.orders.place[a]! - at.orders.place[b]!);
  for (const order of waiting) if (!pack(at, order, urgentOnly && oneDay)) waiting[kept++] = order;
  waiting.length = kept;
};
