import { outAt } from '../book/curing-times.ts';
import { bagsFor } from '../pack/bags.ts';
import { sortFew } from '../sort-few.ts';
import { askForBatch } from './ask-batch.ts';
import type { Filling } from './compose.ts';
import type { DecoderState } from './decoder-state.ts';
import { placePour } from './place-pour.ts';
import { coats, minutesToCoat, placeCoat, placePrep, prepMinutes } from './prep.ts';
import { BATCH, NEVER, NONE, PREP } from './problem.ts';
import { placeStrip, stripStart, takeStrip, untakeStrip } from './strip.ts';
import { weatherFault } from './weather.ts';

/** Strip, coat and set-up of one mould for a batch, taken but not yet written down. */
interface Readied {
  filling: Filling;
  stripStart: number;
  coatStart: number;
  coatMinutes: number;
  prepStart: number;
  prepMinutes: number;
  /** Earliest start of the batch as far as this mould goes. */
  batchFrom: number;
}

const untakeTasks = ({ timeline }: DecoderState, x: Readied): void => {
  if (x.prepStart !== NONE) timeline.giveBack(x.prepStart, x.prepMinutes, 1);
  if (x.coatStart !== NONE) timeline.giveBack(x.coatStart, x.coatMinutes, 1);
};

const untake = (state: DecoderState, readied: Readied[]): void => {
  for (const x of readied.reverse()) {
    untakeTasks(state, x);
    if (x.stripStart !== NONE) untakeStrip(state, x.filling.mould, x.stripStart);
  }
};

/** Nothing is left to do before the batch: the mould is set up. */
const setUpAlready = (state: DecoderState, filling: Filling): Readied => ({
  filling,
  stripStart: NONE,
  coatStart: NONE,
  coatMinutes: 0,
  prepStart: NONE,
  prepMinutes: 0,
  batchFrom: state.moulds.prepEnd[filling.mould]!,
});

/** Takes the coat of a mould, where it is to have one, and its set-up after it; false when one does not fit into the shift. */
const takeTasks = (state: DecoderState, x: Readied, from: number, coated: boolean): boolean => {
  const { timeline, problem } = state;
  let free = from;
  if (coated) {
    x.coatStart = timeline.earliest(PREP, x.coatMinutes, 1, from);
    if (x.coatStart === NONE) return false;
    timeline.take(x.coatStart, x.coatMinutes, 1);
    free = x.coatStart + x.coatMinutes + problem.moulds[x.filling.mould]!.oilDryMinutes;
  }
  x.prepStart = timeline.earliest(PREP, x.prepMinutes, 1, free);
  if (x.prepStart === NONE) return false;
  timeline.take(x.prepStart, x.prepMinutes, 1);
  x.batchFrom = x.prepStart + x.prepMinutes;
  return true;
};

/** Takes a mould's strip and, unless they come later, its coat and set-up; null when one does not fit into the shift. */
const takeReadying = (state: DecoderState, filling: Filling, prepLater: boolean): Readied | null => {
  const { moulds, timeline, problem } = state;
  const { mould, casting } = filling;
  if (moulds.preppedFor[mould] === casting) return setUpAlready(state, filling);
  const holds = moulds.held[mould] !== NONE;
  const coated = coats(state, mould);
  const strip = holds ? stripStart(state, mould) : NONE;
  if (holds && strip === NONE) return null;
  if (holds) takeStrip(state, mould, strip);
  const free = holds ? strip + problem.castings[moulds.held[mould]!]!.stripMinutes : 0;
  const from = Math.max(free, moulds.freeAt[mould]!);
  const x: Readied = {
    filling,
    stripStart: strip,
    coatStart: NONE,
    coatMinutes: coated ? minutesToCoat(state, mould, holds) : 0,
    prepStart: NONE,
    prepMinutes: prepMinutes(state, mould, casting, coated, holds),
    batchFrom: 0,
  };
  const dry = coated ? problem.moulds[mould]!.oilDryMinutes : 0;
  x.batchFrom = Math.max(from, timeline.from) + x.coatMinutes + dry + x.prepMinutes;
  if (prepLater || takeTasks(state, x, from, coated)) return x;
  untakeTasks(state, x);
  if (holds) untakeStrip(state, mould, strip);
  return null;
};

