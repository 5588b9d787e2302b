import { expect, test } from 'vitest';
import { withSpells } from '../../../shared/plan.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';
import { doByPlan } from './done-by-plan.ts';

/* The panel of no. 1 is stripped at 10:45, and one is there: with the first spell both leave the yard, and the rod's pins. */
test('an order that is packed in spells takes its pieces with the first and is complete with the last', () => {
  const yard = plannedYard();
  const plan = handPlan();
  const week = (clock: string) => `2027-04-17T${clock}:00+01:00`;
  const spells = [
    { packStart: saturday('10:52'), packEnd: saturday('10:54') },
    { packStart: week('08:10'), packEnd: week('08:13') },
  ];
  const inSpells = { ...plan, orders: [{ ...withSpells(plan.orders[0]!, spells), completesAt: week('08:13') }] };
  const never = () => false;
  const first = doByPlan(yard, inSpells, [saturday('00:00'), saturday('23:00')], never);
  expect(first.completed).toEqual([]);
  expect(yard.orders.map(({ id, packedMinutes }) => [id, packedMinutes])).toEqual([['27-001', 2]]);
  // The panel of no. 2 is for stock.
  expect(yard.finished.map(({ casting, count }) => [casting, count])).toEqual([['panel-900', 1]]);
  const then = doByPlan(yard, inSpells, [saturday('23:00'), week('23:00')], never);
  expect([then.completed, yard.orders]).toEqual([['27-001'], []]);
  expect(yard.finished.map(({ count }) => count)).toEqual([1]);
});
