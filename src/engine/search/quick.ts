import { refusals } from '../decoder/admit.ts';
import { decodeWhile } from '../decoder/decode.ts';
import type { DecoderState } from '../decoder/decoder-state.ts';
import { type Choices, type Dispatch, dispatchOf } from '../decoder/dispatch.ts';
import { NONE, type Problem } from '../decoder/problem.ts';
import { settle } from '../decoder/settle.ts';
import { poursOf } from './effort.ts';
import { type Found, foundIn, isPreferred } from './found.ts';
import { leftOutLast } from './left-out.ts';
import { lotDaysOf } from './moves/choices.ts';
import type { PresentPours } from './nearness.ts';
import {
  apparentTardinessFirst,
  earliestDueFirst,
  earliestWantedFirst,
  givenFirst,
  weightedShortestFirst,
  workDays,
} from './rules.ts';
import { WorseForSure } from './worse-for-sure.ts';

/** Nearly as a maker works with a whiteboard. */
const IN_ORDER: Partial<Choices> = {
  inOrder: true,
  leastFill: 0,
  waitMinutes: 1000,
  scarceFirst: false,
  spareMinutes: 0,
  slowMixesLate: false,
  coatAhead: false,
  noAhead: true,
};

/** The decoder's own choices that quick planning tries with each sequence. */
export const TRIED_CHOICES: Partial<Choices>[] = [
  {},
  { aheadFirst: true },
  { leastFill: 0 },
  { leastFill: 0.9, waitMinutes: 90 },
  { slowMixesLate: false, waitMinutes: 60 },
  IN_ORDER,
  { ...IN_ORDER, noAhead: false },
  { scarceFirst: false, firstOrderWeight: 0, waitMinutes: 0 },
];

/** Just as that maker works, not setting up for the next session, or setting up: no plan is worse than the best of these. */
export const BY_HAND: Partial<Choices>[] = [{ byHand: true, noAhead: true }, { byHand: true }];

/** Pours placed in all by one quick planning, about; at least three plans are tried whatever the size. */
const POURS_IN_ALL = 4000;

/** And as by hand: only on the largest yards not by every rule. */
const POURS_BY_HAND = 40_000;

/** Sequences by the dispatch rules, each once, most often best first. */
export const startSequences = (problem: Problem): Int32Array[] => {
  const work = workDays(problem);
  const candidates = [
    earliestDueFirst(problem),
    apparentTardinessFirst(problem, work, 2),
    apparentTardinessFirst(problem, work, 0.5),
    weightedShortestFirst(problem, work),
    // Where no date is only wanted both are the first again.
    givenFirst(problem),
    earliestWantedFirst(problem),
  ];
  const seen = new Set<string>();
  return candidates.filter((x) => !seen.has(x.join()) && seen.add(x.join()));
};

/** What a search starts from beside the dispatch rules, and what it stays close to. */
export interface Leaning {
  /** Dispatches to try first. */
  first: Dispatch[];
  /** Pours of the present plan: of plans that are equally good the one that keeps more of them wins. */
  present?: PresentPours;
}

/** Of the dispatches tried, so many settle for themselves which orders have to be left out; the others go by the best. */
const SETTLED_TRIES = 16;
/** On the largest yards fewer do: pours placed in all by those that do, about. */
const POURS_SETTLED = 64_000;

/** So often at most is the same tried with other orders left out. */
const MOST_ROUNDS = 3;

const isUnfinished = ({ orders }: DecoderState): boolean =>
  orders.completesAt.some((completesAt, o) => completesAt === NONE && !orders.excluded[o]);

/** The best of the dispatches tried, and the orders it leaves out. */
class Tries {
  private best: Found | null = null;
  private readonly leftOut: Uint8Array;
  private readonly bound: WorseForSure;
  private settledLeft: number;

  constructor(
    private readonly state: DecoderState,
    private readonly present: PresentPours | undefined,
  ) {
    this.leftOut = new Uint8Array(state.problem.orders.length);
    this.bound = new WorseForSure(state);
    this.settledLeft = Math.max(1, Math.min(SETTLED_TRIES, Math.floor(POURS_SETTLED / poursOf(state.problem))));
  }

  private consider(dispatch: Dispatch): void {
    const found = foundIn(this.state, dispatch, this.present);
    if (this.best && !isPreferred(found, this.best)) return;
    this.best = found;
    this.leftOut.set(this.state.orders.excluded);
  }

