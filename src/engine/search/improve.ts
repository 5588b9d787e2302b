import { decode } from '../decoder/decode.ts';
import type { DecoderState } from '../decoder/decoder-state.ts';
import { type Choices, choicesIn, type Dispatch } from '../decoder/dispatch.ts';
import type { Snapshot } from '../decoder/snapshot.ts';
import { branchOff, followBranch, type Trajectory, trajectoryOf } from '../decoder/trajectory.ts';
import type { StopRule } from './effort.ts';
import { type Evaluation, isBetter } from './evaluation.ts';
import { type Found, foundIn, isPreferred } from './found.ts';
import { blockMove } from './moves/block.ts';
import { changeChoices, scopeOf } from './moves/choices.ts';
import { insertMove } from './moves/insert.ts';
import { splitMove } from './moves/split.ts';
import { swapMove } from './moves/swap.ts';
import type { PresentPours } from './nearness.ts';
import { below, type Random } from './random.ts';
import { searchSurrogate, surrogateOf } from './surrogate.ts';

/** A day late against a day of finishing sooner, when the search weighs a step that is worse in one of them. */
const LATE_WORTH = 10;
/** A day after a date that was only wanted. */
const WANTED_WORTH = 5;
const LATENESS_WORTH = 20;
const UNPLANNED_WORTH = 100_000;
/** Share of steps that change the sequence; the others change the decoder's choices in one shift. */
const SEQUENCE_SHARE = 0.2;
/** A step may be this much worse at first, in weighted days; the allowance shrinks to nothing. */
const FIRST_ALLOWANCE = 8;
/** Rounds of the surrogate, each read off the best plan so far. */
const SURROGATE_ROUNDS = 4;

const weigh = (e: Evaluation): number =>
  e.unplannedWeight * UNPLANNED_WORTH +
  e.weightedDaysLate * LATE_WORTH +
  e.weightedDaysAfterWanted * WANTED_WORTH +
  e.lateness * LATENESS_WORTH +
  e.cost;

/** Sequences by the surrogate, each judged by a whole plan; the best found. */
export const improveSequence = (
  state: DecoderState,
  start: Found,
  stop: StopRule,
  random: Random,
  present?: PresentPours,
): Found => {
  let best = start;
  for (let round = 0; round < SURROGATE_ROUNDS; round++) {
    decode(state, best.dispatch);
    const { sequence } = searchSurrogate(
      surrogateOf(state),
      best.dispatch.sequence,
      random,
      Math.floor(stop.judged / SURROGATE_ROUNDS),
    );
    if (sequence.every((o, i) => o === best.dispatch.sequence[i])) break;
    const dispatch: Dispatch = { ...best.dispatch, sequence, inShift: new Map() };
    decode(state, dispatch);
    const found = foundIn(state, dispatch, present);
    if (!isBetter(found.evaluation, best.evaluation)) break;
    best = found;
  }
  return best;
};

const moveSequence = (sequence: Int32Array, random: Random): Int32Array => {
  const n = sequence.length;
  const kind = random();
  if (kind < 0.5) return insertMove(sequence, below(random, n), below(random, n));
  if (kind < 0.8) return swapMove(sequence, below(random, n), below(random, n));
  const length = 1 + below(random, Math.min(4, n));
  return blockMove(sequence, below(random, n - length + 1), length, below(random, n - length + 1));
};

const keyOf = ({ sequence, setUp }: Dispatch): string => (setUp ? `${sequence} ${setUp}` : sequence.join());

/** Share of the steps in the sequence that change only what is set up first, and not who gets it. */
const SET_UP_SHARE = 0.3;
/** Share of those that split an order, or put one together again. */
const SPLIT_SHARE = 0.3;

const changeSetUp = (setUp: Int32Array, random: Random): Int32Array =>
  random() < SPLIT_SHARE
    ? splitMove(setUp, below(random, setUp.length), below(random, setUp.length))
    : moveSequence(setUp, random);

/** One step in the sequence, or in what is set up first. */
const changeSequence = (dispatch: Dispatch, random: Random): Dispatch => {
  const { sequence, setUp = sequence } = dispatch;
  if (random() < SET_UP_SHARE) return { ...dispatch, setUp: changeSetUp(setUp, random) };
  return { ...dispatch, sequence: moveSequence(sequence, random) };
};

/** The present plan of a search with its trajectory, and the best one so far. */
class Search {
  private trajectory: Trajectory;
  /** Snapshots of the last plan that was given up. */
  private readonly spare: (Snapshot | undefined)[] = [];
  /** Sequences tried beside the present choices; the same again would tell nothing new. */
  private readonly tried = new Set<string>();
  present: Found;
  best: Found;

