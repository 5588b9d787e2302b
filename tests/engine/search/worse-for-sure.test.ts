import { expect, test } from 'vitest';
import type { YardFile } from '../../../shared/yard-file.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { decode, decodeWhile } from '../../../src/engine/decoder/decode.ts';
import { decoderStateOf } from '../../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../../src/engine/decoder/dispatch.ts';
import { settle } from '../../../src/engine/decoder/settle.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { evaluate } from '../../../src/engine/search/evaluation.ts';
import { BY_HAND, startSequences, TRIED_CHOICES } from '../../../src/engine/search/quick.ts';
import { WorseForSure } from '../../../src/engine/search/worse-for-sure.ts';
import { withDatesWanted } from '../../support/dates-wanted.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { datedYard } from '../../support/random-yard/dated-stock.ts';
import { randomYard, type YardKind } from '../../support/random-yard.ts';
import { yardWithFixedPours } from '../../support/yard-with-fixed-pours.ts';

/** The first of a sequence for longer than the second: others go before them, and they before each other. */
const heldUntil = (order: number, place: number) => ({ order, shift: 5 - 2 * place });

/** Of several plans of a yard: where one of them was said to be worse than itself, and how often worse than one less late. */
const judged = (yard: YardFile) => {
  const problem = compile(yard);
  const state = decoderStateOf(problem, dispatchOf(new Int32Array(0)));
  const bound = new WorseForSure(state);
  const wrong: string[] = [];
  let given = 0;
  for (const sequence of startSequences(problem).slice(0, 2))
    for (const choices of [...TRIED_CHOICES.slice(0, 4), BY_HAND[1]!, { lotsUntil: 1e6 }]) {
      const heldBack = choices === TRIED_CHOICES[0] ? [] : Array.from(sequence.slice(0, 2), heldUntil);
      const dispatch = { ...dispatchOf(sequence, choices), heldBack };
      settle(state, dispatch);
      decode(state, dispatch);
      const itself = evaluate(state);
      const better = { ...itself, weightedDaysLate: itself.weightedDaysLate - 1 };
      decodeWhile(state, dispatch, (shift) => {
        if (bound.isWorse(shift, itself)) wrong.push(`${JSON.stringify(choices)} in shift ${shift}`);
        if (bound.isWorse(shift, better)) given++;
        return false;
      });
    }
  return { wrong, given };
};

const KINDS: YardKind[] = ['small', 'typical', 'tight-rack', 'cold-spring', 'odd'];

test.each(KINDS)('no plan is said to be worse than itself before it is made: %s', (kind) => {
  let given = 0;
  for (const seed of yardSeeds(kind === 'typical' ? 3 : 12, 500)) {
    const yard = withDatesWanted(datedYard(randomYard(seed, kind), seed), seed);
    const { wrong, given: more } = judged(yard);
    expect(wrong, `seed ${seed}`).toEqual([]);
    given += more;
  }
  // A bound that never says so would hold as well.
  expect(given).toBeGreaterThan(0);
});

test('nor is one in which batches are fixed', () => {
  for (const seed of yardSeeds(15, 600)) {
    const yard = randomYard(seed, 'small');
    const fixed = yardWithFixedPours(yard, planYard(yard, { effort: 'quick' }), seed);
    expect(judged(fixed).wrong, `seed ${seed}`).toEqual([]);
  }
});
