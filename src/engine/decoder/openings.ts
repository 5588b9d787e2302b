import type { DecoderState } from './decoder-state.ts';
import type { Openings } from './opening-list.ts';
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

const addOpening = (state: DecoderState, to: Openings, mould: number, casting: number, latest: number): void => {
  const { moulds, timeline, problem } = state;
  let readyAt: number;
  let work = 0;
  if (moulds.preppedFor[mould] !== NONE) {
    if (moulds.preppedFor[mould] !== casting) return;
    readyAt = Math.max(moulds.prepEnd[mould]!, timeline.firstFree);
  } else {
    const holds = moulds.held[mould] !== NONE;
    const coated = coats(state, mould);
    const free = holds ? moulds.outAt[mould]! : moulds.freeAt[mould]!;
    if (Math.max(free, moulds.freeAt[mould]!) > latest) return;
    if (holds) work += problem.castings[moulds.held[mould]!]!.stripMinutes;
    if (coated) work += minutesToCoat(state, mould, holds);
    work += prepMinutes(state, mould, casting, coated, holds);
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
export const listOpenings = (state: DecoderState, to: Openings, emptyOnly = false): void => {
  const { problem, demand, blocked } = state;
  to.count = 0;
  to.soonest.fill(NEVER);
  for (let k = 0; k < problem.moulds.length; k++) {
    if (state.moulds.freeAt[k]! >= NEVER || state.moulds.reserved[k]! > 0 || k === state.choices.restMould) continue;
    if (emptyOnly && state.moulds.held[k] !== NONE) continue;
    // What is in it comes out at a minute of its own.
    if (state.moulds.stripAt[k] !== NONE) continue;
    forgetUnneededPrep(state, k);
    for (const make of problem.moulds[k]!.makes) {
      const casting = make.casting;
      if (demand.need[casting] === 0 || blocked[casting]) continue;
      const latest = latestStart(state, casting);
      if (latest >= state.timeline.firstFree) addOpening(state, to, k, casting, latest);
    }
  }
};
