import { describe, expect, test } from 'vitest';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { decoderStateOf } from '../../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../../src/engine/decoder/dispatch.ts';
import { settle } from '../../../src/engine/decoder/settle.ts';
import { writePlan } from '../../../src/engine/decoder/write-plan.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { evaluate, isBetter } from '../../../src/engine/search/evaluation.ts';
import { BY_HAND, quickSearch, startSequences } from '../../../src/engine/search/quick.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard, YARD_KINDS } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';

const handPlan = (yard: Parameters<typeof compile>[0], choices = BY_HAND[0]) => {
  const problem = compile(yard);
  const state = decoderStateOf(problem, dispatchOf(new Int32Array(0)));
  const [sequence] = startSequences(problem);
  const refused = settle(state, dispatchOf(sequence!, choices));
  const written = writePlan(
    state,
    [...refused].map(([o, refusal]) => ({ order: yard.orders[o]!.id, ...refusal })),
  );
  if (!('plan' in written)) throw new Error('Something is short.');
  return written.plan;
};

describe('worked as by hand', () => {
  /*
   * By hand, 12 minutes of setting up each: from 8:00 and from 8:12; ten minutes of mixing from 8:24; seven to fill the
   * first, 8:34 to 8:41, and the second, to 8:48. 75 minutes later, at 9:56, the first is hard, and stripped in 8; cleaned
   * and set up again in 18, from 10:04 to 10:22; mixed till 10:32 and full at 10:39. Only then is somebody free to strip the
   * second.
   */
  const yard = smallYard({
    orders: [{ id: '27-001', due: '2027-04-10', lines: [{ casting: 'panel-900', quantity: 3 }] }],
  });

  test('a session is stripped, set up and poured as soon as each can be', () => {
    const { pours } = handPlan(yard);
    const times = pours.map(({ fillStart, stripStart }) => [fillStart.slice(5, 16), stripStart.slice(5, 16)]);
    expect(times.slice(0, 2)).toEqual([
      ['04-10T08:34', '04-10T09:56'],
      ['04-10T08:41', '04-10T10:39'],
    ]);
    expect(pours).toHaveLength(3);
    expect(pours[2]!.prepStart.slice(5, 16)).toBe('04-10T10:04');
    expect(pours[2]!.fillStart.slice(5, 16)).toBe('04-10T10:32');
  });

  test('more is set up for the next session where that is chosen', () => {
    const setUpAhead = BY_HAND.map((choices) =>
      yardSeeds(8, 5500).flatMap((seed) =>
        handPlan(randomYard(seed, 'typical'), choices).pours.filter(
          ({ prepStart, fillStart }) => prepStart.slice(0, 10) < fillStart.slice(0, 10),
        ),
      ),
    );
    expect(setUpAhead[1]!.length).toBeGreaterThan(setUpAhead[0]!.length);
  });

  test('a plan breaks no rule, by the audit and by the referee', () => {
    for (const kind of YARD_KINDS)
      for (const seed of yardSeeds(8, 5600)) {
        const random = randomYard(seed, kind);
        for (const choices of BY_HAND) {
          const plan = handPlan(random, choices);
          expect(audit(random, plan).faults, `${kind} ${seed}`).toEqual([]);
          expect(refereePlan(random, plan), `${kind} ${seed}`).toEqual([]);
        }
      }
  });
});

test('quick planning is never worse than the best by hand', () => {
  let compared = 0;
  for (const kind of YARD_KINDS)
    for (const seed of yardSeeds(8, 5700)) {
      const problem = compile(randomYard(seed, kind));
      const state = decoderStateOf(problem, dispatchOf(new Int32Array(0)));
      settle(state, quickSearch(state).dispatch);
      const quick = evaluate(state);
      for (const sequence of startSequences(problem))
        for (const choices of BY_HAND) {
          settle(state, dispatchOf(sequence, choices));
          const hand = evaluate(state);
          expect(isBetter(hand, quick), `${kind} ${seed}: ${JSON.stringify([hand, quick])}`).toBe(false);
          compared++;
        }
    }
  expect(compared).toBeGreaterThan(100);
}, 120_000);
