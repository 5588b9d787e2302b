import { askForBatch } from './ask-batch.ts';
import { askParts } from './complete.ts';
import type { Deal } from './deal.ts';
import { takeAsStood } from './deal-as-stood.ts';
import { dealFixed, type Owners } from './deal-fixed.ts';
import type { DecoderState } from './decoder-state.ts';
import type { FixedBatch, FixedCoat, FixedPour, FixedPrep, FixedWork } from './fixed-batch.ts';
import { placePour } from './place-pour.ts';
import { placeCoat, placePrep } from './prep.ts';
import { NONE } from './problem.ts';
import { isInSpells } from './spells.ts';
import { placeStrip } from './strip.ts';

type Step = { at: number } & (
  | { kind: 'strip'; mould: number }
  | { kind: 'coat'; coat: FixedCoat; isReserved: boolean }
  | { kind: 'set up'; prep: FixedPrep }
  | { kind: 'prep'; pour: FixedPour }
  | { kind: 'batch'; batch: FixedBatch }
  | { kind: 'pack'; order: number; minutes: number }
);

/** Of steps at one minute, a strip comes before a coat, that before a set-up and that before the batch. */
const RANK = { strip: 0, coat: 1, prep: 2, 'set up': 2, batch: 3, pack: 4 };

const stepsOfBatch = (batch: FixedBatch): Step[] => [
  ...batch.pours.flatMap((pour): Step[] => [
    ...(pour.stripFirst === NONE ? [] : [{ at: pour.stripFirst, kind: 'strip' as const, mould: pour.mould }]),
    ...(pour.coat ? [{ at: pour.coat.start, kind: 'coat' as const, coat: pour.coat, isReserved: false }] : []),
    { at: pour.prepStart, kind: 'prep', pour },
  ]),
  { at: batch.start, kind: 'batch', batch },
];

/** Everything fixed that is still to come, in order of time. */
const stepsOf = ({ batches, strips, packs, preps, coats }: FixedWork): Step[] => {
  const steps: Step[] = [
    ...batches.filter(({ isBegun }) => !isBegun).flatMap(stepsOfBatch),
    ...strips.map(({ mould, start }): Step => ({ at: start, kind: 'strip', mould })),
    ...coats.map((coat): Step => ({ at: coat.start, kind: 'coat', coat, isReserved: true })),
    ...preps.map((prep): Step => ({ at: prep.start, kind: 'set up', prep })),
    ...packs.map(({ order, start, minutes }): Step => ({ at: start, kind: 'pack', order, minutes })),
  ];
  return steps.sort((a, b) => a.at - b.at || RANK[a.kind] - RANK[b.kind]);
};

const stepsByProblem = new WeakMap<FixedWork, Step[]>();
const steps = (fixed: FixedWork): Step[] => {
  const known = stepsByProblem.get(fixed) ?? stepsOf(fixed);
  stepsByProblem.set(fixed, known);
  return known;
};

const reserve = (state: DecoderState, mould: number, more: 1 | -1): void => {
  state.moulds.reserved[mould] = state.moulds.reserved[mould]! + more;
};

/** Before the first shift: moulds that fixed pours, set-ups and coats wait for, and the materials they will take. */
export const reserveFixed = (state: DecoderState): void => {
  const { batches, preps, coats, stripNow } = state.problem.fixed;
  state.moulds.reserved.fill(0);
  for (const [mould, start] of stripNow) state.moulds.stripAt[mould] = start;
  for (const { mould } of [...preps, ...coats]) reserve(state, mould, 1);
  for (const batch of batches) {
    if (batch.isBegun) continue;
    for (const { mould } of batch.pours) reserve(state, mould, 1);
    askForBatch(state.problem, state.stock, batch);
    state.stock.use(batch.start);
  }
};

/** Takes the parts of an order that is not packed, at the minute at which it was complete; it is as soon as they are there. */
const reserveParts = (state: DecoderState, { order, at }: Deal['parts'][number]): void => {
  const { orders, stock, problem } = state;
  if (orders.excluded[order]) return;
  askParts(state, order);
  const there = stock.earliest(problem.now);
  if (there > at) return;
  stock.use(at);
  orders.packAt[order] = there;
  orders.partsTaken[order] = 1;
};

const reservePack = (state: DecoderState, order: number, start: number): void => {
  const { orders, stock } = state;
  // Of several spells of an order the first takes its parts.
  if (orders.excluded[order] || (isInSpells(state, order) && orders.packAt[order] !== NONE)) return;
  askParts(state, order);
  stock.use(start);
  orders.packAt[order] = start;
  orders.partsTaken[order] = 1;
};

/** Before the first shift: when orders are packed, or have their parts without that, and the parts that this takes. */
export const reservePacks = (state: DecoderState): void => {
  const { orders, problem, dispatch } = state;
  orders.packAt.fill(NONE);
  orders.partsTaken.fill(0);
  for (const { order } of problem.begun.packs) if (order !== NONE) orders.partsTaken[order] = 1;
  const parts = dispatch.deal?.parts ?? [];
  let next = 0;
  for (const { order, start } of problem.fixed.packs) {
    while (next < parts.length && parts[next]!.at <= start) reserveParts(state, parts[next++]!);
    reservePack(state, order, start);
  }
  while (next < parts.length) reserveParts(state, parts[next++]!);
};

