import { type Choices, type Dispatch, dispatchOf } from '../place/dispatch.ts';
import type { Placing } from '../place/placing.ts';
import { settle } from '../place/settle.ts';
import { type Evaluation, evaluate, isBetter } from './evaluation.ts';
import { apparentTardinessFirst, earliestDueFirst, weightedShortestFirst, workDays } from './rules.ts';
import type { Problem } from '../place/problem.ts';

/** The decoder's own choices that quick planning tries with each sequence. */
export const TRIED_CHOICES: Partial<Choices>[] = [
  {},
  { aheadFirst: true },
  { leastFill: 0 },
  { leastFill: 0.9, waitMinutes: 90 },
  { slowMixesLate: false, waitMinutes: 60 },
  { leastFill: 0, waitMinutes: 0, firstOrderWeight: 100, stripFirst: true, noAhead: true },
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

/** Tries a few dispatches and returns the best with its evaluation. */
export const quickSearch = (at: Placing): { dispatch: Dispatch; evaluation: Evaluation } => {
  const sequences = startSequences(at.problem);
  const pours = Math.max(1, at.problem.orders.reduce((n, o) => n + o.pieces.reduce((k, p) => k + p.count, 0), 0));
  const tries = Math.max(3, Math.min(sequences.length * TRIED_CHOICES.length, Math.floor(POURS_IN_ALL / pours)));
  let best: { dispatch: Dispatch; evaluation: Evaluation } | null = null;
  for (let i = 0; i < tries; i++) {
    // Diagonally through both lists, so that few tries still see several of each.
    const sequence = sequences[i % sequences.length]!;
    const choices = TRIED_CHOICES[(i + Math.floor(i / sequences.length)) % TRIED_CHOICES.length]!;
    const dispatch = dispatchOf(sequence, choices);
    settle(at, dispatch);
    const evaluation = evaluate(at);
    if (!best || isBetter(evaluation, best.evaluation)) best = { dispatch, evaluation };
  }
  return best!;
};
