import { expect, test } from 'vitest';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { decoderStateOf } from '../../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../../src/engine/decoder/dispatch.ts';
import { NONE } from '../../../src/engine/decoder/problem.ts';
import { settle } from '../../../src/engine/decoder/settle.ts';
import { isBetter } from '../../../src/engine/search/evaluation.ts';
import { foundIn } from '../../../src/engine/search/found.ts';
import { pressingOf } from '../../../src/engine/search/pressing.ts';
import { quickSearch } from '../../../src/engine/search/quick.ts';
import { tidied, tidyingTries } from '../../../src/engine/search/tidy.ts';
import { untidinessOf } from '../../../src/engine/search/untidiness.ts';
import { randomYard, YARD_KINDS } from '../../support/random-yard.ts';
import { scaledYard } from '../../support/scaled-yard.ts';

/** A quick plan of a random yard, and the tidier one, each settled anew. */
const beforeAndAfter = (seed: number) => {
  const problem = compile(randomYard(seed, YARD_KINDS[seed % YARD_KINDS.length]!));
  const state = decoderStateOf(problem, dispatchOf(new Int32Array(0)));
  const pressing = pressingOf(problem);
  const { dispatch } = quickSearch(state);
  const left = () => {
    const on = Array.from(state.orders.completesAt, (at) =>
      at === NONE ? null : problem.handover[problem.calendar.dayOf(at) - problem.today]!,
    );
    return { found: foundIn(state, state.dispatch), untidiness: untidinessOf(state, pressing), on };
  };
  settle(state, dispatch);
  const before = left();
  const tidier = tidied(state, before.found, 60);
  settle(state, tidier.dispatch);
  return { before, tidier, after: left() };
};

test('no order is later in a tidier plan, none is left out of it, and it is no worse', () => {
  let tidierOnes = 0;
  for (let seed = 52_000; seed < 52_015; seed++) {
    const { before, tidier, after } = beforeAndAfter(seed);
    expect(after.found.evaluation, `yard ${seed}`).toEqual(tidier.evaluation);
    expect(isBetter(before.found.evaluation, after.found.evaluation), `yard ${seed}`).toBe(false);
    before.on.forEach((day, o) => {
      if (day !== null) expect(after.on[o], `yard ${seed}, order ${o}`).toBeLessThanOrEqual(day);
    });
    if (isBetter(after.found.evaluation, before.found.evaluation)) continue;
    expect(after.untidiness).toBeLessThanOrEqual(before.untidiness);
    if (after.untidiness < before.untidiness) tidierOnes++;
  }
  expect(tidierOnes).toBeGreaterThan(2);
});

test('large yards are left as they were found', () => {
  expect(tidyingTries(compile(scaledYard(130, 26)), 'quick')).toBe(0);
  expect(tidyingTries(compile(randomYard(1001, 'typical')), 'quick')).toBeGreaterThan(0);
});
