import { type FillOption, fillBatch, mostThatFit } from '../pack/fill.ts';
import type { DecoderState } from './decoder-state.ts';
import { placeWanted } from './holds.ts';
import type { Openings } from './opening-list.ts';
import { NEVER, NONE } from './problem.ts';

/** One piece of a batch that is being put together. */
export interface Filling {
  mould: number;
  casting: number;
  readyAt: number;
}

/**
 * Pieces still needed for each mould that makes the casting: how scarce its moulds are. A rough figure, for ranking
 * only. Example: 12 pieces still to pour and 3 moulds are 4; without a mould it is all 12.
 */
export const scarcity = (state: DecoderState, casting: number): number =>
  state.demand.need[casting]! / Math.max(1, state.problem.castings[casting]!.moulds.length);

/** A number from 0 to 1 that stays the same for the same two: how a shuffle ranks castings. */
const rankIn = (shuffle: number, casting: number): number => {
  let x = Math.imul(shuffle ^ Math.imul(casting + 1, 0x9e3779b1), 0x85ebca6b);
  x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35);
  return ((x ^ (x >>> 16)) >>> 0) / 4294967296;
};

/** True when every mould that could take the casting in this shift would have to be changed over for it. */
const isChangedFor = (state: DecoderState, { first, next, mould }: Openings, casting: number): boolean => {
  const { held, setFor } = state.moulds;
  for (let i = first[casting]!; i !== NONE; i = next[i]!) {
    const k = mould[i]!;
    if ((held[k] === NONE ? setFor[k] : held[k]) === casting || state.moulds.preppedFor[k] === casting) return false;
  }
  return true;
};

/** Where a casting stands among those that are to be poured: the lower, the sooner. */
const rankOf = (state: DecoderState, casting: number): number => {
  const { shuffle } = state.choices;
  return shuffle ? rankIn(shuffle, casting) : placeWanted(state, casting);
};

/** The casting to pour next: of the first order in the sequence that has a mould for it in this shift. NONE if none has. */
export const leadCasting = (state: DecoderState, openings: Openings): number => {
  const { changeSeldom, scarceFirst } = state.choices;
  let [lead, leadChange, leadRank] = [NONE, 0, 0];
  for (let c = 0; c < openings.soonest.length; c++) {
    if (openings.soonest[c]! >= NEVER) continue;
    const change = changeSeldom ? Number(isChangedFor(state, openings, c)) : 0;
    const rank = rankOf(state, c);
    const sooner = change - leadChange || rank - leadRank;
    const isNext =
      lead === NONE || sooner < 0 || (sooner === 0 && scarceFirst && scarcity(state, c) > scarcity(state, lead));
    if (isNext) [lead, leadChange, leadRank] = [c, change, rank];
  }
  return lead;
};

/** Longest filling, minutes, that keeps within the working time of a batch mixed about now (R3: heat shortens it). */
const fillLimit = (state: DecoderState, mix: number, mixEnd: number): number => {
  const { ageing, workingMinutes } = state.problem.mixes[mix]!;
  const end = ageing.whenAged(mixEnd, workingMinutes);
  return ageing.ageBetween(mixEnd, end) > workingMinutes + 1e-6 ? end - mixEnd - 1 : end - mixEnd;
};

/** What a piece of a casting is worth in a batch led by another: its mass, more for early orders and for scarce moulds. */
const worthOf = (state: DecoderState, casting: number, leadPlace: number, scarcest: number, work: number): number => {
  const { firstOrderWeight, scarceMouldWeight, workWeight, shuffle } = state.choices;
  const early = firstOrderWeight / (1 + Math.max(0, placeWanted(state, casting) - leadPlace));
  const liking = shuffle ? 2 * rankIn(shuffle + 1, casting) : 0;
  const { kg } = state.problem.castings[casting]!;
  const worth =
    kg * (1 + early + liking + (scarceMouldWeight * scarcity(state, casting)) / scarcest) - workWeight * work;
  return Math.max(worth, kg * 0.01);
};

/** Least minutes of stripping and setting up that a mould for the casting asks for. */
const leastWork = (openings: Openings, casting: number, by: number): number => {
  let least = NEVER;
  for (let i = openings.first[casting]!; i !== NONE; i = openings.next[i]!)
    if (openings.readyAt[i]! <= by) least = Math.min(least, openings.work[i]!);
  return least;
};

const mostOf = (state: DecoderState, casting: number, openings: Openings, by: number): number => {
  const need = state.demand.need[casting]!;
  let most = 0;
  for (let i = openings.first[casting]!; i !== NONE && most < need; i = openings.next[i]!)
    if (openings.readyAt[i]! <= by) most++;
  return most;
};

const optionsOf = (state: DecoderState, mix: number, lead: number, openings: Openings, by: number): FillOption[] => {
  const options: FillOption[] = [];
  const { castings } = state.problem.mixes[mix]!;
  let scarcest = 1e-9;
  for (const c of castings) if (openings.soonest[c]! < NEVER) scarcest = Math.max(scarcest, scarcity(state, c));
  const leadPlace = placeWanted(state, lead);
  for (const c of castings) {
    if (openings.soonest[c]! > by) continue;
    const most = mostOf(state, c, openings, by) - (c === lead ? 1 : 0);
    const { kg, fillMinutes } = state.problem.castings[c]!;
    if (most <= 0) continue;
    const work = state.choices.workWeight > 0 ? leastWork(openings, c, by) : 0;
    options.push({ casting: c, kg, fillMinutes, most, worth: worthOf(state, c, leadPlace, scarcest, work) });
  }
  return options;
};

