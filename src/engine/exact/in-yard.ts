import { keeping } from '../decoder/compile.ts';
import { decoderStateOf } from '../decoder/decoder-state.ts';
import { type Dispatch, dispatchOf } from '../decoder/dispatch.ts';
import { NONE, type Problem } from '../decoder/problem.ts';
import { settle } from '../decoder/settle.ts';
import { lotDaysOf } from '../search/moves/choices.ts';
import { asKeep } from './as-keep.ts';
import type { Way, Worth } from './search.ts';

/** A way as a plan of the yard: all that it does is kept, and the dispatch deals its pieces. */
export interface InYard {
  problem: Problem;
  dispatch: Dispatch;
}

const soonestFirst = (completesAt: readonly number[]): number[] => {
  const at = (o: number) => (completesAt[o] === NONE ? Number.POSITIVE_INFINITY : completesAt[o]!);
  return completesAt.map((_, o) => o).sort((a, b) => at(a) - at(b) || a - b);
};

/**
 * Ways to deal the pieces: who is complete first comes first, or who has finished pieces by this way; some wait for finished
 * pieces that are not ready yet, and others do not.
 */
const dealings = (problem: Problem, { completesAt, pieces }: Way): Dispatch[] => {
  const finished = pieces.slice(0, lotsOf(problem));
  const served = new Set(finished.map(({ usedBy }) => usedBy));
  const waits = new Set(finished.filter(({ readyAt }) => readyAt > problem.now).map(({ usedBy }) => usedBy));
  const pourFirst = problem.orders.map((_, o) => o).filter((o) => !waits.has(o));
  const inTurn = soonestFirst(completesAt);
  const servedFirst = [...inTurn.filter((o) => served.has(o)), ...inTurn.filter((o) => !served.has(o))];
  return [inTurn, servedFirst].flatMap((sequence) =>
    [0, ...lotDaysOf(problem)].flatMap((lotsUntil) =>
      [{}, { pourFirst }].map((more) => ({ ...dispatchOf(Int32Array.from(sequence), { lotsUntil }), ...more })),
    ),
  );
};

/** The first pieces of a way are those of the lots. */
const lotsOf = ({ finished }: Problem): number => finished.reduce((n, { count }) => n + count, 0);

/** Orders as they are complete in the plan of a dispatch; null where something that was to be kept is not in it. */
const completedBy = ({ problem, dispatch }: InYard): readonly number[] | null => {
  if (problem.fixed.dropped.length > 0) return null;
  const state = decoderStateOf(problem, dispatch);
  settle(state, dispatch);
  return Array.from(state.orders.completesAt);
};

/**
 * A way that was found, tried in the yard itself: planned with all that it does kept. Null where that is not as good, for want
 * of room to cure in, say: then nothing is claimed of it.
 */
export const inYard = (problem: Problem, way: Way, worth: Worth): InYard | null => {
  const kept = keeping(problem, asKeep(problem, way.work));
  for (const dispatch of dealings(kept, way)) {
    const completesAt = completedBy({ problem: kept, dispatch });
    if (completesAt && worth(completesAt) <= way.worth) return { problem: kept, dispatch };
  }
  return null;
};
