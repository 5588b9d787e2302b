import { describe, expect, test } from 'vitest';
import type { PlanFile, PlanStick } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { withoutCutsFor } from '../../../src/engine/book/sticks-left.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';

/** Saturday at 9:29, with so many sticks of rod by the book; more of it takes three days. */
const yardWith = (rods: number, changes: Partial<YardFile> = {}): YardFile => {
  const yard = plannedYard();
  return {
    ...{ ...yard, yard: { ...yard.yard, now: saturday('09:29') } },
    materials: yard.materials.map((one) => (one.id === 'rod' ? { ...one, onHand: rods } : one)),
    ...changes,
  };
};
const cut = (id: string) => ({ lengthMm: 300, count: 2, for: id });
const stick = (openedAt: string, ...ids: string[]): PlanStick => ({ material: 'rod', openedAt, cuts: ids.map(cut) });
const planWith = (...sticks: PlanStick[]): PlanFile => ({ ...handPlan(), sticks });
const mortar = handPlan().buys;

describe('sticks', () => {
  test('less what was cut are opened when the next cut is needed, and gone when there is none', () => {
    const plan = planWith(stick(saturday('09:05'), 'B1', '27-001'), stick(saturday('09:05'), 'B1'));
    expect(withoutCutsFor(plan, 'B1', yardWith(3))?.sticks).toEqual([stick(saturday('10:52'), '27-001')]);
  });

  test('that others are cut from are opened when they were', () => {
    const other = stick(saturday('10:30'), '27-001');
    expect(withoutCutsFor(planWith(stick(saturday('09:05'), 'B1'), other), 'B1', yardWith(3))?.sticks).toEqual([other]);
  });

  test('of which nothing was cut leave the plan as it is', () => {
    const plan = planWith(stick(saturday('10:52'), '27-001'));
    expect(withoutCutsFor(plan, 'B1', yardWith(0))).toBe(plan);
  });
});

describe('what is to be bought', () => {
  const cutNow = stick(saturday('09:05'), 'B1');
  const buysAfter = (openedAt: string, yard: YardFile) =>
    withoutCutsFor(planWith(cutNow, stick(openedAt, '27-001')), 'B1', yard)?.buys ?? null;

  // The book has nine tenths of a stick left: a whole one is opened today, and nothing bought comes before Tuesday.
  test('is no help where a whole stick is needed before it can be there', () => {
    expect(buysAfter(saturday('10:52'), yardWith(0.9))).toBeNull();
    expect(buysAfter(saturday('10:52'), yardWith(1))).toEqual(mortar);
    expect(buysAfter(saturday('10:52'), yardWith(1 - 1e-9))).toEqual(mortar);
  });

  test('is there in time for a stick of next week, and of other materials stays', () => {
    const bought = { material: 'rod', quantity: 1, orderBy: '2027-04-14', arrivesOn: '2027-04-17' };
    expect(buysAfter('2027-04-17T08:30:00+01:00', yardWith(0.9))).toEqual([...mortar, bought]);
  });

  test('is less what is on its way', () => {
    const incoming = [{ material: 'rod', on: '2027-04-10', quantity: 1 }];
    expect(buysAfter(saturday('10:52'), yardWith(0.9, { incoming }))).toEqual(mortar);
    const mesh = [{ material: 'mesh', on: '2027-04-10', quantity: 1 }];
    expect(buysAfter(saturday('10:52'), yardWith(0.9, { incoming: mesh }))).toBeNull();
  });
});
