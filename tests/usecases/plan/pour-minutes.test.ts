import { expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { sessionsOf } from '../../../src/engine/calendar/sessions.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { pourMinutes, poursWithin } from '../../../src/usecases/plan/pour-minutes.ts';
import { scaledYard } from '../../support/scaled-yard.ts';

const yard = scaledYard(12, 6);
const plan = planYard(yard, { effort: 'quick' });

test.each(['prepStart', 'fillStart', 'stripStart'] as const)(
  'the %s of each pour, in the order of the plan',
  (beginning) => {
    expect([...pourMinutes(plan, beginning)]).toEqual(plan.pours.map((pour) => minuteOf(pour[beginning])));
    for (const session of sessionsOf(yard, calendarOf(yard.yard.timeZone)).slice(0, 12)) {
      const expected = plan.pours.filter((pour) => {
        const minute = minuteOf(pour[beginning]);
        return minute >= session.start && minute < session.end;
      });
      expect(poursWithin(plan, beginning, session)).toEqual(expected);
    }
  },
);

test('a stretch has its start and not its end', () => {
  const at = minuteOf(plan.pours[0]!.fillStart);
  expect(poursWithin(plan, 'fillStart', { start: at, end: at + 1 })).toContain(plan.pours[0]);
  expect(poursWithin(plan, 'fillStart', { start: at - 5, end: at })).not.toContain(plan.pours[0]);
});
