import { describe, expect, test } from 'vitest';
import type { PlanFile, PlanStick } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { apply } from '../../../src/engine/book/apply.ts';
import { sticksBack } from '../../../src/engine/book/sticks-back.ts';
import { sticksFor } from '../../../src/engine/book/sticks-cut.ts';
import { withoutCutsFor } from '../../../src/engine/book/sticks-left.ts';
import { takeFromStock } from '../../../src/engine/book/stock-taken.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';

/* Rods of 3000 mm that lose 3 mm to a cut: two of 300 leave 2394, and two more 1788. */

type Offcuts = YardFile['materials'][number]['offcuts'];

/** Saturday at 9:29, with so many rods, and rests of opened ones. */
const yardWith = (onHand: number, offcuts?: Offcuts): YardFile => {
  const yard = plannedYard();
  return {
    ...{ ...yard, yard: { ...yard.yard, now: saturday('09:29') } },
    materials: yard.materials.map((one) =>
      one.id === 'rod' ? { ...one, onHand, ...(offcuts ? { offcuts } : {}) } : one,
    ),
  };
};
const cut = (id: string, count = 2) => ({ lengthMm: 300, count, for: id });
const stick = (openedAt: string, ...ids: string[]): PlanStick => ({
  ...{ material: 'rod', openedAt, cuts: ids.map((id) => cut(id)) },
});
const rest = (offcutMm: number, openedAt: string, ...ids: string[]): PlanStick => ({
  ...{ ...stick(openedAt, ...ids), offcutMm },
});
const planWith = (...sticks: PlanStick[]): PlanFile => ({ ...handPlan(), sticks });

/** The plan once two pins for B1 were cut in that yard; null where it has to be made anew. */
const cutInB1 = (plan: PlanFile, before: YardFile, count = 2): PlanFile | null => {
  const taken = { goods: [], cuts: [{ material: 'rod', lengthMm: 300, count }] };
  const entries = takeFromStock(before, taken, sticksFor(plan.sticks, 'B1'), { at: saturday('09:05') });
  return withoutCutsFor(plan, 'B1', taken, { plan, before, after: apply(before, entries), entries });
};

describe('sticks', () => {
  test('of which others are cut are offcuts of what is left, opened when the next cut is needed', () => {
    const plan = planWith(stick(saturday('09:05'), 'B1', '27-001'));
    expect(cutInB1(plan, yardWith(1))?.sticks).toEqual([rest(2394, saturday('10:52'), '27-001')]);
  });

  test('of which nothing more is cut are gone', () => {
    expect(cutInB1(planWith(stick(saturday('09:05'), 'B1')), yardWith(1))?.sticks).toEqual([]);
  });

  test('that others are cut from are as they were', () => {
    const other = stick(saturday('10:30'), '27-001');
    const plan = planWith(stick(saturday('09:05'), 'B1'), other);
    expect(cutInB1(plan, yardWith(2))?.sticks).toEqual([other]);
  });

  test('that are offcuts are shorter ones then', () => {
    const plan = planWith(rest(2394, saturday('09:05'), 'B1', '27-001'));
    const yard = yardWith(0, [{ lengthMm: 2394, count: 1 }]);
    expect(cutInB1(plan, yard)?.sticks).toEqual([rest(1788, saturday('10:52'), '27-001')]);
  });

  test('bought for the rest of the plan stay bought as they were', () => {
    const plan = planWith(stick(saturday('09:05'), 'B1', '27-001'));
    expect(cutInB1(plan, yardWith(1))?.buys).toBe(plan.buys);
  });
});

describe('the plan has to be made anew', () => {
  const plan = planWith(stick(saturday('09:05'), 'B1', '27-001'));

  test('where the stick it cuts is not there, or a share of one', () => {
    expect(cutInB1(plan, yardWith(0.9))).toBeNull();
    expect(cutInB1(plan, yardWith(1))).not.toBeNull();
  });

  test('where the offcut it cuts is another by now', () => {
    const fromRest = planWith(rest(2394, saturday('09:05'), 'B1', '27-001'));
    expect(cutInB1(fromRest, yardWith(1, [{ lengthMm: 2393, count: 1 }]))).toBeNull();
  });

  test('where more or fewer were cut', () => {
    expect(cutInB1(plan, yardWith(1), 3)).toBeNull();
    expect(cutInB1(plan, yardWith(1), 0)).toBeNull();
  });
});

describe('sticks that were cut come back into a plan', () => {
  const materials = yardWith(0).materials;

  test('as one with what the plan cuts from their rests', () => {
    const left = [rest(1788, saturday('10:52'), '27-001'), stick(saturday('11:00'), '27-002')];
    const made = [stick(saturday('09:05'), 'B1'), rest(2394, saturday('09:30'), 'B2')];
    expect(sticksBack(left, made, materials)).toEqual([
      stick(saturday('09:05'), 'B1', 'B2', '27-001'),
      stick(saturday('11:00'), '27-002'),
    ]);
  });

  test('by themselves where nothing more is cut from them', () => {
    expect(sticksBack([stick(saturday('11:00'), '27-002')], [stick(saturday('09:05'), 'B1')], materials)).toEqual([
      stick(saturday('09:05'), 'B1'),
      stick(saturday('11:00'), '27-002'),
    ]);
  });
});
