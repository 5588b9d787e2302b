import { completeOrder } from './complete.ts';
import type { DecoderState } from './decoder-state.ts';
import { pourAnew } from './pour-anew.ts';
import { NEVER, NONE, STRIP } from './problem.ts';

/**
 * Earliest start of stripping a mould in this shift, its piece out by age (R7), people and rack allowing; NONE when it
 * cannot be, or is fixed for a minute of its own. Nothing is taken yet.
 */
export const stripStart = (state: DecoderState, mould: number): number => {
  if (state.moulds.stripAt[mould] !== NONE) return NONE;
  const casting = state.problem.castings[state.moulds.held[mould]!]!;
  const out = Math.max(state.moulds.outAt[mould]!, state.timeline.from);
  const end = state.rack.roomFrom(out + casting.stripMinutes, state.moulds.curedAt[mould]!, casting.rackSpaces);
  return state.timeline.earliest(STRIP, casting.stripMinutes, casting.stripCrew, end - casting.stripMinutes);
};

/** Takes the people and the rack for a strip; `untakeStrip` puts the last one back. */
export const takeStrip = (state: DecoderState, mould: number, start: number): void => {
  const casting = state.problem.castings[state.moulds.held[mould]!]!;
  state.timeline.take(start, casting.stripMinutes, casting.stripCrew);
  const end = start + casting.stripMinutes;
  state.rack.put(
    Math.max(end, state.moulds.curedAt[mould]!),
    end < state.moulds.curedAt[mould]! ? casting.rackSpaces : 0,
  );
};

/** Gives people and rack of the strip taken last back. Only the last one can be: the rack is a stack. */
export const untakeStrip = (state: DecoderState, mould: number, start: number): void => {
  const casting = state.problem.castings[state.moulds.held[mould]!]!;
  state.timeline.giveBack(start, casting.stripMinutes, casting.stripCrew);
  state.rack.takeBack(start + casting.stripMinutes < state.moulds.curedAt[mould]! ? casting.rackSpaces : 0);
};

/** Places a strip whose people and rack are taken: the piece goes to its order, the mould is empty and dirty. */
export const placeStrip = (state: DecoderState, mould: number, start: number): void => {
  const { moulds, placed, orders } = state;
  const casting = moulds.held[mould]!;
  const end = start + state.problem.castings[casting]!.stripMinutes;
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
  moulds.stripAt[mould] = NONE;
  moulds.dirty[mould] = 1;
  moulds.freeAt[mould] = Math.max(end, moulds.freeAt[mould]!);
  if (order === NONE) return;
  if (state.isSpoiled?.(mould, casting)) {
    pourAnew(state, order, casting);
    return;
  }
  orders.readyAt[order] = Math.max(orders.readyAt[order]!, readyAt);
  orders.unstripped[order] = orders.unstripped[order]! - 1;
  if (orders.unstripped[order] === 0) completeOrder(state, order);
};

const stripIfItFits = (state: DecoderState, mould: number): boolean => {
  const start = stripStart(state, mould);
  if (start === NONE) return false;
  takeStrip(state, mould, start);
  placeStrip(state, mould, start);
  return true;
};

/** True when an order waits for nothing but this piece and others in moulds, and stripping later would make it later. */
const holdsOrderUp = (state: DecoderState, mould: number, nextStripFrom: number): boolean => {
  const order = state.moulds.heldOrder[mould]!;
  return order !== NONE && state.orders.unpoured[order] === 0 && state.moulds.curedAt[mould]! < nextStripFrom;
};

const nextStripFrom = (state: DecoderState): number => {
  const next = state.problem.shifts.nextStrip[state.shift]!;
  return next < state.problem.shifts.count ? state.problem.shifts.from[next]! : NEVER;
};

/** Strips all that is out by a minute; left out: by now, which each strip sets on. */
export const stripDue = (state: DecoderState, by?: number): void => {
  const { held, outAt } = state.moulds;
  for (let k = 0; k < held.length; k++)
    if (held[k] !== NONE && outAt[k]! <= (by ?? state.timeline.firstFree)) stripIfItFits(state, k);
};

/** Strips first what orders wait for that are otherwise finished. */
export const stripAwaited = (state: DecoderState): void => {
  const next = nextStripFrom(state);
  for (let k = 0; k < state.moulds.held.length; k++)
    if (state.moulds.held[k] !== NONE && state.moulds.outAt[k]! < state.timeline.to && holdsOrderUp(state, k, next))
      stripIfItFits(state, k);
};

const isWanted = (state: DecoderState, mould: number): boolean => {
  if (state.moulds.freeAt[mould]! >= NEVER) return false;
  return state.problem.moulds[mould]!.makes.some((x) => state.demand.need[x.casting]! > 0);
};

/**
 * Strips what is left once the batches of a shift are placed: moulds that are wanted again first. Where the rack is
 * limited a piece whose mould nobody wants stays in it until it is ready and takes no room.
 */
export const stripRest = (state: DecoderState): void => {
  const { moulds, timeline, problem } = state;
  const next = nextStripFrom(state);
  const last = next >= NEVER;
  for (const wanted of [true, false])
    for (let k = 0; k < moulds.held.length; k++) {
      if (moulds.held[k] === NONE || moulds.outAt[k]! >= timeline.to || timeline.firstFree >= timeline.to) continue;
      if (wanted !== isWanted(state, k)) continue;
      const waits = !last && problem.rackSpaces < NEVER && moulds.curedAt[k]! > timeline.to;
      if (!wanted && waits && !holdsOrderUp(state, k, next)) continue;
      stripIfItFits(state, k);
    }
};
