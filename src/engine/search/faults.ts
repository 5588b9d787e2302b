import type { DecoderState } from '../decoder/decoder-state.ts';
import { type Choices, choicesIn, type Dispatch } from '../decoder/dispatch.ts';
import { NONE, type Problem } from '../decoder/problem.ts';
import type { Pressing } from './pressing.ts';
import { A_MONTH, changedOver } from './untidiness.ts';

/** What a foreman would do otherwise in one shift. */
export interface Fault {
  shift: number;
  step: Partial<Choices>;
}

/** Moulds are changed over seldom. */
export const CHANGE_SELDOM: Partial<Choices> = { changeSeldom: true, shuffle: 0 };

/** A slow mix goes out as soon as it can; or all that can take a second turn before it, and it as soon as it can then. */
const SLOW_SOON: Partial<Choices>[] = [
  { slowMixesLate: false },
  { slowMixesLate: false, leastFill: 0, waitMinutes: 0 },
];

/** What can be done at once is not put off. */
const SOONER: Partial<Choices>[] = [
  { leastFill: 0, noPours: false, heldMix: NONE, restMould: NONE },
  { leastFill: 0.9, leastFillInHand: true, waitMinutes: 90, noPours: false, heldMix: NONE, restMould: NONE },
  { scarceMouldWeight: 4, scarceFirst: true, leastFill: 0 },
];

/** Nobody looks at more sessions than these for what could be done sooner. */
const SESSIONS_LOOKED_AT = 4;

/** The shift that a minute lies in, or the last one that begins before it. */
const shiftAt = ({ shifts }: Problem, minute: number): number => {
  let [low, high] = [0, shifts.count];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (shifts.from[middle]! <= minute) low = middle + 1;
    else high = middle;
  }
  return Math.max(0, low - 1);
};

/** Pours that are not fixed, each with its place. */
const freePours = ({ placed }: DecoderState): number[] => {
  const free: number[] = [];
  for (let p = 0; p < placed.pours; p++) if (placed.batchFixed[placed.pourBatch[p]!] === NONE) free.push(p);
  return free;
};

/**
 * What a foreman minds in a plan that a decode of `dispatch` left in `state`, the first sessions first, each with what to try
 * against it; nothing where all of it is fixed.
 */
export const faultsIn = (state: DecoderState, dispatch: Dispatch, pressing: Pressing): Fault[] => {
  const { problem, placed, orders } = state;
  const pours = freePours(state);
  const changed = new Set(changedOver(state, pressing));
  const faults = new Map<string, Fault>();
  const add = (shift: number, step: Partial<Choices>) =>
    faults.set(`${shift} ${JSON.stringify(step)}`, { shift, step });
  const sessions = new Set<number>();
  for (const p of pours) {
    const shift = shiftAt(problem, placed.batchStart[placed.pourBatch[p]!]!);
    sessions.add(shift);
    if (changed.has(p)) add(shiftAt(problem, placed.pourPrepStart[p]!), CHANGE_SELDOM);
    if (placed.pourStripStart[p]! >= problem.shifts.to[shift]! && choicesIn(dispatch, shift).slowMixesLate)
      for (const step of SLOW_SOON) add(shift, step);
    const order = placed.pourOrder[p]!;
    if (order !== NONE && orders.completesAt[order]! - placed.pourReadyAt[p]! > A_MONTH)
      add(shift, { heldMix: problem.castings[placed.pourCasting[p]!]!.mix });
  }
  const last = Math.max(NONE, ...sessions);
  for (let shift = 0; shift <= Math.min(last, SESSIONS_LOOKED_AT - 1); shift++)
    for (const step of SOONER) add(shift, step);
  return [...faults.values()].sort((a, b) => a.shift - b.shift);
};
