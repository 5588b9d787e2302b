import { describe, expect, test } from 'vitest';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { decode } from '../../../src/engine/decoder/decode.ts';
import { decoderStateOf } from '../../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../../src/engine/decoder/dispatch.ts';
import { evaluate } from '../../../src/engine/search/evaluation.ts';
import { randomFrom } from '../../../src/engine/search/random.ts';
import { searchSurrogate, surrogateCost, surrogateOf } from '../../../src/engine/search/surrogate.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const today = dayNumber('2027-04-08');

/** One mould, one turn a day, jobs of so many pieces: the surrogate is exact. */
const daily = (jobs: { pieces: number; due: number; weight: number }[]) =>
  compile(
    smallYard({
      yard: { ...base.yard, handoverDays: undefined },
      work: [{ ...base.work[0]!, rule: 'FREQ=DAILY', start: '10:00' }],
      mixes: [{ ...base.mixes[0]!, demouldMinutes: 1200 }],
      moulds: [base.moulds[0]!],
      materials: base.materials.map((m) => ({ ...m, onHand: 500 })),
      orders: jobs.map(({ pieces, due, weight }, i) => ({
        id: `J${i}`,
        due: dateOfDay(today + due),
        weight,
        lines: [{ casting: 'panel-900', quantity: pieces }],
      })),
    }),
  );
const jobs = [
  { pieces: 3, due: 9, weight: 1 },
  { pieces: 2, due: 3, weight: 2 },
  { pieces: 1, due: 2, weight: 5 },
  { pieces: 4, due: 6, weight: 3 },
];
const permutations = (list: number[]): number[][] =>
  list.length < 2 ? [list] : list.flatMap((x) => permutations(list.filter((y) => y !== x)).map((rest) => [x, ...rest]));
const SEQUENCES = permutations([0, 1, 2, 3]).map((x) => Int32Array.from(x));

const problem = daily(jobs);
const state = decoderStateOf(problem, dispatchOf(SEQUENCES[0]!));
decode(state, state.dispatch);
const model = surrogateOf(state);

describe('one mould that turns once a day', () => {
  // Filled on day k (0 is Thursday the 8th), stripped on day k + 1: the n-th piece is there on day n.
  test('each piece is good for the day it is stripped', () => {
    expect([...model.readyDay[0]!].map((day) => day - today)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  });

  // J0 is done on day 3, J1 on day 5 (2 late, weight 2), J2 on day 6 (4 late, weight 5), J3 on day 10 (4 late, weight 3).
  test('a sequence costs what is late, counted through it', () => {
    expect(Math.floor(surrogateCost(model, Int32Array.of(0, 1, 2, 3)))).toBe(2 * 2 + 5 * 4 + 3 * 4);
  });

  test('the surrogate is exact for every sequence', () => {
    for (const sequence of SEQUENCES) {
      decode(state, dispatchOf(sequence));
      expect(Math.floor(surrogateCost(model, sequence)), sequence.join()).toBe(evaluate(state).weightedDaysLate);
    }
  });

  test('the search finds the best of them and keeps within its evaluations', () => {
    const best = Math.min(...SEQUENCES.map((x) => surrogateCost(model, x)));
    for (const start of SEQUENCES) {
      const found = searchSurrogate(model, start, randomFrom(1), 2000);
      expect(found.cost).toBeCloseTo(best, 9);
      expect(surrogateCost(model, found.sequence)).toBeCloseTo(found.cost, 9);
    }
  });

  test('without an evaluation it gives back what it was given', () => {
    const found = searchSurrogate(model, SEQUENCES[5]!, randomFrom(1), 0);
    expect([...found.sequence]).toEqual([...SEQUENCES[5]!]);
  });
});