  /** Decodes with the orders left out that are marked; false as soon as the plan can be no better than the best one. */
  private decodeIfBetter(dispatch: Dispatch): boolean {
    const { state } = this;
    const best = this.best!.evaluation;
    return decodeWhile(state, dispatch, (shift) => this.bound.isWorse(shift, best)) && !isUnfinished(state);
  }

  /**
   * As `settle`, which orders are left out being settled for this dispatch; false when the plan can be no better. Where the
   * best plan leaves out nothing but what cannot be made, one that also lacks time for an order is worse.
   */
  private settleIfBetter(dispatch: Dispatch): boolean {
    const { state } = this;
    const { problem } = state;
    if (!this.best) {
      settle(state, dispatch);
      return true;
    }
    const refused = refusals(problem, dispatch.sequence);
    const least = problem.orders.reduce((sum, { weight }, o) => (refused.has(o) ? sum + weight : sum), 0);
    const more = least - this.best.evaluation.unplannedWeight;
    if (more > 1e-9) return false;
    if (more < -1e-9) {
      settle(state, dispatch);
      return true;
    }
    state.orders.excluded.fill(0);
    for (const order of refused.keys()) state.orders.excluded[order] = 1;
    return this.decodeIfBetter(dispatch);
  }

  try(dispatch: Dispatch): void {
    if (this.settledLeft-- > 0) {
      if (!this.settleIfBetter(dispatch)) return;
    } else {
      this.state.orders.excluded.set(this.leftOut);
      if (!this.decodeIfBetter(dispatch)) return;
    }
    this.consider(dispatch);
  }

  /** Tries the best dispatch so far with other choices. */
  tryOnBest(choices: Partial<Choices>): void {
    const { dispatch } = this.best!;
    this.try({ ...dispatch, choices: { ...dispatch.choices, ...choices } });
  }

  /** Tries all of them, and again where that changed which orders are left out. */
  tryWhileItDiffers(dispatches: readonly Dispatch[]): void {
    for (let round = 0; round < MOST_ROUNDS; round++) {
      const before = this.leftOut.join();
      for (const dispatch of dispatches) this.try(dispatch);
      if (this.leftOut.join() === before) return;
    }
  }

  /** The best one, settled: what is left out comes last in it, so that it is left out again. */
  end(): Found {
    if (this.leftOut.every((out) => out === 0)) return this.best!;
    const { dispatch, evaluation, unmoved } = this.best!;
    this.state.orders.excluded.set(this.leftOut);
    const last = leftOutLast(this.state.orders.excluded, dispatch);
    settle(this.state, last);
    this.best = { dispatch: last, evaluation, unmoved };
    this.consider(last);
    return this.best;
  }
}

/** Waiting for the first of the finished pieces that are not ready yet, and for all of them; nothing where all are ready. */
export const waitingForLots = (problem: Problem): Partial<Choices>[] => {
  const days = lotDaysOf(problem);
  return [...new Set([...days.slice(0, 1), ...days.slice(-1)])].map((lotsUntil) => ({ lotsUntil }));
};

/** Tries a few dispatches and returns the best with its evaluation. */
export const quickSearch = (state: DecoderState, leaning: Leaning = { first: [] }): Found => {
  const sequences = startSequences(state.problem);
  const most = Math.max(
    3,
    Math.min(sequences.length * TRIED_CHOICES.length, Math.floor(POURS_IN_ALL / poursOf(state.problem))),
  );
  const tries = new Tries(state, leaning.present);
  for (const dispatch of leaning.first) tries.try(dispatch);
  for (let i = 0; i < most; i++) {
    // Diagonally through both lists, so that few tries still see several of each.
    const sequence = sequences[i % sequences.length]!;
    const choices = TRIED_CHOICES[(i + Math.floor(i / sequences.length)) % TRIED_CHOICES.length]!;
    tries.try(dispatchOf(sequence, choices));
  }
  const byHand = BY_HAND.flatMap((choices) => sequences.map((sequence) => dispatchOf(sequence, choices)));
  tries.tryWhileItDiffers(byHand.slice(0, Math.max(2, Math.floor(POURS_BY_HAND / poursOf(state.problem)))));
  for (const choices of waitingForLots(state.problem)) tries.tryOnBest(choices);
  return tries.end();
};
