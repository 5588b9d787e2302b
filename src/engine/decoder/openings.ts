import type { DecoderState } from './decoder-state.ts';
import { addEntry, clearOpenings, type Openings } from './opening-list.ts';
import { coats, forgetUnneededPrep, minutesToCoat, prepMinutes } from './prep.ts';
import { NEVER, NONE } from './problem.ts';

/**
 * Latest start of a batch in this shift that fills one piece of the casting and nothing else: it has to be washed up
 * after before the shift is over, and attended to before the session is (R3). May lie before the shift: then there is
 * none.
 */
export const latestStart = (state: DecoderState, casting: number): number => {
  const { mix, fillMinutes } = state.problem.castings[casting]!;
  const { mixMinutes, washMinutes, attendMinutes } = state.problem.mixes[mix]!;
  const attended = state.problem.shifts.sessionEnd[state.shift]! - attendMinutes;
  return Math.min(attended, state.pourUntil, state.timeline.to - washMinutes) - mixMinutes - fillMinutes;
};

/** The opening of a mould that is set up: what it is set up for. */
const addSetUp = (state: DecoderState, to: Openings, mould: number): void => {
  const { moulds, timeline } = state;
  const casting = moulds.preppedFor[mould]!;
  const readyAt = Math.max(moulds.prepEnd[mould]!, timeline.firstFree);
  if (readyAt <= to.latest[casting]!) addEntry(to, mould, casting, readyAt, 0);
};

/** The openings of any other mould: whatever it makes that it can still be made ready for. */
const addToSetUp = (state: DecoderState, to: Openings, mould: number): void => {
  const { moulds, timeline, problem } = state;
  const { makes, makesFrom, latest } = to;
  const holds = moulds.held[mould] !== NONE;
  const free = holds ? moulds.outAt[mould]! : moulds.freeAt[mould]!;
  const usable = Math.max(free, moulds.freeAt[mould]!, timeline.firstFree);
  const coated = coats(state, mould);
  const strip = holds ? problem.castings[moulds.held[mould]!]!.stripMinutes : 0;
  const before = strip + (coated ? minutesToCoat(state, mould, holds) : 0);
  const from = Math.max(free, timeline.firstFree) + (coated ? problem.moulds[mould]!.oilDryMinutes : 0);
  for (let i = makesFrom[mould]!; i < makesFrom[mould + 1]!; i++) {
    const casting = makes[i]!;
    if (usable > latest[casting]!) continue;
    const work = before + prepMinutes(state, mould, casting, coated, holds);
    if (from + work <= latest[casting]!) addEntry(to, mould, casting, from + work, work);
  }
};

/** The latest starts of this shift, once for all moulds. */
const findLatest = (state: DecoderState, { latest }: Openings): void => {
  for (let c = 0; c < latest.length; c++)
    latest[c] = state.demand.need[c] === 0 || state.blocked[c] ? Number.NEGATIVE_INFINITY : latestStart(state, c);
};

/** Whether what a mould holds comes out too late for this shift: no batch begins in it after its hours. */
const isOutForShift = ({ moulds, timeline }: DecoderState, mould: number): boolean =>
  moulds.held[mould] !== NONE && moulds.outAt[mould]! > timeline.to;

/**
 * Lists the openings of this shift as things stand; castings that are blocked or not needed have none. With `emptyOnly`
 * moulds that hold a piece have none either.
 */
export const listOpenings = (state: DecoderState, to: Openings, emptyOnly = false): void => {
  const { freeAt, reserved, held, stripAt } = state.moulds;
  const { restMould } = state.choices;
  const { moulds } = to;
  clearOpenings(to);
  findLatest(state, to);
  const most = to.mouldCount;
  to.mouldCount = 0;
  for (let m = 0; m < most; m++) {
    const k = moulds[m]!;
    if (isOutForShift(state, k)) continue;
    moulds[to.mouldCount++] = k;
    if (freeAt[k]! >= NEVER || reserved[k]! > 0 || k === restMould) continue;
    if (emptyOnly && held[k] !== NONE) continue;
    // What is in it comes out at a minute of its own.
    if (stripAt[k] !== NONE) continue;
    forgetUnneededPrep(state, k);
    if (state.moulds.preppedFor[k] === NONE) addToSetUp(state, to, k);
    else addSetUp(state, to, k);
  }
};
