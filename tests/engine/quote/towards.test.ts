import { expect, test } from 'vitest';
import { DEFAULT_CHOICES } from '../../../src/engine/decoder/dispatch.ts';
import { planWithMemory } from '../../../src/engine/plan.ts';
import { completesUnder } from '../../../src/engine/quote/completes-under.ts';
import { earliestOf } from '../../../src/engine/quote/earliest.ts';
import { askingFor, movedLast, presentOf, withOrderAt } from '../../../src/engine/quote/present.ts';
import { quoteOrder } from '../../../src/engine/quote/quote.ts';
import { earliestTowards } from '../../../src/engine/quote/towards.ts';
import { keepOfPlan } from '../../../src/engine/standing/keep-of-plan.ts';
import { gridYard } from '../../support/exact/grid-yard.ts';
import { smallYard } from '../../support/small-yard.ts';

const panel = (id: string, due?: string) => ({ id, weight: 1, due, lines: [{ casting: 'panel-900', quantity: 1 }] });

/** One mould that makes one turn in a session. */
const oneTurn = smallYard({
  work: [{ rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '08:00', end: '10:00' }],
  moulds: smallYard().moulds.slice(0, 1),
  orders: [panel('27-001', '2027-04-24')],
});

test('an order promised for later is moved, where its date allows it', () => {
  const { plan, memory } = planWithMemory(oneTurn);
  expect(plan.orders[0]!.completesOn).toBe('2027-04-10');
  const asked = panel('asked');
  expect(quoteOrder(oneTurn, asked, { memory, standing: keepOfPlan(plan) }).earliestOn).toBe('2027-04-10');
  const tight = { ...oneTurn, orders: [panel('27-001', '2027-04-10')] };
  const kept = planWithMemory(tight);
  const from = { memory: kept.memory, standing: keepOfPlan(kept.plan) };
  expect(quoteOrder(tight, asked, from).earliestOn).toBe('2027-04-17');
});

test('in the place of another the new order stands where that was, and the other last', () => {
  const present = presentOf({ ...oneTurn, orders: [panel('a', '2027-04-10'), panel('b', '2027-04-24')] });
  const sequence = Array.from(present.dispatch.sequence);
  expect(sequence).toEqual([0, 1]);
  expect(Array.from(movedLast(present, 0, 2).sequence)).toEqual([2, 1, 0]);
  expect(Array.from(movedLast(present, 1, 2).sequence)).toEqual([0, 2, 1]);
  const apart = { ...present, dispatch: { ...present.dispatch, setUp: Int32Array.of(1, 0) } };
  expect(Array.from(movedLast(apart, 1, 2).setUp!)).toEqual([2, 0, 1]);
});

test('a search goes towards a sooner day and never away from it', () => {
  const asking = askingFor(oneTurn, panel('asked'));
  const present = presentOf(oneTurn);
  const dispatch = withOrderAt(present, 1, asking.added);
  const last = { completesAt: completesUnder(asking, dispatch, present, 'aimed'), dispatch };
  const found = earliestTowards(asking, present, last);
  const day = (minute: number) => asking.problem.calendar.instantText(minute).slice(0, 10);
  expect([day(last.completesAt), day(found.completesAt)]).toEqual(['2027-04-17', '2027-04-10']);
  // No plan is sooner than that: nothing is searched for.
  expect(earliestTowards(asking, present, found)).toBe(found);
});

test('an order goes in front of others that have weeks to spare, in a plan searched for anew', {
  timeout: 60_000,
}, () => {
  // A mixed-integer program in HiGHS has it on 10 April with nobody later (`bench -- question`); 1 May was said once.
  const yard = gridYard(2);
  const { plan, memory } = planWithMemory(yard, { effort: 'normal' });
  const asked = { id: 'asked', weight: 1, lines: [{ casting: 'panel-1', quantity: 1 }] };
  const { earliestOn } = quoteOrder(yard, asked, { memory, standing: keepOfPlan(plan), near: plan });
  expect(earliestOn).toBe('2027-04-10');
});

test('what the present plan chose for single shifts does not keep a new order out of them', () => {
  const asking = askingFor(oneTurn, panel('asked'));
  const present = presentOf(oneTurn);
  const shifts = Array.from({ length: asking.problem.shifts.count }, (_, shift) => shift);
  const inShift = new Map(shifts.map((shift) => [shift, { ...DEFAULT_CHOICES, noPours: true }]));
  const picky = { ...present, dispatch: { ...present.dispatch, inShift } };
  const { completesAt } = earliestOf(asking, picky, 40, { share: 0.5, anew: false });
  expect(asking.problem.calendar.instantText(completesAt).slice(0, 10)).toBe('2027-04-10');
});
