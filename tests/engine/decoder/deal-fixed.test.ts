import { expect, test } from 'vitest';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { decode } from '../../../src/engine/decoder/decode.ts';
import { decoderStateOf } from '../../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../../src/engine/decoder/dispatch.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { keepOfPlan } from '../../../src/engine/standing/keep-of-plan.ts';
import { smallYard } from '../../support/small-yard.ts';

test('of fixed pours the one stripped first goes to the first order, though it is filled last', () => {
  const lines = [{ casting: 'panel-900', quantity: 1 }];
  const yard = smallYard({ orders: ['a', 'b'].map((id) => ({ id, due: '2027-04-24', lines })) });
  const plan = planYard(yard, { effort: 'quick' });
  expect(plan.batches).toHaveLength(1);
  const [first, last] = [...plan.pours].sort((x, y) => (x.fillStart < y.fillStart ? -1 : 1));
  // The first one filled stays in its mould for a week.
  const later = { stripStart: '2027-04-17T08:00:00+01:00', stripEnd: '2027-04-17T08:08:00+01:00' };
  const keep = keepOfPlan(plan);
  const strips = keep.strips!.map((strip) => (strip.pour === first!.id ? { ...strip, ...later } : strip));
  const problem = compile({ ...yard, keep: { ...keep, strips } });
  const dispatch = dispatchOf(Int32Array.of(0, 1));
  const state = decoderStateOf(problem, dispatch);
  decode(state, dispatch);
  const days = Array.from(state.orders.completesAt, (at) => problem.calendar.instantText(at).slice(0, 10));
  expect(days).toEqual(['2027-04-10', '2027-04-17']);
  expect(last!.stripStart < later.stripStart).toBe(true);
});
