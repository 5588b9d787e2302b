import { describe, expect, test } from 'vitest';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { decode } from '../../../src/engine/decoder/decode.ts';
import { decoderStateOf } from '../../../src/engine/decoder/decoder-state.ts';
import { type Choices, dispatchOf } from '../../../src/engine/decoder/dispatch.ts';
import { faultsIn } from '../../../src/engine/search/faults.ts';
import { pressingOf } from '../../../src/engine/search/pressing.ts';
import { changedOver, untidinessOf } from '../../../src/engine/search/untidiness.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const DAY = 1440;

/** What the first dispatch of the yard comes to. */
const planned = (changes: Partial<YardFileInput>, choices: Partial<Choices> = {}) => {
  const yard = smallYard(changes);
  const state = decoderStateOf(compile(yard), dispatchOf(new Int32Array(0)));
  const dispatch = dispatchOf(Int32Array.from(yard.orders.keys()), choices);
  decode(state, dispatch);
  return { state, dispatch, pressing: pressingOf(state.problem) };
};
const lines = [{ casting: 'panel-900', quantity: 2 }];

// Thursday 8 April 09:00. Two panels on Saturday the 10th, set up from 08:00: filled by 08:41 and 08:48, after 1 day 23 hours 41 and
// 48 minutes. Due on the 10th their order is a third urgent, and its only casting the scarcest: 2 / 3 a day. One bag
// of 27.5 kg for 27.2 kg.
test('is the days until moulds are filled, and the mix thrown away', () => {
  const { state, pressing } = planned({ orders: [{ id: 'a', due: '2027-04-10', lines }] });
  const days = [41, 48].map((minute) => 2 - (60 - minute) / DAY);
  expect(untidinessOf(state, pressing)).toBeCloseTo(((days[0]! + days[1]!) * 2) / 3 + 0.3 / 30);
});

describe('one mould for two castings, each wanted by two orders', () => {
  const castings = [base.castings[0]!, { ...base.castings[0]!, id: 'panel-1200' }];
  const makes = castings.map(({ id }) => ({ casting: id, changeMinutes: 6 }));
  const both = {
    castings,
    moulds: [{ ...base.moulds[0]!, makes }],
    work: [{ rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '08:00', end: '17:00' }],
    orders: ['a', 'b'].map((id) => ({
      ...{ id, due: '2027-04-10' },
      lines: castings.map((casting) => ({ casting: casting.id, quantity: 1 })),
    })),
  };

  // By what is scarcest just then the mould is changed over after each piece: 900, 1200, 900, 1200. Else once.
  test('is tidier with fewer change-overs', () => {
    const [asSequence, seldom] = [planned(both), planned(both, { changeSeldom: true })];
    expect([asSequence, seldom].map(({ state, pressing }) => changedOver(state, pressing).length)).toEqual([3, 1]);
    expect(untidinessOf(seldom.state, seldom.pressing)).toBeLessThan(
      untidinessOf(asSequence.state, asSequence.pressing),
    );
  });

  test('is told by its change-overs, and by what could be sooner in the first sessions', () => {
    const { state, dispatch, pressing } = planned(both);
    const faults = faultsIn(state, dispatch, pressing);
    expect(faults.some(({ step }) => step.changeSeldom)).toBe(true);
    expect(faults.some(({ step }) => step.slowMixesLate === false)).toBe(false);
  });
});

test('nothing is minded where nothing is poured', () => {
  const { state, dispatch, pressing } = planned({ orders: [] });
  expect(faultsIn(state, dispatch, pressing)).toEqual([]);
});