/** True when a mould is wanted more for another casting than for this one. */
const wantedElsewhere = (state: DecoderState, mould: number, casting: number): boolean => {
  const { makes } = state.problem.moulds[mould]!;
  if (makes.length === 1) return false;
  const here = scarcity(state, casting);
  return makes.some((x) => scarcity(state, x.casting) > here);
};

const isTaken = (fillings: readonly Filling[], mould: number): boolean => {
  for (const filling of fillings) if (filling.mould === mould) return true;
  return false;
};

/**
 * Takes the mould that is ready soonest for each piece, the one with least work if two are; none is taken twice, and one
 * that is wanted more for another casting only when it is much sooner.
 */
const mouldsFor = (state: DecoderState, openings: Openings, castings: number[], by: number): Filling[] => {
  const fillings: Filling[] = [];
  for (const casting of castings) {
    let best = NONE;
    let bestAt = NEVER;
    for (let i = openings.first[casting]!; i !== NONE; i = openings.next[i]!) {
      const mould = openings.mould[i]!;
      if (openings.readyAt[i]! > Math.min(by, bestAt) || isTaken(fillings, mould)) continue;
      const readyAt = openings.readyAt[i]! + (wantedElsewhere(state, mould, casting) ? state.choices.spareMinutes : 0);
      if (readyAt > bestAt || (readyAt === bestAt && openings.work[i]! >= openings.work[best]!)) continue;
      [best, bestAt] = [i, readyAt];
    }
    if (best === NONE) continue;
    fillings.push({ mould: openings.mould[best]!, casting, readyAt: openings.readyAt[best]! });
  }
  return fillings;
};

/** A filling as by hand: as many as fit of what the sequence wants first, then of what it wants next. */
const fillInOrder = (state: DecoderState, options: FillOption[], mostKg: number, mostMinutes: number): number[] => {
  const counts = options.map(() => 0);
  let [kg, minutes] = [mostKg, mostMinutes];
  const place = (i: number) => placeWanted(state, options[i]!.casting);
  const rows = options.map((_, i) => i).sort((a, b) => place(a) - place(b) || a - b);
  for (const i of rows) {
    const option = options[i]!;
    counts[i] = Math.max(0, mostThatFit(option, kg, minutes));
    kg -= counts[i]! * option.kg;
    minutes -= counts[i]! * option.fillMinutes;
  }
  return counts;
};

/** Most pieces that the choices allow in the next batch of this shift, 0 for as many as it holds. */
export const mostPiecesNow = (state: DecoderState): number => {
  const { mostPieces, firstBatchOnly } = state.choices;
  return firstBatchOnly && state.placed.batches > state.batchesBefore ? 0 : mostPieces;
};

/**
 * Puts a batch together round a piece of the lead casting: which other pieces join it, from moulds that can be set up
 * within `waitMinutes` after the lead's, so that it goes out as full and as useful as can be. The lead comes first.
 */
export const composeBatch = (state: DecoderState, lead: number, openings: Openings, waitMinutes: number): Filling[] => {
  const { mix: index, kg, fillMinutes } = state.problem.castings[lead]!;
  const mix = state.problem.mixes[index]!;
  const by = openings.soonest[lead]! + waitMinutes;
  const minutes = fillLimit(state, index, openings.soonest[lead]! + mix.mixMinutes);
  if (minutes < fillMinutes) return [];
  const options = optionsOf(state, index, lead, openings, by);
  const room = [mix.mostKg - kg, minutes - fillMinutes] as const;
  const counts = state.choices.inOrder ? fillInOrder(state, options, ...room) : fillBatch(options, ...room);
  const castings = [lead];
  options.forEach((option, i) => {
    for (let n = 0; n < counts[i]!; n++) castings.push(option.casting);
  });
  const mostPieces = mostPiecesNow(state);
  return mouldsFor(state, openings, mostPieces > 0 ? castings.slice(0, mostPieces) : castings, by);
};

/** Mass of the fullest batch round the lead casting if every mould in use were free: what waiting could bring. */
export const fullestKg = (state: DecoderState, lead: number): number => {
  const { mix: index, kg, fillMinutes } = state.problem.castings[lead]!;
  const mix = state.problem.mixes[index]!;
  const options: FillOption[] = [];
  for (const c of mix.castings) {
    const most = Math.min(state.demand.need[c]!, state.problem.castings[c]!.moulds.length) - (c === lead ? 1 : 0);
    const of = state.problem.castings[c]!;
    if (most > 0) options.push({ casting: c, kg: of.kg, fillMinutes: of.fillMinutes, most, worth: of.kg });
  }
  const minutes = fillLimit(state, index, state.timeline.firstFree + mix.mixMinutes) - fillMinutes;
  const counts = fillBatch(options, mix.mostKg - kg, Math.max(0, minutes));
  return options.reduce((sum, option, i) => sum + counts[i]! * option.kg, kg);
};
