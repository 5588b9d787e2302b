import { completeOrder } from './complete.ts';
import type { Placing } from './decoder-state.ts';
import { NEVER, NONE, STRIP } from './problem.ts';

/**
 * Earliest start of stripping a mould in this shift, its piece out by age (R7), people and rack allowing; NONE when it
 * cannot be. Nothing is taken yet.
 */
export const stripStart = (at: Placing, mould: number): number => {
  const casting = at.problem.castings[at.moulds.held[mould]!]!;
  const out = Math.max(at.moulds.outAt[mould]!, at.timeline.from);
  const end = at.rack.roomFrom(out + casting.stripMinutes, at.moulds.curedAt[mould]!, casting.rackSpaces);
  return at.timeline.earliest(STRIP, casting.stripMinutes, casting.stripCrew, end - casting.stripMinutes);
};

/** Takes the people and the rack for a strip; `untakeStrip` puts the last one back. */
export const takeStrip = (at: Placing, mould: number, start: number): void => {
  const casting = at.problem.castings[at.moulds.held[mould]!]!;
  at.timeline.take(start, casting.stripMinutes, casting.stripCrew);
  const end = start + casting.stripMinutes;
  at.rack.put(Math.max(end, at.moulds.curedAt[mould]!), end < at.moulds.curedAt[mould]! ? casting.rackSpaces : 0);
};

/** Gives people and rack of the strip taken last back. Only the last one can be: the rack is a stack. */
export const untakeStrip = (at: Placing, mould: number, start: number): void => {
  const casting = at.problem.castings[at.moulds.held[mould]!]!;
  at.timeline.giveBack(start, casting.stripMinutes, casting.stripCrew);
  at.rack.takeBack(start + casting.stripMinutes < at.moulds.curedAt[mould]! ? casting.rackSpaces : 0);
};

/** Writes down a strip whose people and rack are taken: the piece goes to its order, the mould is empty and dirty. */
export const recordStrip = (at: Placing, mould: number, start: number): void => {
  const { moulds, placed, orders } = at;
  const end = start + at.problem.castings[moulds.held[mould]!]!.stripMinutes;
  const readyAt = Math.max(end, moulds.curedAt[mould]!);
  const [pour, order] = [moulds.heldPour[mould]!, moulds.heldOrder[mould]!];
  if (pour === NONE) {
    placed.firstStripStart[mould] = start;
    placed.firstReadyAt[mould] = readyAt;
    placed.firstOrder[mould] = order;
  } else {
    placed.pourStripStart[pour] = start;
    placed.pourReadyAt[pour] = readyAt;
  }
  moulds.held[mould] = NONE;
  moulds.dirty[mould] = 1;
  moulds.freeAt[mould] = Math.max(end, moulds.freeAt[mould]!);
  if (order === NONE) return;
  orders.readyAt[order] = Math.max(orders.readyAt[order]!, readyAt);
  orders.unstripped[order] = orders.unstripped[order]! - 1;
  if (orders.unstripped[order] === 0) completeOrder(at, order);
};

const stripIfItFits = (at: Placing, mould: number): boolean => {
  const start = stripStart(at, mould);
  if (start === NONE) return false;
  takeStrip(at, mould, start);
  recordStrip(at, mould, start);
  return true;
};

/** True when an order waits for nothing but this piece and others in moulds, and stripping later would make it later. */
const holdsOrderUp = (at: Placing, mould: number, nextStripFrom: number): boolean => {
  const order = at.moulds.heldOrder[mould]!;
  return order !== NONE && at.orders.unpoured[order] === 0 && at.moulds.curedAt[mould]! < nextStripFrom;
};

const nextStripFrom = (at: Placing): number => {
  const next = at.problem.shifts.nextStrip[at.shift]!;
  return next < at.problem.shifts.count ? at.problem.shifts.from[next]! : NEVER;
};

/** Strips all that is out by now. */
export const stripDue = (at: Placing): void => {
  for (let k = 0; k < at.moulds.held.length; k++)
    if (at.moulds.held[k] !== NONE && at.moulds.outAt[k]! <= at.timeline.firstFree) stripIfItFits(at, k);
};

/** Strips first what orders wait for that are otherwise finished. */
export const stripAwaited = (at: Placing): void => {
  const next = nextStripFrom(at);
  for (let k = 0; k < at.moulds.held.length; k++)
    if (at.moulds.held[k] !== NONE && at.moulds.outAt[k]! < at.timeline.to && holdsOrderUp(at, k, next))
      stripIfItFits(at, k);
};

const isWanted = (at: Placing, mould: number): boolean => {
  if (at.moulds.freeAt[mould]! >= NEVER) return false;
  return at.problem.moulds[mould]!.makes.some((x) => at.demand.need[x.casting]! > 0);
};

/**
 * Strips what is left once the batches of a shift are placed: moulds that are wanted again first. Where the rack is
 * limited a piece whose mould nobody wants stays in it until it is ready and takes no room.
 */
export const stripRest = (at: Placing): void => {
  const { moulds, timeline, problem } = at;
  const next = nextStripFrom(at);
  const last = next >= NEVER;
  for (const wanted of [true, false])
    for (let k = 0; k < moulds.held.length; k++) {
      if (moulds.held[k] === NONE || moulds.outAt[k]! >= timeline.to || timeline.firstFree >= timeline.to) continue;
      if (wanted !== isWanted(at, k)) continue;
      const waits = !last && problem.rackSpaces < NEVER && moulds.curedAt[k]! > timeline.to;
      if (!wanted && waits && !holdsOrderUp(at, k, next)) continue;
      stripIfItFits(at, k);
    }
};
