import { askForBatch } from './ask-batch.ts';
import type { Placing } from './decoder-state.ts';
import type { KeptBatch, KeptPour } from './fixed.ts';
import { recordPour } from './place-pour.ts';
import { recordPrep } from './prep.ts';
import { NONE } from './problem.ts';
import { recordStrip } from './strip.ts';

type Step = { at: number; kind: 'strip' | 'prep'; pour: KeptPour } | { at: number; kind: 'batch'; batch: KeptBatch };

/** Everything firm in order of time; of steps at one minute, a strip comes before a set-up and that before the batch. */
const stepsOf = (batches: KeptBatch[]): Step[] => {
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

const stepsByProblem = new WeakMap<KeptBatch[], Step[]>();
const steps = (batches: KeptBatch[]): Step[] => {
  const known = stepsByProblem.get(batches) ?? stepsOf(batches);
  stepsByProblem.set(batches, known);
  return known;
};

/** Before the first shift: moulds that firm pours wait for, and the rack and materials they will take. */
export const reserveKept = (at: Placing): void => {
  const { batches } = at.problem.kept;
  at.moulds.reserved.fill(0);
  for (const batch of batches) {
    for (const pour of batch.pours) {
      at.moulds.reserved[pour.mould] = at.moulds.reserved[pour.mould]! + 1;
      if (pour.rackUntil !== NONE) at.rack.put(pour.rackUntil, pour.rackSpaces);
    }
    askForBatch(at.problem, at.stock, batch);
    at.stock.use(batch.start);
  }
};

const prepKept = (at: Placing, pour: KeptPour): void => {
  const { moulds, demand, timeline } = at;
  timeline.take(pour.prepStart, pour.prepMinutes, 1);
  const before = moulds.preppedFor[pour.mould]!;
  if (before !== NONE) demand.prepped[before] = demand.prepped[before]! - 1;
  recordPrep(at, pour.mould, pour.casting, pour.prepStart, pour.prepMinutes, pour.coated);
};

const batchKept = (at: Placing, batch: KeptBatch): void => {
  const { placed, timeline, problem } = at;
  const mix = problem.mixes[batch.mix]!;
  timeline.take(batch.start, batch.minutes, mix.crew);
  timeline.takeMixer(batch.start, mix.mixMinutes);
  const index = placed.batches++;
  placed.batchMix[index] = batch.mix;
  placed.batchStart[index] = batch.start;
  placed.batchEnd[index] = batch.start + batch.minutes;
  placed.batchKg[index] = batch.kg;
  placed.batchBags[index] = batch.bags;
  placed.batchKept[index] = problem.kept.batches.indexOf(batch);
  for (const pour of batch.pours) {
    recordPour(at, pour.mould, pour.casting, index, pour.fillStart);
    at.moulds.reserved[pour.mould] = at.moulds.reserved[pour.mould]! - 1;
  }
};

/** Places what is firm in the shift entered before anything else is placed in it. */
export const applyKept = (at: Placing): void => {
  const { batches } = at.problem.kept;
  if (batches.length === 0) return;
  for (const step of steps(batches)) {
    if (step.at < at.timeline.from || step.at >= at.timeline.to) continue;
    if (step.kind === 'batch') batchKept(at, step.batch);
    else if (step.kind === 'prep') prepKept(at, step.pour);
    else if (at.moulds.held[step.pour.mould] !== NONE) {
      const { stripMinutes, stripCrew } = at.problem.castings[at.moulds.held[step.pour.mould]!]!;
      at.timeline.take(step.at, stripMinutes, stripCrew);
      recordStrip(at, step.pour.mould, step.at);
    }
  }
};
