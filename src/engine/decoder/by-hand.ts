import { placeBatch } from './batch.ts';
import { packWaiting } from './complete.ts';
import type { Filling } from './compose.ts';
import type { DecoderState } from './decoder-state.ts';
import { listOpenings } from './openings.ts';
import { prepAhead } from './prep.ts';
import { NEVER, NONE } from './problem.ts';
import { stripDue, stripRest } from './strip.ts';

/** Openings of empty moulds: what the sequence wants first in front, of equals the least work. */
const emptyInOrder = ({ openings, moulds, orders, demand }: DecoderState): number[] => {
  const rows = Array.from({ length: openings.count }, (_, i) => i).filter(
    (i) => moulds.held[openings.mould[i]!] === NONE,
  );
  const place = (i: number) => orders.place[demand.order[demand.head[openings.casting[i]!]!]!]!;
  return rows.sort(
    (a, b) =>
      place(a) - place(b) ||
      openings.casting[a]! - openings.casting[b]! ||
      openings.work[a]! - openings.work[b]! ||
      a - b,
  );
};

/** Pieces of one mix from empty moulds, in the order of the sequence, until the batch is full. */
const fillOneBatch = (state: DecoderState): Filling[] => {
  const { openings, demand, problem } = state;
  const fillings: Filling[] = [];
  const used = new Map<number, number>();
  const moulds = new Set<number>();
  let [kg, minutes, mix] = [0, 0, NONE];
  for (const i of emptyInOrder(state)) {
    const [c, k] = [openings.casting[i]!, openings.mould[i]!];
    const casting = problem.castings[c]!;
    const { mostKg, workingMinutes } = problem.mixes[casting.mix]!;
    const count = used.get(c) ?? 0;
    if ((mix !== NONE && casting.mix !== mix) || moulds.has(k) || count >= demand.need[c]!) continue;
    if (kg + casting.kg > mostKg + 1e-9 || minutes + casting.fillMinutes > workingMinutes) continue;
    fillings.push({ mould: k, casting: c, readyAt: openings.readyAt[i]! });
    [kg, minutes, mix] = [kg + casting.kg, minutes + casting.fillMinutes, casting.mix];
    moulds.add(k);
    used.set(c, count + 1);
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
    listOpenings(state, state.openings);
    if (!pourOne(state)) clock = nextOut(state, clock);
    clock = Math.max(clock, timeline.firstFree);
    if (clock < timeline.to) stripDue(state, clock);
  }
  stripRest(state);
  packWaiting(state, false);
  if (state.demand.total > 0 && !choices.noAhead) prepAhead(state);
};
