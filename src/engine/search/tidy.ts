import { decode } from '../decoder/decode.ts';
import type { DecoderState } from '../decoder/decoder-state.ts';
import { type Choices, choicesIn, type Dispatch } from '../decoder/dispatch.ts';
import { NEVER, NONE, type Problem } from '../decoder/problem.ts';
import type { Snapshot } from '../decoder/snapshot.ts';
import { branchOff, followBranch, type Trajectory, trajectoryOf } from '../decoder/trajectory.ts';
import { completeInHand } from '../quote/promise.ts';
import { type Effort, poursOf } from './effort.ts';
import { isBetter } from './evaluation.ts';
import { CHANGE_SELDOM, faultsIn } from './faults.ts';
import { type Found, foundIn } from './found.ts';
import type { PresentPours } from './nearness.ts';
import { type Pressing, pressingOf } from './pressing.ts';
import { earliestDueFirst } from './rules.ts';
import { untidinessOf } from './untidiness.ts';

/** Pours placed in all by tidying, about; fewer tries than the least are not worth the beginning. */
const POURS_TIDIED: Readonly<Record<Effort, number>> = { quick: 1500, normal: 60_000, thorough: 200_000 };
const LEAST_TRIES = 8;
const MOST_TRIES = 1000;

/** Plans that tidying may decode, whole or in part; 0 on yards so large that it is left. */
export const tidyingTries = (problem: Problem, effort: Effort): number => {
  const tries = Math.min(MOST_TRIES, Math.floor(POURS_TIDIED[effort] / poursOf(problem)));
  return tries < LEAST_TRIES ? 0 : tries;
};

/** The days that orders have by a plan, which a tidier one has to leave them. */
interface Days {
  on: Int32Array;
  completesAt: Int32Array;
}

const handedOverOn = ({ problem, orders }: DecoderState): Int32Array =>
  Int32Array.from(orders.completesAt, (at) =>
    at === NONE ? NEVER : problem.handover[problem.calendar.dayOf(at) - problem.today]!,
  );

const daysIn = (state: DecoderState): Days => ({
  on: handedOverOn(state),
  completesAt: state.orders.completesAt.slice(),
});

/** Until when each order has all the sessions in hand before its date that the yard keeps; without a date it has none. */
const inHandUntil = (problem: Problem): Float64Array =>
  Float64Array.from(problem.orders, ({ dueDay }) => (dueDay >= NEVER ? NONE : completeInHand(problem, dueDay)));

/** Goes through plans as good as one, and keeps the tidiest. */
class Tidying {
  private readonly pressing: Pressing;
  private readonly inHand: Float64Array;
  private readonly days: Days;
  private untidiness: number;

  constructor(
    private readonly state: DecoderState,
    public best: Found,
    private readonly present: PresentPours | undefined,
  ) {
    this.pressing = pressingOf(state.problem);
    this.inHand = inHandUntil(state.problem);
    this.days = daysIn(state);
    this.untidiness = untidinessOf(state, this.pressing);
  }

  /** What is to be tried against what a foreman minds in the plan in `state`, that of the best dispatch. */
  faults() {
    return faultsIn(this.state, this.best.dispatch, this.pressing);
  }

  /** No order is handed over later, nor ready on a later day, but where all that the yard keeps in hand is left to it. */
  private isNobodyLater(): boolean {
    const { orders, problem } = this.state;
    const { calendar } = problem;
    const on = handedOverOn(this.state);
    return on.every((day, o) => {
      const [is, was] = [orders.completesAt[o]!, this.days.completesAt[o]!];
      if (day > this.days.on[o]!) return false;
      return is <= was || is <= this.inHand[o]! || calendar.dayOf(is) <= calendar.dayOf(was);
    });
  }

  /** Takes the plan in `state` where it is better than the best, or as good and tidier. */
  consider(dispatch: Dispatch): boolean {
    const found = foundIn(this.state, dispatch, this.present);
    if (isBetter(this.best.evaluation, found.evaluation) || found.unmoved < this.best.unmoved) return false;
    if (!this.isNobodyLater()) return false;
    const untidiness = untidinessOf(this.state, this.pressing);
    if (untidiness >= this.untidiness - 1e-6 && !isBetter(found.evaluation, this.best.evaluation)) return false;
    this.best = found;
    this.untidiness = untidiness;
    return true;
  }
}

/** The same in all shifts. */
const throughout = (dispatch: Dispatch, step: Partial<Choices>): Dispatch => ({
  ...dispatch,
  choices: { ...dispatch.choices, ...step },
  inShift: new Map([...dispatch.inShift].map(([shift, choices]) => [shift, { ...choices, ...step }])),
});

/** Ways of the whole plan: moulds changed over seldom, slow mixes soon, what is due first set up first. */
const wholeWays = (problem: Problem, dispatch: Dispatch): Dispatch[] => [
  throughout(dispatch, CHANGE_SELDOM),
  throughout(dispatch, { slowMixesLate: false }),
  throughout(dispatch, { ...CHANGE_SELDOM, slowMixesLate: false }),
  { ...dispatch, setUp: earliestDueFirst(problem) },
];

/** Takes steps in single shifts while one of them makes the plan tidier. */
const tidyShifts = (state: DecoderState, tidying: Tidying, tries: number): void => {
  const trajectory: Trajectory = trajectoryOf(state, tidying.best.dispatch);
  const spare: (Snapshot | undefined)[] = [];
  let left = tries;
  const tryStep = (shift: number, step: Partial<Choices>): boolean => {
    const { dispatch } = tidying.best;
    const choices = { ...choicesIn(dispatch, shift), ...step };
    const changed = { ...dispatch, inShift: new Map(dispatch.inShift).set(shift, choices) };
    const branch = branchOff(state, changed, trajectory, shift, spare);
    if (!branch.isWhole || !tidying.consider(changed)) return false;
    followBranch(state, trajectory, branch);
    return true;
  };
  for (let found = trajectory.isWhole; found && left > 0; ) {
    found = false;
    decode(state, tidying.best.dispatch);
    for (const { shift, step } of tidying.faults())
      if (shift < trajectory.shifts && left-- > 0 && tryStep(shift, step)) found = true;
  }
};

/**
 * Of plans with one score the one that a foreman would make: looks for a tidier plan than the one found, whose dispatch was
 * settled last in `state`, by things that a foreman minds in it. No order is handed over later by it, nothing is left out that was in it, and
 * no part of its score is worse. `tries` plans at most are decoded, whole or in part.
 */
export const tidied = (state: DecoderState, found: Found, tries: number, present?: PresentPours): Found => {
  if (tries === 0) return found;
  const tidying = new Tidying(state, found, present);
  if (tidying.faults().length === 0) return found;
  const ways = wholeWays(state.problem, found.dispatch);
  for (const dispatch of ways) {
    decode(state, dispatch);
    tidying.consider(dispatch);
  }
  tidyShifts(state, tidying, tries - ways.length);
  return tidying.best;
};
