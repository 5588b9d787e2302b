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
  if (ours.weightedDaysLate > theirs.weightedDaysLate + 1e-9) sums.worse++;
  sums.handBatches += hand.placed.batches;
  sums.ourBatches += state.placed.batches;
  sums.handBags += bagsOf(hand.placed);
  sums.ourBags += bagsOf(state.placed);
};

const rowOf = (what: string, s: Sums): Row => ({
  what: `${what}: ${s.yards} yards, in ${s.leftMore} of them the hand left more out`,
  figure: `days late ${s.ours} to ${s.hand} (${((100 * s.ours) / Math.max(1, s.hand)).toFixed(1)} %), worse ${s.worse}`,
  aim: `batches ${s.ourBatches} to ${s.handBatches}, bags ${s.ourBags} to ${s.handBags}`,
});

const none = (): Sums => ({
  yards: 0,
  leftMore: 0,
  worse: 0,
  hand: 0,
  ours: 0,
  handBatches: 0,
  ourBatches: 0,
  handBags: 0,
  ourBags: 0,
});

/** Against a clever maker with a whiteboard, on random yards: weighted days late, batches and bags, ours to theirs. */
export const qualityRows = (effort: Effort): Row[] => {
  const all = none();
  const rows = YARD_KINDS.map((kind) => {
    const sums = none();
    for (let i = 0; i < YARDS_OF_A_KIND; i++) compare(sums, FIRST_SEED + i, kind, effort);
    for (const key of Object.keys(all) as (keyof Sums)[]) all[key] += sums[key];
    return rowOf(kind, sums);
  });
  return [...rows, rowOf('all (aim: at most 80 %, never worse)', all)];
};
