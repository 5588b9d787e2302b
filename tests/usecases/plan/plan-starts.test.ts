import { expect, test } from 'vitest';
import { spellsOf } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { sessionsOf } from '../../../src/engine/calendar/sessions.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { beginsWithin } from '../../../src/usecases/plan/plan-starts.ts';
import { handPlan } from '../../support/planned-yard.ts';
import { scaledYard } from '../../support/scaled-yard.ts';

test('a plan has something begin wherever one of its tasks begins, and nowhere else', () => {
  const yard = scaledYard(12, 6);
  const plan = planYard(yard, { effort: 'quick' });
  const starts = [
    ...plan.pours.filter(({ prepStart, prepEnd }) => prepStart !== prepEnd).map(({ prepStart }) => prepStart),
    ...[...plan.pours, ...plan.strips].map(({ stripStart }) => stripStart),
    ...[...plan.batches, ...plan.coats].map(({ start }) => start),
    ...plan.orders.flatMap(spellsOf).map(({ packStart }) => packStart),
  ].map(minuteOf);
  for (const session of sessionsOf(yard, calendarOf(yard.yard.timeZone))) {
    const expected = starts.some((at) => at >= session.start && at < session.end);
    expect(beginsWithin(plan, session)).toBe(expected);
  }
});

test('the end of a stretch is no part of it, its start is', () => {
  const plan = handPlan();
  const first = Math.min(
    ...[...plan.batches, ...plan.coats].map(({ start }) => minuteOf(start)),
    ...plan.pours.map(({ prepStart }) => minuteOf(prepStart)),
  );
  expect(beginsWithin(plan, { start: first - 10, end: first })).toBe(false);
  expect(beginsWithin(plan, { start: first, end: first + 1 })).toBe(true);
  const nothing = { ...plan, pours: [], coats: [], batches: [], strips: [], orders: [] };
  expect(beginsWithin(nothing, { start: 0, end: 1e9 })).toBe(false);
});
