import { type Choices, choicesIn, type Dispatch } from '../place/dispatch.ts';
import { type Course, decode, decodeFrom } from '../place/decode.ts';
import type { Placing } from '../place/placing.ts';
import { coarseModelOf, coarseSearch } from './coarse.ts';
import type { StopRule } from './effort.ts';
import { type Evaluation, evaluate, isBetter } from './evaluation.ts';
import { blockMove } from './moves/block.ts';
import { changeChoices } from './moves/choices.ts';
import { insertMove } from './moves/insert.ts';
import { swapMove } from './moves/swap.ts';
import { below, type Random } from './random.ts';

export interface Found {
  dispatch: Dispatch;
  evaluation: Evaluation;
}

/** A day late against a day of finishing sooner, when the search weighs a step that is worse in one of them. */
const LATE_WORTH = 10;
const LATENESS_WORTH = 20;
const UNPLANNED_WORTH = 100_000;
/** Share of steps that change the sequence; the others change the decoder's choices in one shift. */
const SEQUENCE_SHARE = 0.2;
/** A step may be this much worse at first, in weighted days; the allowance shrinks to nothing. */
const FIRST_ALLOWANCE = 30;
/** Rounds of the rough model, each read off the best plan so far. */
const COARSE_ROUNDS = 4;

const weigh = (e: Evaluation): number =>
  e.unplannedWeight * UNPLANNED_WORTH + e.weightedDaysLate * LATE_WORTH + e.lateness * LATENESS_WORTH + e.cost;

/** Sequences by the rough model, each judged by a whole plan; the best found. */
export const improveSequence = (at: Placing, start: Found, stop: StopRule, random: Random): Found => {
  let best = start;
  for (let round = 0; round < COARSE_ROUNDS; round++) {
    decode(at, best.dispatch);
    const { sequence } = coarseSearch(coarseModelOf(at), best.dispatch.sequence, random, Math.floor(stop.coarse / COARSE_ROUNDS));
    if (sequence.every((o, i) => o === best.dispatch.sequence[i])) break;
    const dispatch: Dispatch = { ...best.dispatch, sequence, inShift: new Map() };
    decode(at, dispatch);
    const evaluation = evaluate(at);
    if (!isBetter(evaluation, best.evaluation)) break;
    best = { dispatch, evaluation };
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

/** The course of the present plan, and how many of its shifts a plan that was tried and given up has left intact. */
class Search {
  private readonly course: Course = { snapshots: [] };
  private intact = 0;
  private shifts = 0;
  present: Found;
  best: Found;

  constructor(
    private readonly at: Placing,
    start: Found,
  ) {
    this.present = this.best = start;
    this.decodeWhole(start.dispatch);
  }

  private decodeWhole(dispatch: Dispatch): void {
    this.course.snapshots.length = 0;
    decode(this.at, dispatch, this.course);
    this.intact = this.shifts = this.course.snapshots.length;
  }

  get shiftsWorked(): number {
    return this.shifts;
  }

  private consider(dispatch: Dispatch, allowance: number, random: Random): boolean {
    const evaluation = evaluate(this.at);
    const worse = weigh(evaluation) - weigh(this.present.evaluation);
    if (isBetter(evaluation, this.best.evaluation)) this.best = { dispatch, evaluation };
    if (worse > 0 && random() >= Math.exp(-worse / allowance)) return false;
    this.present = { dispatch, evaluation };
    return true;
  }

  trySequence(sequence: Int32Array, allowance: number, random: Random): void {
    const dispatch = { ...this.present.dispatch, sequence };
    decode(this.at, dispatch);
    if (this.consider(dispatch, allowance, random)) this.decodeWhole(dispatch);
    else this.intact = Math.min(this.intact, 1);
  }

  tryShift(shift: number, choices: Choices, allowance: number, random: Random): void {
    const inShift = new Map(this.present.dispatch.inShift).set(shift, choices);
    const dispatch = { ...this.present.dispatch, inShift };
    const first = Math.max(0, Math.min(shift, this.intact - 1));
    decodeFrom(this.at, dispatch, first, this.course);
    if (this.consider(dispatch, allowance, random)) this.intact = this.shifts = this.course.snapshots.length;
    else this.intact = Math.min(this.intact, shift + 1);
  }
}

/**
 * Local search on whole plans: steps in the sequence and in the decoder's choices, shift by shift, each judged by the
 * decoder; a worse one is now and then taken, ever more rarely (annealing). Stops after `stop.plans` steps.
 */
export const improvePlan = (at: Placing, start: Found, stop: StopRule, random: Random): Found => {
  const search = new Search(at, start);
  const mixes = at.problem.mixes.length;
  for (let step = 0; step < stop.plans; step++) {
    const allowance = FIRST_ALLOWANCE * (1 - step / stop.plans) + 1e-3;
    const { dispatch } = search.present;
    if (dispatch.sequence.length > 1 && random() < SEQUENCE_SHARE) {
      search.trySequence(moveSequence(dispatch.sequence, random), allowance, random);
      continue;
    }
    if (search.shiftsWorked === 0) break;
    const shift = below(random, search.shiftsWorked);
    search.tryShift(shift, changeChoices(choicesIn(dispatch, shift), random, mixes), allowance, random);
  }
  return search.best;
};
