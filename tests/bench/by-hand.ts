import { placeBatch } from '../../src/engine/decoder/batch.ts';
import { packWaiting } from '../../src/engine/decoder/complete.ts';
import type { Filling } from '../../src/engine/decoder/compose.ts';
import { type DecoderState, decoderStateOf } from '../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../src/engine/decoder/dispatch.ts';
import { listOpenings } from '../../src/engine/decoder/openings.ts';
import { NEVER, NONE, type Problem } from '../../src/engine/decoder/problem.ts';
import { resetState } from '../../src/engine/decoder/start.ts';
import { placeStrip, stripRest, stripStart, takeStrip } from '../../src/engine/decoder/strip.ts';
import { earliestDueFirst } from '../../src/engine/search/rules.ts';

/**
 * The plan a maker makes with a whiteboard, to measure ours by; used by nothing but the bench. Earliest due date first;
 * strip whatever is due; set up empty moulds for the earliest order, then for the next, until one batch is full; pour; no
 * looking ahead: nothing is set up for the next session, nothing waits for a fuller batch.
 */
export const planByHand = (
  problem: Problem,
  sequence: Int32Array = earliestDueFirst(problem),
  excluded?: Uint8Array,
): DecoderState => {
  const state = decoderStateOf(problem, dispatchOf(sequence));
  if (excluded) state.orders.excluded.set(excluded);
  resetState(state);
  for (let s = 0; s < problem.shifts.count && (state.orders.open > 0 || state.moulds.held.some((c) => c !== NONE)); s++)
    workByHand(state, s);
  return state;
};

const stripWhatIsDue = (state: DecoderState, by: number): void => {
  for (let k = 0; k < state.moulds.held.length; k++) {
    if (state.moulds.held[k] === NONE || state.moulds.outAt[k]! > by) continue;
    const start = stripStart(state, k);
    if (start === NONE) continue;
    takeStrip(state, k, start);
    placeStrip(state, k, start);
  }
};

/** Pieces of one mix from empty moulds, in the order of the sequence, until the batch is full. */
const fillInOrder = (state: DecoderState): Filling[] => {
  const { openings, orders, demand, problem } = state;
  const rows = Array.from({ length: openings.count }, (_, i) => i).filter(
    (i) => state.moulds.held[openings.mould[i]!] === NONE,
  );
  const place = (i: number) => orders.place[demand.order[demand.head[openings.casting[i]!]!]!]!;
  rows.sort(
    (a, b) =>
      place(a) - place(b) ||
      openings.casting[a]! - openings.casting[b]! ||
      openings.work[a]! - openings.work[b]! ||
      a - b,
  );
  const fillings: Filling[] = [];
  const used = new Map<number, number>();
  const moulds = new Set<number>();
  let [kg, minutes, mix] = [0, 0, NONE];
  for (const i of rows) {
    const casting = problem.castings[openings.casting[i]!]!;
    const of = problem.mixes[casting.mix]!;
    const count = used.get(openings.casting[i]!) ?? 0;
    if (
      (mix !== NONE && casting.mix !== mix) ||
      moulds.has(openings.mould[i]!) ||
      count >= demand.need[openings.casting[i]!]!
    )
      continue;
    if (kg + casting.kg > of.mostKg + 1e-9 || minutes + casting.fillMinutes > of.workingMinutes) continue;
    fillings.push({ mould: openings.mould[i]!, casting: openings.casting[i]!, readyAt: openings.readyAt[i]! });
    [kg, minutes, mix] = [kg + casting.kg, minutes + casting.fillMinutes, casting.mix];
    moulds.add(openings.mould[i]!);
    used.set(openings.casting[i]!, count + 1);
  }
  return fillings;
};

const pourOne = (state: DecoderState): boolean => {
  const fillings = fillInOrder(state);
  const lead = fillings[0]?.casting;
  while (fillings.length > 0) {
    if (placeBatch(state, fillings, false)) return true;
    fillings.pop();
  }
  if (lead !== undefined) state.blocked[lead] = 1;
  return lead !== undefined;
};

/** The next minute at which a mould that is curing now could be stripped in this shift. */
const nextOut = (state: DecoderState, after: number): number => {
  let next = NEVER;
  for (let k = 0; k < state.moulds.held.length; k++)
    if (state.moulds.held[k] !== NONE && state.moulds.outAt[k]! > after) next = Math.min(next, state.moulds.outAt[k]!);
  return next;
};

const workByHand = (state: DecoderState, shift: number): void => {
  state.shift = shift;
  state.timeline.enter(shift);
  state.rack.clearReady(state.timeline.from);
  state.blocked.fill(0);
  let clock = state.timeline.firstFree;
  stripWhatIsDue(state, clock);
  packWaiting(state, true);
  while (clock < state.timeline.to) {
    listOpenings(state, state.openings);
    if (!pourOne(state)) clock = nextOut(state, clock);
    clock = Math.max(clock, state.timeline.firstFree);
    if (clock < state.timeline.to) stripWhatIsDue(state, clock);
  }
  stripRest(state);
  packWaiting(state, false);
};
