import { applyKept } from './apply-fixed.ts';
import { placeBatch } from './batch.ts';
import { packWaiting } from './complete.ts';
import { composeBatch, type Filling, fullestKg, leadCasting, mostPiecesNow } from './compose.ts';
import type { Placing } from './decoder-state.ts';
import { listOpenings, type Openings } from './openings.ts';
import { coatAhead, prepAhead } from './prep.ts';
import { BATCH, NEVER, NONE } from './problem.ts';
import { stripAwaited, stripDue, stripRest } from './strip.ts';

/** Shifts in a row that a mix may wait for a fuller batch; after that it goes out as it is. */
const MOST_WAITS = 2;

const kgOf = (at: Placing, fillings: Filling[]): number =>
  fillings.reduce((n, f) => n + at.problem.castings[f.casting]!.kg, 0);

/** The batch to pour next round the lead; empty when it is better left for a later shift. */
const chooseBatch = (at: Placing, lead: number, openings: Openings): Filling[] => {
  const { leastFill, waitMinutes } = at.choices;
  const mix = at.problem.castings[lead]!.mix;
  const soon = composeBatch(at, lead, openings, waitMinutes);
  if (leastFill <= 0 || mostPiecesNow(at) > 0 || soon.length === 0) return soon;
  const enough = Math.min(leastFill * fullestKg(at, lead), leastFill * at.problem.mixes[mix]!.mostKg);
  if (kgOf(at, soon) >= enough) return soon;
  const later = composeBatch(at, lead, openings, NEVER - openings.soonest[lead]! - 1);
  if (kgOf(at, later) >= enough || at.waited[mix]! >= MOST_WAITS) return later;
  return [];
};

/** True when a batch mixed at the start of the shift could not be stripped in it. */
const isSlow = (at: Placing, mix: number): boolean => {
  const { ageing, mixMinutes, demouldMinutes } = at.problem.mixes[mix]!;
  return ageing.whenAged(at.timeline.from + mixMinutes, demouldMinutes) >= at.timeline.to;
};

/** Places a batch, giving up the pieces that are ready last until what is left fits. */
const placeWhatFits = (at: Placing, fillings: Filling[]): boolean => {
  const late = at.choices.slowMixesLate && isSlow(at, at.problem.castings[fillings[0]!.casting]!.mix);
  const left = [...fillings];
  while (left.length > 0) {
    if ((late && placeBatch(at, left, true)) || placeBatch(at, left, false)) return true;
    let last = left.length - 1;
    for (let i = last - 1; i > 0; i--) if (left[i]!.readyAt > left[last]!.readyAt) last = i;
    left.splice(last, 1);
  }
  return false;
};

const blockMix = (at: Placing, mix: number): void => {
  for (const c of at.problem.mixes[mix]!.castings) at.blocked[c] = 1;
};

/** The casting to pour next, with the openings listed; by hand from empty moulds while there are any. */
const nextLead = (at: Placing, openings: Openings): number => {
  if (at.choices.inOrder) {
    stripDue(at);
    listOpenings(at, openings, true);
    const lead = leadCasting(at, openings);
    if (lead !== NONE) return lead;
  }
  listOpenings(at, openings);
  return leadCasting(at, openings);
};

/** Batches of one shift, one after another, until nothing more fits; with `fastOnly` none of mixes that are slow in it. */
const pourBatches = (at: Placing, fastOnly: boolean): void => {
  const { blocked, problem, openings } = at;
  blocked.fill(0);
  for (let mix = 0; mix < problem.mixes.length; mix++)
    if (mix === at.choices.heldMix || (fastOnly && isSlow(at, mix))) blockMix(at, mix);
  const waitedBefore = Int32Array.from(at.waited);
  for (;;) {
    const lead = nextLead(at, openings);
    if (lead === NONE) return;
    const mix = problem.castings[lead]!.mix;
    const fillings = chooseBatch(at, lead, openings);
    if (fillings.length === 0) {
      blockMix(at, mix);
      at.waited[mix] = waitedBefore[mix]! + 1;
    } else if (placeWhatFits(at, fillings)) at.waited[mix] = 0;
    else blocked[lead] = 1;
  }
};

const allowsBatch = (at: Placing): boolean => {
  const { offset, allow } = at.problem.shifts;
  for (let i = offset[at.shift]!; i < offset[at.shift + 1]!; i++) if (allow[i]! & BATCH) return true;
  return false;
};

/**
 * Plans one shift: what orders wait for first, then batches in the order of the sequence, then with the time left what
 * else can be stripped, packed and set up for the next session.
 */
export const workShift = (at: Placing, shift: number): void => {
  at.shift = shift;
  at.batchesBefore = at.placed.batches;
  at.timeline.enter(shift);
  at.rack.clearReady(at.timeline.from);
  applyKept(at);
  stripAwaited(at);
  packWaiting(at, true);
  if (at.choices.stripFirst) stripRest(at);
  if (at.choices.coatFirst) coatAhead(at);
  const pours = !at.choices.noPours && allowsBatch(at);
  if (pours && at.choices.aheadFirst && at.demand.total > 0) {
    pourBatches(at, true);
    stripRest(at);
    prepAhead(at);
  }
  if (pours && at.demand.total > 0) pourBatches(at, false);
  if (!at.choices.leaveInMoulds) stripRest(at);
  packWaiting(at, false);
  if (at.demand.total > 0 && !at.choices.noAhead) prepAhead(at);
};
