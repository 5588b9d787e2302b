import { describe, expect, test } from 'vitest';
import type { PlanFile, PlanOrder } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { withCompletions } from '../../../src/engine/book/completions.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';

const yardAt = (clock: string, changes: Partial<YardFile> = {}): YardFile => {
  const yard = plannedYard();
  return { ...yard, yard: { ...yard.yard, now: saturday(clock) }, ...changes };
};
/** The order of panels alone: no packing, no lengths. Its panel of no. 1 is ready at 10:45. */
const panels = [{ ...plannedYard().orders[0]!, lines: [{ casting: 'panel-900', quantity: 2 }] }];
const planWith = (changes: Partial<PlanOrder> = {}, rest: Partial<PlanFile> = {}): PlanFile => {
  const plan = handPlan();
  const { packStart: _start, packEnd: _end, ...order } = plan.orders[0]!;
  return { ...plan, orders: [{ ...order, completesAt: saturday('10:45'), ...changes }], ...rest };
};
const completesAt = (plan: PlanFile, yard: YardFile) => withCompletions(plan, yard)?.orders[0]?.completesAt ?? null;

describe('an order without packing completes', () => {
  test('when its last piece is ready', () => {
    expect(completesAt(planWith(), yardAt('09:00', { orders: panels }))).toBe(saturday('10:45'));
    expect(completesAt(planWith({ completesAt: saturday('10:40') }), yardAt('09:00', { orders: panels }))).toBe(
      saturday('10:45'),
    );
  });

  test('when the last finished piece it gets is fit to go out, where that is later', () => {
    const finished = [{ casting: 'panel-900', count: 1, readyAt: saturday('11:10') }];
    expect(completesAt(planWith(), yardAt('09:00', { orders: panels, finished }))).toBe(saturday('11:10'));
  });

  test('when a piece that is in its mould is ready', () => {
    const strip = { mould: '900 no. 1', order: '27-001', stripStart: saturday('10:50'), stripEnd: saturday('10:58') };
    const plan = planWith({}, { batches: [], pours: [], strips: [{ ...strip, pieceReadyAt: saturday('10:58') }] });
    expect(completesAt(plan, yardAt('10:45', { orders: panels }))).toBe(saturday('10:58'));
  });

  test('not before now', () => {
    expect(completesAt(planWith(), yardAt('11:20', { orders: panels }))).toBe(saturday('11:20'));
    const allThere = planWith({}, { batches: [], pours: [] });
    expect(completesAt(allThere, yardAt('11:20', { orders: panels }))).toBe(saturday('11:20'));
  });

  test('on the date it did, or the plan is made anew', () => {
    const yard = yardAt('11:20', { orders: panels });
    const at = (now: string) => ({ ...yard, yard: { ...yard.yard, now } });
    expect(withCompletions(planWith(), at('2027-04-10T23:59:00+01:00'))).not.toBeNull();
    expect(withCompletions(planWith(), at('2027-04-11T00:00:00+01:00'))).toBeNull();
  });

  test('with parts that come later than its last piece as before', () => {
    const plan = planWith({ completesAt: saturday('11:30') });
    // The kit's lengths of rod may be what it waits for.
    expect(completesAt(plan, yardAt('09:00'))).toBe(saturday('11:30'));
    expect(completesAt(plan, yardAt('11:40'))).toBe(saturday('11:40'));
    expect(completesAt(plan, yardAt('09:00', { orders: panels }))).toBe(saturday('10:45'));
  });
});

test('an order that is packed completes as it did', () => {
  expect(withCompletions(handPlan(), yardAt('11:20'))).toEqual(handPlan());
});
