import { describe, expect, test } from 'vitest';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { decoderStateOf } from '../../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../../src/engine/decoder/dispatch.ts';
import { settle } from '../../../src/engine/decoder/settle.ts';
import { scoreOf } from '../../../src/engine/decoder/write-plan.ts';
import { type Evaluation, evaluate, isBetter } from '../../../src/engine/search/evaluation.ts';
import { withDatesWanted } from '../../support/dates-wanted.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';

const evaluation = (
  unplannedWeight: number,
  weightedDaysLate: number,
  cost: number,
  weightedDaysAfterWanted = 0,
): Evaluation => ({
  unplannedWeight,
  weightedDaysLate,
  weightedDaysAfterWanted,
  cost,
  lateness: 0,
});

describe('of two plans the better one', () => {
  test.each<[string, Evaluation, Evaluation]>([
    ['leaves less out, whatever else', evaluation(0, 900, 900), evaluation(0.5, 0, 0)],
    ['is less late, whatever it costs', evaluation(1, 2, 900), evaluation(1, 3, 0)],
    ['is less late, whatever was wanted', evaluation(1, 2, 10, 900), evaluation(1, 3, 10, 0)],
    ['is less after dates wanted, whatever it costs', evaluation(1, 2, 900, 4), evaluation(1, 2, 0, 5)],
    ['costs less where both are as late', evaluation(1, 2, 10), evaluation(1, 2, 10.5)],
  ])('%s', (_, better, worse) => {
    expect([isBetter(better, worse), isBetter(worse, better)]).toEqual([true, false]);
  });

  test('is neither of two that differ by rounding alone', () => {
    const [a, b] = [evaluation(0.3, 0.3, 0.3), evaluation(0.1 + 0.2, 0.1 + 0.2, 0.1 + 0.2)];
    expect([isBetter(a, b), isBetter(b, a)]).toEqual([false, false]);
  });

  test('is not told by how late single pieces are', () => {
    expect(isBetter({ ...evaluation(0, 0, 0), lateness: 1 }, { ...evaluation(0, 0, 0), lateness: 2 })).toBe(false);
  });
});

const settled = (yard: ReturnType<typeof smallYard>) => {
  const state = decoderStateOf(compile(yard), dispatchOf(Int32Array.from(yard.orders, (_, o) => o)));
  settle(state, state.dispatch);
  return state;
};

// Two orders for a pair, two moulds, Saturdays only, no second turn in a session: the first is stripped on the 17th, seven
// days late (weight 1), nine days from Thursday the 8th; the second on the 24th, seven days late too (weight 2), sixteen
// days. Two batches of a bag: 5 x 2 + 0.5 x 2. An order nobody can make has weight 4.
test('a plan of two orders and one that cannot be made, reckoned by hand', () => {
  const base = smallYard();
  const state = settled(
    smallYard({
      mixes: [{ ...base.mixes[0]!, demouldMinutes: 1000 }],
      castings: [...base.castings, { ...base.castings[0]!, id: 'other' }],
      orders: [
        { id: 'a', due: '2027-04-10', weight: 1, lines: [{ casting: 'panel-900', quantity: 2 }] },
        { id: 'b', due: '2027-04-17', weight: 2, lines: [{ casting: 'panel-900', quantity: 2 }] },
        { id: 'c', due: '2027-04-17', weight: 4, lines: [{ casting: 'other', quantity: 1 }] },
      ],
    }),
  );
  expect(evaluate(state)).toMatchObject({
    unplannedWeight: 4,
    weightedDaysLate: 7 * 1 + 7 * 2,
    cost: 5 * 2 + 0.5 * 2 + 9 * 1 + 16 * 2,
  });
});

test('it is what the score of the plan file comes to', () => {
  for (const seed of yardSeeds(25)) {
    const yard = withDatesWanted(randomYard(seed), seed);
    const state = settled(yard);
    const score = scoreOf(state);
    const { batchWorthDays, bagWorthDays } = yard.yard;
    const found = evaluate(state);
    expect(found.unplannedWeight).toBeCloseTo(score.unplannedWeight, 9);
    expect(found.weightedDaysLate).toBeCloseTo(score.weightedDaysLate, 9);
    expect(found.weightedDaysAfterWanted).toBeCloseTo(score.weightedDaysAfterWanted, 9);
    expect(found.cost).toBeCloseTo(
      batchWorthDays * score.batches + bagWorthDays * score.bags + score.weightedCompletionDays,
      6,
    );
  }
});
