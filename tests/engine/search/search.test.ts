import { describe, expect, test } from 'vitest';
import type { YardFile } from '../../../shared/yard-file.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { type DecoderState, decoderStateOf } from '../../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../../src/engine/decoder/dispatch.ts';
import { settle } from '../../../src/engine/decoder/settle.ts';
import { evaluate, isBetter } from '../../../src/engine/search/evaluation.ts';
import { improvePlan } from '../../../src/engine/search/improve.ts';
import { leftOutLast } from '../../../src/engine/search/left-out.ts';
import { quickSearch } from '../../../src/engine/search/quick.ts';
import { randomFrom } from '../../../src/engine/search/random.ts';
import { searchOn } from '../../../src/engine/search/search.ts';
import { randomYard } from '../../support/random-yard.ts';

const begun = (yard: YardFile) => {
  const state = decoderStateOf(compile(yard), dispatchOf(new Int32Array(0)));
  const quick = quickSearch(state);
  settle(state, quick.dispatch);
  return { state, quick: { ...quick, evaluation: evaluate(state) } };
};
const settledAfresh = ({ problem }: DecoderState, dispatch: ReturnType<typeof dispatchOf>) => {
  const state = decoderStateOf(problem, dispatch);
  settle(state, dispatch);
  return evaluate(state);
};

describe('what the search ends with', () => {
  test.each([2])('yard %i: settled afresh it is as good as reported, and no worse than quick planning', (seed) => {
    const yard = randomYard(seed, 'small');
    const { state, quick } = begun(yard);
    const found = searchOn(state, quick, 'normal', 1);
    expect(settledAfresh(state, found.dispatch)).toEqual(found.evaluation);
    expect(isBetter(quick.evaluation, found.evaluation)).toBe(false);
  });

  // These yards cannot make every order. With the sequence as the search left it, an order that is left out may stand
  // before others and take the material or the hours they need.
  test.each([0, 3, 8, 24, 28, 32])('tight yard %i: the orders left out stay the same ones', (seed) => {
    const { state, quick } = begun(randomYard(seed, 'tight-rack'));
    expect(state.orders.excluded.some((x) => x === 1)).toBe(true);
    const found = improvePlan(state, quick, { plans: 150, polishing: 0, judged: 0 }, randomFrom(seed));
    expect(settledAfresh(state, leftOutLast(state.orders.excluded, found.dispatch))).toEqual(found.evaluation);
  });
});