  constructor(
    private readonly state: DecoderState,
    start: Found,
    private readonly presentPours?: PresentPours,
  ) {
    this.present = this.best = start;
    this.trajectory = trajectoryOf(state, start.dispatch);
  }

  backToBest(): void {
    this.present = this.best;
    this.trajectory = trajectoryOf(this.state, this.best.dispatch, this.trajectory);
  }

  get shiftsWorked(): number {
    return this.trajectory.shifts;
  }

  private consider(dispatch: Dispatch, allowance: number, random: Random): boolean {
    const found = foundIn(this.state, dispatch, this.presentPours);
    const worse = weigh(found.evaluation) - weigh(this.present.evaluation);
    if (isPreferred(found, this.best)) this.best = found;
    if (worse > 0 && random() >= Math.exp(-worse / allowance)) return false;
    if (dispatch.inShift !== this.present.dispatch.inShift) this.tried.clear();
    this.present = found;
    this.tried.add(keyOf(dispatch));
    return true;
  }

  trySequence(dispatch: Dispatch, allowance: number, random: Random): void {
    const key = keyOf(dispatch);
    if (this.tried.has(key)) return;
    this.tried.add(key);
    decode(this.state, dispatch);
    if (this.consider(dispatch, allowance, random))
      this.trajectory = trajectoryOf(this.state, dispatch, this.trajectory);
  }

  tryShift(shift: number, choices: Choices, allowance: number, random: Random): void {
    const inShift = new Map(this.present.dispatch.inShift).set(shift, choices);
    const dispatch = { ...this.present.dispatch, inShift };
    if (!this.trajectory.isWhole) {
      decode(this.state, dispatch);
      if (this.consider(dispatch, allowance, random))
        this.trajectory = trajectoryOf(this.state, dispatch, this.trajectory);
      return;
    }
    const branch = branchOff(this.state, dispatch, this.trajectory, shift, this.spare);
    if (!this.consider(dispatch, allowance, random)) return;
    if (branch.isWhole) followBranch(this.state, this.trajectory, branch);
    else this.trajectory = trajectoryOf(this.state, dispatch, this.trajectory);
  }
}

/** Share of the steps after which the search goes on from the best plan and takes nothing much worse any more. */
const SETTLE_FROM = 0.6;
const SETTLING_ALLOWANCE = 1;

const allowanceAt = (part: number): number =>
  part < SETTLE_FROM
    ? FIRST_ALLOWANCE * (1 - part / SETTLE_FROM) + SETTLING_ALLOWANCE
    : SETTLING_ALLOWANCE * ((1 - part) / (1 - SETTLE_FROM)) + 1e-3;

/**
 * Local search on whole plans: steps in the sequence and in the decoder's choices, shift by shift, each judged by the
 * decoder; a worse one is now and then taken, ever more rarely (annealing). For the last steps it goes on from the best
 * plan. Stops after `stop.plans` steps.
 */
const anneal = (state: DecoderState, start: Found, stop: StopRule, random: Random, present?: PresentPours): Found => {
  const search = new Search(state, start, present);
  const scope = scopeOf(state.problem);
  const settleAt = Math.floor(stop.plans * SETTLE_FROM);
  for (let step = 0; step < stop.plans; step++) {
    if (step === settleAt) search.backToBest();
    const allowance = allowanceAt(step / stop.plans);
    const { dispatch } = search.present;
    if (dispatch.sequence.length > 1 && random() < SEQUENCE_SHARE) {
      search.trySequence(changeSequence(dispatch, random), allowance, random);
      continue;
    }
    if (search.shiftsWorked === 0) break;
    const shift = below(random, search.shiftsWorked);
    search.tryShift(shift, changeChoices(choicesIn(dispatch, shift), random, scope), allowance, random);
  }
  return search.best;
};

/** A search of so many steps is split into rounds that each start afresh; shorter ones are not. */
const STEPS_OF_A_ROUND = 3000;
const MOST_ROUNDS = 4;

/** Anneals from the plan it is given, in several rounds where there are steps enough, and returns the best of them. */
export const improvePlan = (
  state: DecoderState,
  start: Found,
  stop: StopRule,
  random: Random,
  present?: PresentPours,
): Found => {
  const rounds = Math.max(1, Math.min(MOST_ROUNDS, Math.floor(stop.plans / STEPS_OF_A_ROUND)));
  let best = start;
  for (let round = 0; round < rounds; round++) {
    const found = anneal(
      state,
      round % 2 === 0 ? start : best,
      { ...stop, plans: Math.floor(stop.plans / rounds) },
      random,
      present,
    );
    if (isPreferred(found, best)) best = found;
  }
  return best;
};