const forgetPrep = ({ moulds, demand }: DecoderState, mould: number): void => {
  const before = moulds.preppedFor[mould]!;
  if (before !== NONE) demand.prepped[before] = demand.prepped[before]! - 1;
  moulds.preppedFor[mould] = NONE;
};

const setUpFixed = (state: DecoderState, { mould, casting, start, minutes }: FixedPrep): void => {
  state.timeline.take(start, minutes, 1);
  forgetPrep(state, mould);
  placePrep(state, mould, casting, start, minutes);
};

/** A set-up that no fixed pour comes after: its mould waited for it. */
const setUpAlone = (state: DecoderState, prep: FixedPrep): void => {
  reserve(state, prep.mould, -1);
  setUpFixed(state, prep);
};

const prepFixed = (state: DecoderState, { mould, casting, prepStart, prepMinutes }: FixedPour): void => {
  // It was begun before now, and stays as it was.
  if (prepMinutes === 0 && state.moulds.preppedFor[mould] === casting && state.moulds.prepStart[mould] !== NONE) return;
  setUpFixed(state, { mould, casting, start: prepStart, minutes: prepMinutes });
};

/** Where it stands alone its mould waits for it; before a fixed pour the mould waits for that. */
const coatFixed = (state: DecoderState, { mould, start, minutes }: FixedCoat, isReserved: boolean): void => {
  if (isReserved) reserve(state, mould, -1);
  state.timeline.take(start, minutes, 1);
  forgetPrep(state, mould);
  placeCoat(state, mould, start, minutes);
};

/** Writes down a fixed batch, its people and mixer apart, and fills its moulds. */
const placeFixed = (state: DecoderState, batch: FixedBatch, ownerOf: (pour: FixedPour) => number | undefined): void => {
  const { placed, problem, moulds } = state;
  const index = placed.batches++;
  placed.batchMix[index] = batch.mix;
  placed.batchStart[index] = batch.start;
  placed.batchEnd[index] = batch.start + batch.minutes;
  placed.batchKg[index] = batch.kg;
  placed.batchBags[index] = batch.bags;
  placed.batchFixed[index] = problem.fixed.batches.indexOf(batch);
  for (const pour of batch.pours) {
    placePour(state, pour.mould, pour.casting, index, pour.fillStart, ownerOf(pour));
    moulds.stripAt[pour.mould] = pour.stripAt;
  }
};

const batchFixed = (state: DecoderState, batch: FixedBatch, owners: Owners): void => {
  const { timeline, problem } = state;
  const mix = problem.mixes[batch.mix]!;
  timeline.take(batch.start, batch.minutes, mix.crew);
  timeline.takeMixer(batch.start, mix.mixMinutes);
  placeFixed(state, batch, (pour) => owners.get(pour));
  for (const { mould } of batch.pours) reserve(state, mould, -1);
};

/** Before the first shift: batches under way are filling their moulds, whoever their pieces are for. */
export const placeBegun = (state: DecoderState): void => {
  for (const batch of state.problem.fixed.batches) {
    if (!batch.isBegun) continue;
    for (const { mould, casting, prepStart, prepMinutes } of batch.pours) {
      forgetPrep(state, mould);
      placePrep(state, mould, casting, prepStart, prepMinutes);
    }
    placeFixed(state, batch, (pour) => takeAsStood(state, pour));
  }
};

const stripFixed = (state: DecoderState, mould: number, at: number): void => {
  if (state.moulds.held[mould] === NONE) return;
  const { stripMinutes, stripCrew } = state.problem.castings[state.moulds.held[mould]!]!;
  state.timeline.take(at, stripMinutes, stripCrew);
  placeStrip(state, mould, at);
};

const packFixed = (state: DecoderState, order: number, at: number, minutes: number): void => {
  if (state.orders.packAt[order] !== NONE) state.timeline.take(at, minutes, 1);
};

const applyStep = (state: DecoderState, step: Step, owners: Owners): void => {
  if (step.kind === 'batch') batchFixed(state, step.batch, owners);
  else if (step.kind === 'prep') prepFixed(state, step.pour);
  else if (step.kind === 'coat') coatFixed(state, step.coat, step.isReserved);
  else if (step.kind === 'set up') setUpAlone(state, step.prep);
  else if (step.kind === 'pack') packFixed(state, step.order, step.at, step.minutes);
  else stripFixed(state, step.mould, step.at);
};

/** Place of the first step, in order of time, that is not before a minute. */
const firstFrom = (list: readonly Step[], minute: number): number => {
  let [low, high] = [0, list.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (list[middle]!.at < minute) low = middle + 1;
    else high = middle;
  }
  return low;
};

/** Places what is fixed in the shift entered before anything else is placed in it. */
export const applyFixed = (state: DecoderState): void => {
  const all = steps(state.problem.fixed);
  const first = firstFrom(all, state.timeline.from);
  if (first === all.length || all[first]!.at >= state.timeline.to) return;
  const here = all.slice(first, firstFrom(all, state.timeline.to));
  const owners = dealFixed(
    state,
    here.flatMap((step) => (step.kind === 'batch' ? [step.batch] : [])),
  );
  for (const step of here) applyStep(state, step, owners);
};
