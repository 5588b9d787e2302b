import { outAt } from '../book/curing-times.ts';
import { applyFixed } from './apply-fixed.ts';
import { placeBatch } from './batch.ts';
import { workByHand } from './by-hand.ts';
import { packWaiting } from './complete.ts';
import { composeBatch, type Filling, fullestKg, leadCasting, mostPiecesNow } from './compose.ts';
import { dealLots } from './deal-lots.ts';
import type { DecoderState } from './decoder-state.ts';
import { beginOpenings, type Openings } from './opening-list.ts';
import { listOpenings } from './openings.ts';
import { coatAhead, prepAhead } from './prep.ts';
import { BATCH, NEVER, NONE } from './problem.ts';
import { stripAwaited, stripDue, stripRest } from './strip.ts';

/** Shifts in a row that a mix may wait for a fuller batch; after that it goes out as it is. */
const MOST_WAITS = 2;

const kgOf = (state: DecoderState, fillings: Filling[]): number =>
  fillings.reduce((n, f) => n + state.problem.castings[f.casting]!.kg, 0);

/** The mass from which no batch round the lead waits for a fuller one, whatever that could hold; 0 where none waits. */
const neverWaitsFromKg = (state: DecoderState, lead: number): number => {
  const { leastFill } = state.choices;
  if (leastFill <= 0 || mostPiecesNow(state) > 0) return 0;
  return leastFill * state.problem.mixes[state.problem.castings[lead]!.mix]!.mostKg;
};

/** Least mass of a batch round the lead that does not wait for a fuller one; 0 where none waits. */
const leastKg = (state: DecoderState, lead: number): number => {
  const most = neverWaitsFromKg(state, lead);
  return most > 0 ? Math.min(state.choices.leastFill * fullestKg(state, lead), most) : 0;
};

/** The batch to pour next round the lead; empty when it is better left for a later shift. */
const chooseBatch = (state: DecoderState, lead: number, openings: Openings): Filling[] => {
  const mix = state.problem.castings[lead]!.mix;
  const soon = composeBatch(state, lead, openings, state.choices.waitMinutes);
  if (soon.length === 0 || kgOf(state, soon) >= neverWaitsFromKg(state, lead)) return soon;
  const enough = leastKg(state, lead);
  if (kgOf(state, soon) >= enough) return soon;
  const later = composeBatch(state, lead, openings, NEVER - openings.soonest[lead]! - 1);
  if (kgOf(state, later) >= enough || state.waited[mix]! >= MOST_WAITS) return later;
  return [];
};

/** True when a batch mixed at the start of the shift could not be stripped in it. */
const isSlow = (state: DecoderState, mix: number): boolean => {
  const mixed = state.problem.mixes[mix]!;
  return outAt(mixed, state.timeline.from + mixed.mixMinutes) >= state.timeline.to;
};

/** Whether what is left of a batch, its materials having run short, goes out as it is; or else waits for more. */
const isEnough = (state: DecoderState, left: Filling[]): boolean => {
  if (!state.choices.leastFillInHand) return true;
  const lead = left[0]!.casting;
  const { mix } = state.problem.castings[lead]!;
  if (state.problem.mixes[mix]!.scarceUntil <= state.timeline.from) return true;
  const kg = kgOf(state, left);
  return kg >= neverWaitsFromKg(state, lead) || kg >= leastKg(state, lead);
};

/** Places a batch, giving up the pieces that are ready last until what is left fits. */
const placeWhatFits = (state: DecoderState, fillings: Filling[]): boolean => {
  const late = state.choices.slowMixesLate && isSlow(state, state.problem.castings[fillings[0]!.casting]!.mix);
  const left = [...fillings];
  while (left.length > 0) {
    if ((late && placeBatch(state, left, true)) || placeBatch(state, left, false)) return true;
    let last = left.length - 1;
    for (let i = last - 1; i > 0; i--) if (left[i]!.readyAt > left[last]!.readyAt) last = i;
    left.splice(last, 1);
    if (left.length > 0 && !isEnough(state, left)) return false;
  }
  return false;
};

const blockMix = (state: DecoderState, mix: number): void => {
  for (const c of state.problem.mixes[mix]!.castings) state.blocked[c] = 1;
};

/** The casting to pour next, with the openings listed; by hand from empty moulds while there are any. */
const nextLead = (state: DecoderState, openings: Openings): number => {
  if (state.choices.inOrder) {
    stripDue(state);
    listOpenings(state, openings, true);
    const lead = leadCasting(state, openings);
    if (lead !== NONE) return lead;
  }
  listOpenings(state, openings);
  return leadCasting(state, openings);
};

/** Batches of one shift, one after another, until nothing more fits; with `fastOnly` none of mixes that are slow in it. */
const pourBatches = (state: DecoderState, fastOnly: boolean): void => {
  const { blocked, problem, openings } = state;
  blocked.fill(0);
  for (let mix = 0; mix < problem.mixes.length; mix++)
    if (mix === state.choices.heldMix || (fastOnly && isSlow(state, mix))) blockMix(state, mix);
  const waitedBefore = Int32Array.from(state.waited);
  for (;;) {
    const lead = nextLead(state, openings);
    if (lead === NONE) return;
    const mix = problem.castings[lead]!.mix;
    const fillings = chooseBatch(state, lead, openings);
    if (fillings.length === 0) {
      blockMix(state, mix);
      state.waited[mix] = waitedBefore[mix]! + 1;
    } else if (placeWhatFits(state, fillings)) state.waited[mix] = 0;
    else blocked[lead] = 1;
  }
};

const allowsBatch = (state: DecoderState): boolean => {
  const { offset, allow } = state.problem.shifts;
  for (let i = offset[state.shift]!; i < offset[state.shift + 1]!; i++) if (allow[i]! & BATCH) return true;
  return false;
};

/**
 * Plans one shift: what orders wait for first, then batches in the order of the sequence, then with the time left what
 * else can be stripped, packed and set up for the next session.
 */
export const workShift = (state: DecoderState, shift: number): void => {
  state.shift = shift;
  state.batchesBefore = state.placed.batches;
  state.timeline.enter(shift);
  state.rack.clearReady(state.timeline.from);
  dealLots(state);
  applyFixed(state);
  beginOpenings(state.openings);
  const mayPour = allowsBatch(state);
  if (state.choices.byHand && mayPour) {
    workByHand(state);
    return;
  }
  stripAwaited(state);
  packWaiting(state, true);
  if (state.choices.stripFirst) stripRest(state);
  if (state.choices.coatFirst) coatAhead(state);
  const pours = !state.choices.noPours && mayPour;
  if (pours && state.choices.aheadFirst && state.demand.total > 0) {
    pourBatches(state, true);
    stripRest(state);
    prepAhead(state);
  }
  if (pours && state.demand.total > 0) pourBatches(state, false);
  if (!state.choices.leaveInMoulds) stripRest(state);
  packWaiting(state, false);
  if (state.demand.total > 0 && !state.choices.noAhead) prepAhead(state);
};
