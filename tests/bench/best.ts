import { compile } from '../../src/engine/decoder/compile.ts';
import { decoderStateOf } from '../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../src/engine/decoder/dispatch.ts';
import { settle } from '../../src/engine/decoder/settle.ts';
import { type Evaluation, evaluate, isBetter } from '../../src/engine/search/evaluation.ts';
import type { Found } from '../../src/engine/search/found.ts';
import { quickSearch } from '../../src/engine/search/quick.ts';
import { searchOn } from '../../src/engine/search/search.ts';
import { randomYard, YARD_KINDS, type YardKind } from '../support/random-yard.ts';
import { planByCleverHand } from './by-hand.ts';
import type { Row } from './table.ts';

const FIRST_SEED = 1001;

interface Reached {
  hand: number;
  normal: number;
  thorough: number;
  best: number;
  /** Searches of thorough effort that the best is the best of. */
  searches: number;
}

/**
 * One yard at normal and at thorough effort, and the best that thorough searches find in so many seconds, each with a seed
 * of its own, in turn from the quick plan and from the best one so far. Null where one of them leaves other orders out, so that
 * days late cannot be compared.
 */
const reachedOn = (seed: number, kind: YardKind, seconds: number): Reached | null => {
  const problem = compile(randomYard(seed, kind));
  const state = decoderStateOf(problem, dispatchOf(new Int32Array(0)));
  const until = performance.now() + seconds * 1000;
  const quick = quickSearch(state);
  const worthOf = ({ dispatch }: Found): Evaluation => {
    settle(state, dispatch);
    return evaluate(state);
  };
  const normal = worthOf(searchOn(state, quick, 'normal', 1));
  let found = searchOn(state, quick, 'thorough', 1);
  const thorough = worthOf(found);
  let [best, searches] = [thorough, 1];
  while (performance.now() < until) {
    const next = searchOn(state, searches % 2 === 0 ? quick : found, 'thorough', ++searches);
    const worth = worthOf(next);
    if (isBetter(worth, best)) [found, best] = [next, worth];
  }
  settle(state, found.dispatch);
  const hand = evaluate(planByCleverHand(problem, state.orders.excluded));
  const all = [hand, normal, thorough, best];
  if (all.some(({ unplannedWeight }) => Math.abs(unplannedWeight - best.unplannedWeight) > 1e-9)) return null;
  const [h, n, t, b] = all.map(({ weightedDaysLate }) => weightedDaysLate);
  return { hand: h!, normal: n!, thorough: t!, best: b!, searches };
};

const over = (days: number, best: number): string => `${((100 * (days - best)) / Math.max(1, best)).toFixed(1)} % over`;

const rowOf = (what: string, reached: readonly (Reached | null)[]): Row => {
  const all = reached.filter((one) => one !== null);
  const sum = (key: keyof Reached) => all.reduce((n, one) => n + one[key], 0);
  const best = sum('best');
  return {
    what: `${what}: ${all.length} yards, ${reached.length - all.length} leave other orders out, ${sum('searches')} searches`,
    figure: `normal ${sum('normal')} (${over(sum('normal'), best)}), thorough ${sum('thorough')} (${over(sum('thorough'), best)}), best ${best}, by hand ${sum('hand')} (best ${((100 * best) / Math.max(1, sum('hand'))).toFixed(1)} % of it)`,
    aim: 'normal 3 %, thorough 1 %',
  };
};

/** Weighted days late at each effort against the best that is found when nobody waits, so many yards of each kind, so many seconds a yard. */
export const bestRows = (yards: number, seconds: number): Row[] => {
  const kinds = YARD_KINDS.map((kind) => ({
    kind,
    reached: Array.from({ length: yards }, (_, i) => reachedOn(FIRST_SEED + i, kind, seconds)),
  }));
  return [
    ...kinds.map(({ kind, reached }) => rowOf(kind, reached)),
    rowOf(
      'all',
      kinds.flatMap(({ reached }) => reached),
    ),
  ];
};