const takeAll = (state: DecoderState, fillings: Filling[], prepLater: boolean): Readied[] | null => {
  const readied: Readied[] = [];
  for (const filling of sortFew([...fillings], (a, b) => a.readyAt - b.readyAt)) {
    const one = takeReadying(state, filling, prepLater);
    if (!one) {
      untake(state, readied);
      return null;
    }
    readied.push(one);
  }
  return readied;
};

/** Takes a mould's coat and set-up as late as they still make the batch; false when one does not fit. */
const takeTasksBefore = (state: DecoderState, x: Readied, batchStart: number): boolean => {
  const { timeline, problem, moulds } = state;
  const { mould, casting } = x.filling;
  if (moulds.preppedFor[mould] === casting) return true;
  const from = x.batchFrom - x.prepMinutes;
  x.prepStart = timeline.latest(PREP, x.prepMinutes, 1, from, batchStart);
  if (x.prepStart === NONE) return false;
  timeline.take(x.prepStart, x.prepMinutes, 1);
  if (!coats(state, mould)) return true;
  const dry = problem.moulds[mould]!.oilDryMinutes;
  x.coatStart = timeline.latest(PREP, x.coatMinutes, 1, from - dry - x.coatMinutes, x.prepStart - dry);
  if (x.coatStart === NONE) return false;
  timeline.take(x.coatStart, x.coatMinutes, 1);
  return true;
};

/** Makes moulds ready as late as they still make the batch; false when one does not fit. */
const takePrepsBefore = (state: DecoderState, readied: Readied[], batchStart: number): boolean =>
  readied.every((x) => takeTasksBefore(state, x, batchStart));

interface Times {
  start: number;
  lastFill: number;
  minutes: number;
}

interface BatchLength {
  minutes: number;
  fill: number;
  /** As late as it fits rather than as early. */
  late: boolean;
}

/**
 * A time for a batch at which its materials are there still, it stays soft until it is filled, and the weather lets it be: where
 * one hour does not, another may.
 */
const inTheWeather = (
  { timeline, problem, stock }: DecoderState,
  mixIndex: number,
  { minutes, fill, late }: BatchLength,
  earliest: number,
  latest: number,
): Times | null => {
  const mix = problem.mixes[mixIndex]!;
  let [from, by] = [earliest, latest];
  while (from < by) {
    const start = timeline.batchStart(BATCH, minutes, mix.crew, mix.mixMinutes, from, by, late);
    if (start === NONE) return null;
    const lastFill = start + mix.mixMinutes + fill;
    const isSoft = mix.ageing.ageBetween(start + mix.mixMinutes, lastFill) <= mix.workingMinutes + 1e-6;
    const isThere = start >= mix.scarceUntil || stock.isThere(start);
    if (isThere && isSoft && !weatherFault(problem, mixIndex, start, lastFill)) return { start, lastFill, minutes };
    if (!isThere && late) by = start + minutes - 1;
    else if (!isThere) from = stock.earliest(start);
    else if (late) by = problem.climate.stepFrom(lastFill) - 1 + mix.washMinutes;
    else from = problem.climate.nextStep(start);
  }
  return null;
};

/** When a batch of these pieces can be mixed, its people not yet taken; null when it does not fit into the shift. */
const findTimes = (
  state: DecoderState,
  fillings: Filling[],
  mixIndex: number,
  from: number,
  bags: number,
  late: boolean,
): Times | null => {
  const mix = state.problem.mixes[mixIndex]!;
  const fill = fillings.reduce((n, f) => n + state.problem.castings[f.casting]!.fillMinutes, 0);
  const minutes = mix.mixMinutes + fill + mix.washMinutes;
  const attended = state.problem.shifts.sessionEnd[state.shift]! - mix.attendMinutes;
  const by = Math.min(state.timeline.to, Math.min(attended, state.pourUntil) + mix.washMinutes);
  let earliest = from;
  if (from < mix.scarceUntil) {
    askForBatch(state.problem, state.stock, { mix: mixIndex, bags, pours: fillings });
    earliest = state.stock.earliest(Math.max(from, state.timeline.from));
    if (earliest >= NEVER) return null;
  }
  return inTheWeather(state, mixIndex, { minutes, fill, late }, earliest, by);
};

