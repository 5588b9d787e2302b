import { expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { poursBefore, poursOfMould } from '../../../src/usecases/plan/pours-of-mould.ts';
import { scaledYard } from '../../support/scaled-yard.ts';

const yard = scaledYard(20, 12);
const plan = planYard(yard, { effort: 'quick' });

test('every pour is one of its mould, and they come in order of time', () => {
  const all = yard.moulds.flatMap(({ id }) => poursOfMould(plan, id));
  expect(all).toHaveLength(plan.pours.length);
  expect(new Set(all)).toEqual(new Set(plan.pours));
  for (const { id } of yard.moulds) {
    const own = poursOfMould(plan, id);
    expect(own.every(({ mould }) => mould === id)).toBe(true);
    const starts = own.map(({ prepStart }) => minuteOf(prepStart));
    expect(starts).toEqual([...starts].sort((a, b) => a - b));
    expect(own.map(({ fillStart }) => fillStart)).toEqual([...own.map(({ fillStart }) => fillStart)].sort());
  }
  expect(poursOfMould(plan, 'no such mould')).toEqual([]);
});

test('another plan has its own', () => {
  const { mould } = plan.pours[0]!;
  expect(poursOfMould({ ...plan, pours: [] }, mould)).toEqual([]);
  expect(poursOfMould(plan, mould).length).toBeGreaterThan(0);
});

test('before a pour are those of its mould that begin to be set up earlier', () => {
  for (const pour of plan.pours) {
    const earlier = plan.pours.filter(
      ({ mould, prepStart }) => mould === pour.mould && minuteOf(prepStart) < minuteOf(pour.prepStart),
    );
    expect(new Set(poursBefore(plan, pour))).toEqual(new Set(earlier));
  }
});
