import { describe, expect, test } from 'vitest';
import type { YardFile } from '../../../shared/yard-file.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { decode } from '../../../src/engine/decoder/decode.ts';
import { type DecoderState, decoderStateOf } from '../../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../../src/engine/decoder/dispatch.ts';
import { settle } from '../../../src/engine/decoder/settle.ts';
import { evaluate, isBetter } from '../../../src/engine/search/evaluation.ts';
import type { Found } from '../../../src/engine/search/found.ts';
import { improvePlan, improveSequence } from '../../../src/engine/search/improve.ts';
import { quickSearch } from '../../../src/engine/search/quick.ts';
import { randomFrom } from '../../../src/engine/search/random.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';

const begun = (yard: YardFile): { state: DecoderState; start: Found } => {
  const state = decoderStateOf(compile(yard), dispatchOf(new Int32Array(0)));
  const start = quickSearch(state);
  settle(state, start.dispatch);
  return { state, start: { ...start, evaluation: evaluate(state) } };
};
/** What a dispatch comes to when it is placed from nothing, with room of its own; the same orders are left out. */
const decodedAfresh = (yard: YardFile, { dispatch }: Found, { orders }: DecoderState) => {
  const state = decoderStateOf(compile(yard), dispatch);
  state.orders.excluded.set(orders.excluded);
  decode(state, dispatch);
  return evaluate(state);
};

// A step back from a sequence that was given up once started from queues in the wrong order, and a plan cut short at the
// end of the horizon once left tasks of its own behind: both reported what no dispatch comes to.
const SEEDS = yardSeeds(14);
const SHORT_HORIZONS = SEEDS.map((seed) => {
  const yard = randomYard(seed, 'small');
  return { ...yard, yard: { ...yard.yard, horizonDays: 6 + (seed % 9) } };
});

describe('what the search reports', () => {
  test('is what its dispatch comes to when it is placed afresh', () => {
    for (const seed of SEEDS) {
      const yard = randomYard(seed, seed % 4 === 0 ? 'tight-rack' : 'small');
      const { state, start } = begun(yard);
      const found = improvePlan(state, start, { plans: 150, polishing: 0, judged: 0 }, randomFrom(seed));
      expect(decodedAfresh(yard, found, state), `seed ${seed}`).toEqual(found.evaluation);
      expect(isBetter(start.evaluation, found.evaluation), `seed ${seed}`).toBe(false);
    }
  });

  test('also where the horizon is short', () => {
    SHORT_HORIZONS.forEach((yard, seed) => {
      const { state, start } = begun(yard);
      const found = improvePlan(state, start, { plans: 150, polishing: 0, judged: 0 }, randomFrom(seed));
      expect(decodedAfresh(yard, found, state), `seed ${seed}`).toEqual(found.evaluation);
    });
  });

  test('is the same from the same seed', () => {
    const yard = randomYard(5, 'small');
    const run = () => {
      const { state, start } = begun(yard);
      return improvePlan(state, start, { plans: 200, polishing: 0, judged: 0 }, randomFrom(9));
    };
    expect(run()).toEqual(run());
  });

  test('after no steps is what it started from', () => {
    const { state, start } = begun(randomYard(5, 'small'));
    expect(improvePlan(state, start, { plans: 0, polishing: 0, judged: 0 }, randomFrom(1))).toEqual(start);
  });
});

test('sequences by the surrogate are never worse, and are what they are said to be', () => {
  for (const seed of SEEDS.slice(0, 12)) {
    const yard = randomYard(seed, 'tight-rack');
    const { state, start } = begun(yard);
    const found = improveSequence(state, start, { plans: 12, polishing: 0, judged: 4000 }, randomFrom(seed));
    expect(isBetter(start.evaluation, found.evaluation)).toBe(false);
    expect(decodedAfresh(yard, found, state), `seed ${seed}`).toEqual(found.evaluation);
  }
});
