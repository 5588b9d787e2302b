import { expect, test } from 'vitest';
import type { PlanStick } from '../../../shared/plan.ts';
import { cutFrom } from '../../../src/usecases/today/cut-from.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';

/* Rods of 3000 mm with a kerf of 3. B1 is mixed at 9:05, the order packed at 10:52. */
const fromIn = (sticks: PlanStick[], cutFor: string, system: 'metric' | 'US' = 'metric') =>
  cutFrom({ plan: { ...handPlan(), sticks }, yard: plannedYard(), system }, { material: 'rod', lengthMm: 300, cutFor });
const stick = (cuts: PlanStick['cuts'], offcutMm?: number): PlanStick => ({
  ...{ material: 'rod', openedAt: saturday('09:05'), cuts },
  ...(offcutMm === undefined ? {} : { offcutMm }),
});
const pins = (count: number, to: string) => ({ lengthMm: 300, count, for: to });

test('a whole stick and offcuts are told apart, those that are alike together', () => {
  const sticks = [
    stick([pins(1, 'B1')], 635),
    stick([pins(9, 'B1')]),
    stick([pins(2, 'B1')]),
    stick([pins(1, 'B1')], 635),
  ];
  expect(fromIn(sticks, 'B1')).toEqual([
    { offcut: '635 mm', count: 2, sticks: 2 },
    { offcut: null, count: 11, sticks: 2 },
  ]);
  expect(fromIn(sticks, '27-001')).toEqual([]);
});

// By hand: two pins of 300 and a kerf each leave 2394 of a rod, 7 ft 10 1/4 in.
test('what is cut later comes from the rest that is left by then', () => {
  const shared = [stick([pins(2, 'B1'), pins(2, '27-001')])];
  expect(fromIn(shared, 'B1')).toEqual([{ offcut: null, count: 2, sticks: 1 }]);
  expect(fromIn(shared, '27-001')).toEqual([{ offcut: '2394 mm', count: 2, sticks: 1 }]);
  expect(fromIn(shared, '27-001', 'US')[0]?.offcut).toBe('7 ft 10 1/4 in');
});

test('a part of them takes stick after stick, after those that come before it', () => {
  const sticks = [stick([pins(1, 'B1')], 635), stick([pins(9, 'B1')]), stick([pins(2, 'B1')])];
  const partOf = (before: number, count: number) =>
    cutFrom(
      { plan: { ...handPlan(), sticks }, yard: plannedYard(), system: 'metric' },
      { material: 'rod', lengthMm: 300, cutFor: 'B1' },
      { before, count },
    );
  expect(partOf(0, 4)).toEqual([
    { offcut: '635 mm', count: 1, sticks: 1 },
    { offcut: null, count: 3, sticks: 1 },
  ]);
  expect(partOf(4, 4)).toEqual([{ offcut: null, count: 4, sticks: 1 }]);
  expect(partOf(8, 4)).toEqual([{ offcut: null, count: 4, sticks: 2 }]);
});
