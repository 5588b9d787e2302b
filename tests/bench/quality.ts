import { lateBound } from '../../src/engine/bound/bound.ts';
import { compile } from '../../src/engine/decoder/compile.ts';
import { bagsOf, decoderStateOf } from '../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../src/engine/decoder/dispatch.ts';
import { settle } from '../../src/engine/decoder/settle.ts';
import type { Effort } from '../../src/engine/search/effort.ts';
import { evaluate } from '../../src/engine/search/evaluation.ts';
import { quickSearch } from '../../src/engine/search/quick.ts';
import { searchOn } from '../../src/engine/search/search.ts';
import { randomYard, YARD_KINDS, type YardKind } from '../support/random-yard.ts';
import { planByCleverHand } from './by-hand.ts';
import type { Row } from './table.ts';

const YARDS_OF_A_KIND = 20;
const FIRST_SEED = 1001;

interface Sums {
  yards: number;
  /** Yards in which the hand leaves more orders out, so that days late cannot be compared: they count as beaten. */
  leftMore: number;
  worse: number;
  hand: number;
  ours: number;
  /** What no plan with the same orders in it beats. */
  bound: number;
  /** Yards by seed whose bound is less than half of ours. */
  loose: string[];
  handBatches: number;
  ourBatches: number;
  handBags: number;
  ourBags: number;
}

/** Adds one yard to the sums, beside the best plan of the clever hand. */
const compare = (sums: Sums, seed: number, kind: YardKind, effort: Effort): void => {
  const problem = compile(randomYard(seed, kind));
  const state = decoderStateOf(problem, dispatchOf(new Int32Array(0)));
  const quick = quickSearch(state);
  const found = effort === 'quick' ? quick : searchOn(state, quick, effort, 1);
  settle(state, found.dispatch);
  const ours = evaluate(state);
  const hand = planByCleverHand(problem, state.orders.excluded);
  const theirs = evaluate(hand);
  sums.yards++;
  if (theirs.unplannedWeight > ours.unplannedWeight + 1e-9) {
    sums.leftMore++;
    return;
  }
  sums.hand += theirs.weightedDaysLate;
  sums.ours += ours.weightedDaysLate;
  const planned = problem.orders.flatMap((_, o) => (state.orders.excluded[o] ? [] : [o]));
  const bound = ours.weightedDaysLate > 0 ? lateBound(problem, planned, ours.weightedDaysLate) : 0;
  sums.bound += bound;
  if (bound < ours.weightedDaysLate / 2) sums.loose.push(`${seed} ${Math.round(bound)} of ${ours.weightedDaysLate}`);
  if (ours.weightedDaysLate > theirs.weightedDaysLate + 1e-9) sums.worse++;
  sums.handBatches += hand.placed.batches;
  sums.ourBatches += state.placed.batches;
  sums.handBags += bagsOf(hand.placed);
  sums.ourBags += bagsOf(state.placed);
};

const rowOf = (what: string, s: Sums): Row => ({
  what: `${what}: ${s.yards} yards, in ${s.leftMore} of them the hand left more out`,
  figure: `days late ${s.ours} to ${s.hand} (${((100 * s.ours) / Math.max(1, s.hand)).toFixed(1)} %), worse ${s.worse}; bound ${((100 * s.bound) / Math.max(1, s.ours)).toFixed(1)} % of ours`,
  aim: `batches ${s.ourBatches} to ${s.handBatches}, bags ${s.ourBags} to ${s.handBags}`,
});

const looseRow = (kind: string, { loose }: Sums): Row => ({
  what: `${kind}: ${loose.length} yards whose bound is under half`,
  figure: loose.join(', ') || 'none',
  aim: 'a bound of half in all',
});

const add = (to: Sums, { loose, ...figures }: Sums): void => {
  to.loose.push(...loose);
  for (const key of Object.keys(figures) as (keyof typeof figures)[]) to[key] += figures[key];
};

const none = (): Sums => ({
  yards: 0,
  leftMore: 0,
  worse: 0,
  hand: 0,
  ours: 0,
  bound: 0,
  loose: [],
  handBatches: 0,
  ourBatches: 0,
  handBags: 0,
  ourBags: 0,
});

/** Against a clever maker with a whiteboard, on random yards: weighted days late, batches and bags, ours to theirs, and how much of ours is proven. */
export const qualityRows = (effort: Effort): Row[] => {
  const all = none();
  const rows = YARD_KINDS.map((kind) => {
    const sums = none();
    for (let i = 0; i < YARDS_OF_A_KIND; i++) compare(sums, FIRST_SEED + i, kind, effort);
    add(all, sums);
    return [rowOf(kind, sums), looseRow(kind, sums)];
  });
  return [...rows.flat(), rowOf('all (aim: at most 80 %, never worse)', all)];
};
