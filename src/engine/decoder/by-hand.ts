import { placeBatch } from './batch.ts';
import { packWaiting } from './complete.ts';
import type { Filling } from './compose.ts';
import type { DecoderState } from './decoder-state.ts';
import { listOpenings } from './openings.ts';
import { prepAhead } from './prep.ts';
import { NEVER, NONE } from './problem.ts';
import { stripDue, stripRest } from './strip.ts';

/** Castings that have openings, in the order of the sequence. */
const castingsInOrder = ({ openings, orders, demand }: DecoderState): number[] => {
  const castings: number[] = [];
  for (let c = 0; c < openings.soonest.length; c++) if (openings.soonest[c]! < NEVER) castings.push(c);
  const place = (c: number) => orders.place[demand.order[demand.head[c]!]!]!;
  return castings.sort((a, b) => place(a) - place(b) || a - b);
};

/** The opening of a casting with the least work whose mould is not taken yet; NONE without one. */
const easiestOf = ({ openings }: DecoderState, casting: number, taken: ReadonlySet<number>): number => {
  let best = NONE;
  for (let i = openings.first[casting]!; i !== NONE; i = openings.next[i]!)
    if (best === NONE || openings.work[i]! < openings.work[best]!) if (!taken.has(openings.mould[i]!)) best = i;
  return best;
};

/** Pieces of one mix from empty moulds, in the order of the sequence, until the batch is full. */
const fillOneBatch = (state: DecoderState): Filling[] => {
  const { openings, demand, problem } = state;
  const fillings: Filling[] = [];
  const taken = new Set<number>();
  let [kg, minutes, mix] = [0, 0, NONE];
  for (const c of castingsInOrder(state)) {
    const casting = problem.castings[c]!;
    const { mostKg, workingMinutes } = problem.mixes[casting.mix]!;
    if (mix !== NONE && casting.mix !== mix) continue;
    for (let count = 0; count < demand.need[c]!; count++) {
      if (kg + casting.kg > mostKg + 1e-9 || minutes + casting.fillMinutes > workingMinutes) break;
      const i = easiestOf(state, c, taken);
      if (i === NONE) break;
      const mould = openings.mould[i]!;
      fillings.push({ mould, casting: c, readyAt: openings.readyAt[i]! });
      [kg, minutes, mix] = [kg + casting.kg, minutes + casting.fillMinutes, casting.mix];
      taken.add(mould);
    }
  }
  return fillings;
};

/** Pours the next batch, less its last pieces where all do not fit; false when there is none to pour. */
const pourOne = (state: DecoderState): boolean => {
  const fillings = fillOneBatch(state);
  const lead = fillings[0]?.casting;
  while (fillings.length > 0) {
    if (placeBatch(state, fillings, false)) return true;
    fillings.pop();
  }
  if (lead !== undefined) state.blocked[lead] = 1;
  return lead !== undefined;
};

/** The next minute at which a mould that is curing now could be stripped; NEVER when none is. */
const nextOut = ({ moulds }: DecoderState, after: number): number => {
  let next = NEVER;
  for (let k = 0; k < moulds.held.length; k++)
    if (moulds.held[k] !== NONE && moulds.outAt[k]! > after) next = Math.min(next, moulds.outAt[k]!);
  return next;
};

/**
 * A shift as a maker with a whiteboard works it: strip what is due, set up empty moulds for the first order of the sequence,
 * then for the next, until one batch is full; pour it; look again when something is due. Nothing waits for a fuller batch.
 * Sessions that are long against the cure are sometimes better worked like this than by anything that looks ahead.
 */
export const workByHand = (state: DecoderState): void => {
  const { timeline, choices } = state;
  state.blocked.fill(0);
  let clock = timeline.firstFree;
  stripDue(state, clock);
  packWaiting(state, true);
  while (clock < timeline.to) {
    listOpenings(state, state.openings, true);
    if (!pourOne(state)) clock = nextOut(state, clock);
    clock = Math.max(clock, timeline.firstFree);
    if (clock < timeline.to) stripDue(state, clock);
  }
  stripRest(state);
  packWaiting(state, false);
  if (state.demand.total > 0 && !choices.noAhead) prepAhead(state);
};
