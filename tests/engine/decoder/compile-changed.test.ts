import { describe, expect, test } from 'vitest';
import { compile, keeping, withOneMore } from '../../../src/engine/decoder/compile.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { keepOfPlan } from '../../../src/engine/standing/keep-of-plan.ts';
import { randomYard, YARD_KINDS } from '../../support/random-yard.ts';

/** A problem without its functions, maps as lists: what two are compared by. */
const readable = (problem: object): unknown =>
  JSON.parse(JSON.stringify(problem, (_, value) => (value instanceof Map ? [...value] : value)));

describe.each(YARD_KINDS)('a %s yard', (kind) => {
  const yard = randomYard(3, kind);
  const plan = planYard(yard, { effort: 'quick' });
  const keep = keepOfPlan(plan);
  const order = { ...yard.orders.at(-1)!, id: 'one more', due: undefined, notBefore: undefined };

  test('with one more order is what compiling it from the start gives', () => {
    const more = { ...yard, keep, orders: [...yard.orders, order] };
    expect(readable(withOneMore(compile({ ...yard, keep }), order))).toEqual(readable(compile(more)));
  });

  test('with its plan kept is what compiling it from the start gives', () => {
    const kept = keeping(compile(yard), keep);
    expect(kept.fixed.batches.length).toBe(plan.batches.length);
    expect(readable(kept)).toEqual(readable(compile({ ...yard, keep })));
    expect(readable(keeping(kept, yard.keep))).toEqual(readable(compile(yard)));
  });
});

test('a day before which the new order may not be poured holds it back', () => {
  const yard = randomYard(3, 'small');
  const last = yard.orders.at(-1)!;
  const order = { ...last, id: 'one more', notBefore: yard.orders.find(({ due }) => due)?.due ?? '2027-06-01' };
  const { isAnyFrom, holds, orders } = withOneMore(compile({ ...yard, orders: [last] }), order);
  expect([isAnyFrom, holds.map((hold) => hold.order)]).toEqual([true, [1]]);
  expect(orders).toHaveLength(2);
});
