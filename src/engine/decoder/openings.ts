import type { Placing } from './decoder-state.ts';
import { coats, forgetUnneededPrep, prepMinutes } from './prep.ts';
import { NEVER, NONE, type Problem } from './problem.ts';

/** Moulds that could take a pour in this shift: one entry for each mould and casting, with the minute it could be ready. */
export interface Openings {
  count: number;
  mould: Int32Array;
  casting: Int32Array;
  /** Earliest minute at which the mould could be set up, people allowing. */
  readyAt: Int32Array;
  /** Minutes of stripping and setting up that it takes before that. */
  work: Int32Array;
  /** By casting: earliest of its entries, NEVER without one. */
  soonest: Int32Array;
}

/** Room for all openings that a problem can have at once, none listed yet. Made once and used again in every shift. */
export const openingsOf = (problem: Problem): Openings => {
  const most = problem.moulds.reduce((n, m) => n + m.makes.length, 0);
  const ints = (n: number) => new Int32Array(n);
  const castings = problem.castings.length;
  return {
    count: 0,
    mould: ints(most),
    casting: ints(most),
    readyAt: ints(most),
    work: ints(most),
    soonest: ints(castings),
  };
};

/**
 * Latest start of a batch in this shift that fills one piece of the casting and nothing else: it has to be washed up
 * after before the shift is over, and attended to before the session is (R3). May lie before the shift: then there is
 * none.
 */
export const latestStart = (at: Placing, casting: number): number => {
  const { mix, fillMinutes } = at.problem.castings[casting]!;
  const { mixMinutes, washMinutes, attendMinutes } = at.problem.mixes[mix]!;
  const attended = at.problem.shifts.sessionEnd[at.shift]! - attendMinutes;
  return Math.min(attended, at.pourUntil, at.timeline.to - washMinutes) - mixMinutes - fillMinutes;
};

const addOpening = (at: Placing, to: Openings, mould: number, casting: number, latest: number): void => {
  const { moulds, timeline, problem } = at;
  let readyAt: number;
  let work = 0;
  if (moulds.preppedFor[mould] !== NONE) {
    if (moulds.preppedFor[mould] !== casting) return;
    readyAt = Math.max(moulds.batchFrom[mould]!, timeline.firstFree);
  } else {
    const holds = moulds.held[mould] !== NONE;
    const coated = coats(at, mould);
    const free = holds ? moulds.outAt[mould]! : moulds.freeAt[mould]!;
    if (Math.max(free, moulds.freeAt[mould]!) > latest) return;
    if (holds) work += problem.castings[moulds.held[mould]!]!.stripMinutes;
    work += prepMinutes(at, mould, casting, coated, holds);
    readyAt = Math.max(free, timeline.firstFree) + work + (coated ? problem.moulds[mould]!.oilDryMinutes : 0);
  }
  if (readyAt > latest) return;
  const i = to.count++;
  to.mould[i] = mould;
  to.casting[i] = casting;
  to.readyAt[i] = readyAt;
  to.work[i] = work;
  if (readyAt < to.soonest[casting]!) to.soonest[casting] = readyAt;
};

/**
 * Lists the openings of this shift as things stand; castings that are blocked or not needed have none. With `emptyOnly`
 * moulds that hold a piece have none either.
 */
export const listOpenings = (at: Placing, to: Openings, emptyOnly = false): void => {
  const { problem, demand, blocked } = at;
  to.count = 0;
  to.soonest.fill(NEVER);
  for (let k = 0; k < problem.moulds.length; k++) {
    if (at.moulds.freeAt[k]! >= NEVER || at.moulds.reserved[k]! > 0 || k === at.choices.restMould) continue;
    if (emptyOnly && at.moulds.held[k] !== NONE) continue;
    forgetUnneededPrep(at, k);
    for (const make of problem.moulds[k]!.makes) {
      const casting = make.casting;
      if (demand.need[casting] === 0 || blocked[casting]) continue;
      const latest = latestStart(at, casting);
      if (latest >= at.timeline.firstFree) addOpening(at, to, k, casting, latest);
    }
  }
};