const record = (
  state: DecoderState,
  readied: Readied[],
  fillings: Filling[],
  mixIndex: number,
  times: Times,
  kg: number,
  bags: number,
): void => {
  const mix = state.problem.mixes[mixIndex]!;
  state.timeline.take(times.start, times.minutes, mix.crew);
  state.timeline.takeMixer(times.start, mix.mixMinutes);
  if (times.start < mix.scarceUntil) {
    askForBatch(state.problem, state.stock, { mix: mixIndex, bags, pours: fillings });
    state.stock.use(times.start);
  }
  const { placed } = state;
  const batch = placed.batches++;
  placed.batchMix[batch] = mixIndex;
  placed.batchStart[batch] = times.start;
  placed.batchEnd[batch] = times.start + times.minutes;
  placed.batchKg[batch] = kg;
  placed.batchBags[batch] = bags;
  placed.batchFixed[batch] = NONE;
  let fillStart = times.start + mix.mixMinutes;
  for (const filling of fillings) {
    const x = readied.find((r) => r.filling === filling)!;
    if (x.stripStart !== NONE) placeStrip(state, filling.mould, x.stripStart);
    if (x.coatStart !== NONE) placeCoat(state, filling.mould, x.coatStart, x.coatMinutes);
    if (x.prepStart !== NONE) placePrep(state, filling.mould, filling.casting, x.prepStart, x.prepMinutes);
    placePour(state, filling.mould, filling.casting, batch, fillStart);
    fillStart += state.problem.castings[filling.casting]!.fillMinutes;
  }
};

/**
 * Places strips, set-ups and the batch itself for these pieces in the shift; false, and nothing taken, when they do not
 * fit. `late`: as late as they fit rather than as early.
 */
export const placeBatch = (state: DecoderState, fillings: Filling[], late: boolean): boolean => {
  const mixIndex = state.problem.castings[fillings[0]!.casting]!.mix;
  const mix = state.problem.mixes[mixIndex]!;
  const kg = fillings.reduce((n, f) => n + state.problem.castings[f.casting]!.kg, 0);
  const bags = bagsFor(kg, mix.yieldKgPerBag, mix.bagStep);
  const readied = takeAll(state, fillings, late);
  if (!readied) return false;
  const from = readied.reduce((t, x) => Math.max(t, x.batchFrom), state.timeline.from);
  const times = findTimes(state, fillings, mixIndex, from, bags, late);
  if (
    times &&
    strippable(state, fillings, times.lastFill) &&
    (!late || takePrepsAround(state, readied, times, mix.crew))
  ) {
    record(state, readied, fillings, mixIndex, times, kg, bags);
    return true;
  }
  untake(state, readied);
  return false;
};

/** The batch's own people are kept out of the way while the set-ups before it are looked for. */
const takePrepsAround = (state: DecoderState, readied: Readied[], times: Times, crew: number): boolean => {
  state.timeline.take(times.start, times.minutes, crew);
  const fits = takePrepsBefore(state, readied, times.start);
  state.timeline.giveBack(times.start, times.minutes, crew);
  return fits;
};

/** Whether every piece could still be stripped within the horizon, by the hours alone. */
const strippable = (state: DecoderState, fillings: Filling[], lastFill: number): boolean =>
  fillings.every(
    ({ casting }) =>
      outAt(state.problem.mixes[state.problem.castings[casting]!.mix]!, lastFill) <= state.lastStrip[casting]!,
  );
