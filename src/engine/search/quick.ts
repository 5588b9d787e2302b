import { type Choices, type Dispatch, dispatchOf } from '../place/dispatch.ts';
import type { Placing } from '../place/placing.ts';
import type { Problem } from '../place/problem.ts';
import { settle } from '../place/settle.ts';
import { poursOf } from './effort.ts';
import { evaluate, isBetter } from './evaluation.ts';
import type { Found } from './improve.ts';
import { type PresentPours, poursLeft } from './nearness.ts';
import { apparentTardinessFirst, earliestDueFirst, weightedShortestFirst, workDays } from './rules.ts';

/** As a maker works with a whiteboard; now and then nothing beats it. */
const BY_HAND: Partial<Choices> = {
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
  BY_HAND,
  { ...BY_HAND, noAhead: false },
  { scarceFirst: false, firstOrderWeight: 0, waitMinutes: 0 },
];

/** Pours placed in all by one quick planning, about; at least three plans are tried whatever the size. */
const POURS_IN_ALL = 4000;

/** Sequences by the dispatch rules, each once, most often best first. */
export const startSequences = (problem: Problem): Int32Array[] => {
  const work = workDays(problem);
  const candidates = [
    earliestDueFirst(problem),
    apparentTardinessFirst(problem, work, 2),
    apparentTardinessFirst(problem, work, 0.5),
    weightedShortestFirst(problem, work),
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

/** Tries a few dispatches and returns the best with its evaluation. */
export const quickSearch = (at: Placing, leaning: Leaning = { first: [] }): Found => {
  const sequences = startSequences(at.problem);
  const tries = Math.max(
    3,
    Math.min(sequences.length * TRIED_CHOICES.length, Math.floor(POURS_IN_ALL / poursOf(at.problem))),
  );
  let best: Found | null = null;
  const consider = (dispatch: Dispatch) => {
    settle(at, dispatch);
    const evaluation = evaluate(at);
    const kept = leaning.present ? poursLeft(at, leaning.present) : 0;
    const better = !best || isBetter(evaluation, best.evaluation);
    if (better || (!isBetter(best!.evaluation, evaluation) && kept > best!.kept)) best = { dispatch, evaluation, kept };
  };
  for (const dispatch of leaning.first) consider(dispatch);
  for (let i = 0; i < tries; i++) {
    // Diagonally through both lists, so that few tries still see several of each.
    const sequence = sequences[i % sequences.length]!;
    const choices = TRIED_CHOICES[(i + Math.floor(i / sequences.length)) % TRIED_CHOICES.length]!;
    consider(dispatchOf(sequence, choices));
  }
  return best!;
};
