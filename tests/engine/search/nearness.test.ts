import { expect, test } from 'vitest';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { decode } from '../../../src/engine/decoder/decode.ts';
import { decoderStateOf } from '../../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../../src/engine/decoder/dispatch.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { poursLeft, presentPours } from '../../../src/engine/search/nearness.ts';
import { smallYard } from '../../support/small-yard.ts';

const yard = smallYard({ orders: [{ id: 'a', lines: [{ kit: 'pair', quantity: 3 }] }] });
const plan = planYard(yard, { effort: 'quick' });
const problem = compile(yard);

test('all pours of the plan itself are left as they are', () => {
  const state = decoderStateOf(problem, dispatchOf(Int32Array.of(0)));
  decode(state, state.dispatch);
  const own = new Set(
    Array.from(
      { length: state.placed.pours },
      (_, p) => `${state.placed.pourMould[p]} ${state.placed.pourFillStart[p]}`,
    ),
  );
  expect(poursLeft(state, own)).toBe(6);
});

test('a pour is the same in the same mould at the same minute', () => {
  const present = presentPours(problem, plan);
  expect(present.size).toBe(6);
  const later = plan.pours.map((p, i) => (i === 0 ? { ...p, fillStart: '2027-05-01T08:00:00+01:00' } : p));
  const moved = presentPours(problem, { ...plan, pours: later });
  expect([...moved].filter((x) => present.has(x))).toHaveLength(5);
});

test('pours of a mould that is gone count for nothing', () => {
  const gone = plan.pours.map((p) => ({ ...p, mould: p.mould === '900 no. 1' ? 'sold' : p.mould }));
  expect(presentPours(problem, { ...plan, pours: gone }).size).toBe(3);
});
