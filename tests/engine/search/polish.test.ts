import { describe, expect, test } from 'vitest';
import type { YardFile } from '../../../shared/yard-file.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { decode } from '../../../src/engine/decoder/decode.ts';
import { type DecoderState, decoderStateOf } from '../../../src/engine/decoder/decoder-state.ts';
import { type Choices, dispatchOf } from '../../../src/engine/decoder/dispatch.ts';
import { settle } from '../../../src/engine/decoder/settle.ts';
import { dealAgain } from '../../../src/engine/search/deal.ts';
import { evaluate, isBetter } from '../../../src/engine/search/evaluation.ts';
import type { Found } from '../../../src/engine/search/found.ts';
import { polish } from '../../../src/engine/search/polish.ts';
import { startSequences } from '../../../src/engine/search/quick.ts';
import { randomFrom } from '../../../src/engine/search/random.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';

const begun = (yard: YardFile, choices: Partial<Choices> = {}): { state: DecoderState; start: Found } => {
  const state = decoderStateOf(compile(yard), dispatchOf(new Int32Array(0)));
  const dispatch = dispatchOf(startSequences(state.problem)[0]!, choices);
  settle(state, dispatch);
  return { state, start: { dispatch, evaluation: evaluate(state), unmoved: 0 } };
};

const decodedAfresh = (state: DecoderState, { dispatch }: Found) => {
  decode(state, dispatch);
  return evaluate(state);
};

const STOP = { plans: 0, polishing: 0, judged: 20_000 };
const SEEDS = yardSeeds(12);

describe('a polished plan', () => {
  test('is never worse, and is what its dispatch comes to', () => {
    let better = 0;
    for (const seed of SEEDS) {
      const { state, start } = begun(randomYard(seed, seed % 3 === 0 ? 'tight-rack' : 'small'), { leastFill: 0 });
      const found = polish(state, start, 300);
      expect(isBetter(start.evaluation, found.evaluation), `seed ${seed}`).toBe(false);
      expect(decodedAfresh(state, found), `seed ${seed}`).toEqual(found.evaluation);
      if (isBetter(found.evaluation, start.evaluation)) better++;
    }
    expect(better).toBeGreaterThan(0);
  });

  // Nothing but one piece at a time is poured at first. Nobody waits for any of them in particular, and two of them fit
  // one batch: half as many batches are enough.
  test('has its half-empty batches merged where no order gets later by it', () => {
    const lines = [{ kit: 'pair', quantity: 2 }];
    const { state, start } = begun(smallYard({ orders: [{ id: 'a', weight: 1, lines }] }), { mostPieces: 1 });
    const before = state.placed.batches;
    const found = polish(state, start, 300);
    decode(state, found.dispatch);
    expect(state.placed.batches).toBeLessThan(before);
    expect(found.evaluation.weightedDaysLate).toBe(start.evaluation.weightedDaysLate);
  });

  test('with no tries is what it was', () => {
    const { state, start } = begun(randomYard(2, 'small'));
    expect(polish(state, start, 0)).toEqual(start);
  });
});

describe('pieces dealt again', () => {
  test('are never worse off, and the plan is what its dispatch comes to', () => {
    for (const seed of SEEDS) {
      const { state, start } = begun(randomYard(seed, 'typical'));
      const found = dealAgain(state, start, STOP, randomFrom(seed));
      expect(isBetter(start.evaluation, found.evaluation), `seed ${seed}`).toBe(false);
      expect(decodedAfresh(state, found), `seed ${seed}`).toEqual(found.evaluation);
    }
  });

  // Four pieces come one after another whoever they are for. Dealt in the order in which they were asked for, the large
  // order has the first three of them and the small one, wanted first and weighing more, the last.
  test('go to whom they help most; what is set up stays in its order', () => {
    const line = (quantity: number) => [{ casting: 'panel-900', quantity }];
    const orders = [
      { id: 'large', weight: 1, due: '2027-05-29', lines: line(3) },
      { id: 'small', weight: 3, due: '2027-04-10', lines: line(1) },
    ];
    const yard = smallYard({ orders });
    const state = decoderStateOf(compile(yard), dispatchOf(new Int32Array(0)));
    const dispatch = dispatchOf(Int32Array.of(0, 1), { mostPieces: 1 });
    settle(state, dispatch);
    const start = { dispatch, evaluation: evaluate(state), unmoved: 0 };
    const found = dealAgain(state, start, STOP, randomFrom(1));
    expect([...found.dispatch.sequence]).toEqual([1, 0]);
    expect([...found.dispatch.setUp!]).toEqual([0, 1]);
    expect(found.evaluation.weightedDaysLate).toBeLessThan(start.evaluation.weightedDaysLate);
  });
});
