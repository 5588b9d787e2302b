import { describe, expect, test } from 'vitest';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { withBegunSetUps } from '../../../src/usecases/plan/begun-set-ups.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';

/** Which moulds count as set up at a time of day, by the plan made by hand: no. 1 from 8:10, no. 2 from 8:22. */
const setUpAt = (clock: string, changes: Partial<YardFileInput> = {}, plan = handPlan()) => {
  const yard = plannedYard({ yard: { ...plannedYard().yard, now: saturday(clock) }, ...changes });
  return withBegunSetUps(yard, plan).moulds.flatMap(({ id, prepped }) => (prepped ? [id] : []));
};

describe('moulds that are being set up', () => {
  test('count as set up from the moment the plan begins with them', () => {
    expect(setUpAt('08:10')).toEqual([]);
    expect(setUpAt('08:11')).toEqual(['900 no. 1']);
    expect(setUpAt('08:23')).toEqual(['900 no. 1', '900 no. 2']);
  });

  test('still count when a plan made anew has nothing left to do to them', () => {
    const plan = handPlan();
    plan.pours[0] = { ...plan.pours[0]!, prepStart: saturday('09:05'), prepEnd: saturday('09:05') };
    expect(setUpAt('08:11', {}, plan)).toEqual(['900 no. 1']);
  });

  test('are clean, and sealed where that was to be done', () => {
    const yard = plannedYard({ yard: { ...plannedYard().yard, now: saturday('08:30') } });
    expect(withBegunSetUps(yard, handPlan()).moulds[1]).toMatchObject({
      condition: 'ready',
      prepped: true,
      turnsSinceOil: 0,
    });
  });

  test('do not count when they are full or out of use', () => {
    const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('08:30') }];
    expect(setUpAt('08:30', { inMould })).toEqual(['900 no. 2']);
    const moulds = plannedYard().moulds.map((mould) => ({ ...mould, condition: 'damaged' as const }));
    expect(setUpAt('08:30', { moulds })).toEqual([]);
  });

  test('do not count before or after the session, nor without a plan', () => {
    expect(setUpAt('07:59')).toEqual([]);
    expect(setUpAt('12:00')).toEqual([]);
    const yard = plannedYard({ yard: { ...plannedYard().yard, now: saturday('08:30') } });
    expect(withBegunSetUps(yard, null)).toBe(yard);
  });

  test('count for the first of their pours only', () => {
    const plan = handPlan();
    plan.pours.push({
      ...plan.pours[0]!,
      id: 'P3',
      prepStart: saturday('08:05'),
      prepEnd: saturday('08:06'),
      casting: 'panel-600',
    });
    expect(setUpAt('08:30', {}, plan)).toEqual(['900 no. 2']);
  });
});
