import { askForBatch } from './ask-batch.ts';
import type { DecoderState } from './decoder-state.ts';
import type { FixedBatch, FixedPour } from './fixed-batch.ts';
import { placePour } from './place-pour.ts';
import { placePrep } from './prep.ts';
import { NONE } from './problem.ts';
import { placeStrip } from './strip.ts';

type Step = { at: number; kind: 'strip' | 'prep'; pour: FixedPour } | { at: number; kind: 'batch'; batch: FixedBatch };

/** Everything fixed in order of time; of steps at one minute, a strip comes before a set-up and that before the batch. */
const stepsOf = (batches: FixedBatch[]): Step[] => {
  const steps: Step[] = [];
  for (const batch of batches) {
    for (const pour of batch.pours) {
      if (pour.stripFirst !== NONE) steps.push({ at: pour.stripFirst, kind: 'strip', pour });
      steps.push({ at: pour.prepStart, kind: 'prep', pour });
    }
    steps.push({ at: batch.start, kind: 'batch', batch });
  }
  const rank = { strip: 0, prep: 1, batch: 2 };
  return steps.sort((a, b) => a.at - b.at || rank[a.kind] - rank[b.kind]);
};

const stepsByProblem = new WeakMap<FixedBatch[], Step[]>();
const steps = (batches: FixedBatch[]): Step[] => {
  const known = stepsByProblem.get(batches) ?? stepsOf(batches);
  stepsByProblem.set(batches, known);
  return known;
};

/** Before the first shift: moulds that fixed pours wait for, and the rack and materials they will take. */
export const reserveFixed = (state: DecoderState): void => {
  const { batches } = state.problem.fixed;
  state.moulds.reserved.fill(0);
  for (const batch of batches) {
    for (const pour of batch.pours) {
      state.moulds.reserved[pour.mould] = state.moulds.reserved[pour.mould]! + 1;
      if (pour.rackUntil !== NONE) state.rack.put(pour.rackUntil, pour.rackSpaces);
    }
    askForBatch(state.problem, state.stock, batch);
    state.stock.use(batch.start);
  }
};

const prepFixed = (state: DecoderState, pour: FixedPour): void => {
  const { moulds, demand, timeline } = state;
  timeline.take(pour.prepStart, pour.prepMinutes, 1);
  const before = moulds.preppedFor[pour.mould]!;
  if (before !== NONE) demand.prepped[before] = demand.prepped[before]! - 1;
  placePrep(state, pour.mould, pour.casting, pour.prepStart, pour.prepMinutes, pour.coated);
};

const batchFixed = (state: DecoderState, batch: FixedBatch): void => {
  const { placed, timeline, problem } = state;
  const mix = problem.mixes[batch.mix]!;
  timeline.take(batch.start, batch.minutes, mix.crew);
  timeline.takeMixer(batch.start, mix.mixMinutes);
  const index = placed.batches++;
  placed.batchMix[index] = batch.mix;
  placed.batchStart[index] = batch.start;
  placed.batchEnd[index] = batch.start + batch.minutes;
  placed.batchKg[index] = batch.kg;
  placed.batchBags[index] = batch.bags;
  placed.batchFixed[index] = problem.fixed.batches.indexOf(batch);
  for (const pour of batch.pours) {
    placePour(state, pour.mould, pour.casting, index, pour.fillStart);
    state.moulds.reserved[pour.mould] = state.moulds.reserved[pour.mould]! - 1;
  }
};

/** Places what is fixed in the shift entered before anything else is placed in it. */
export const applyFixed = (state: DecoderState): void => {
  const { batches } = state.problem.fixed;
  if (batches.length === 0) return;
  for (const step of steps(batches)) {
    if (step.at < state.timeline.from || step.at >= state.timeline.to) continue;
    if (step.kind === 'batch') batchFixed(state, step.batch);
    else if (step.kind === 'prep') prepFixed(state, step.pour);
    else if (state.moulds.held[step.pour.mould] !== NONE) {
      const { stripMinutes, stripCrew } = state.problem.castings[state.moulds.held[step.pour.mould]!]!;
      state.timeline.take(step.at, stripMinutes, stripCrew);
      placeStrip(state, step.pour.mould, step.at);
    }
  }
};
