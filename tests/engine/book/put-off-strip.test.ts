import { expect, test } from 'vitest';
import { dayNumber, minuteOf } from '../../../shared/time.ts';
import { hasHandsToStrip, withStripPutOff } from '../../../src/engine/book/put-off-strip.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { sessionsOf } from '../../../src/engine/calendar/sessions.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';

/* One person; no. 1 holds a piece since 9:22, stripped from 10:37 to 10:45; no. 2 is stripped from 10:44, and packing is from 10:52 to 10:57. */
const yard = plannedYard({
  yard: { ...plannedYard().yard, now: saturday('10:30') },
  inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:22'), order: '27-001' }],
});
const plan = () => {
  const planned = handPlan();
  const { stripStart, stripEnd, pieceReadyAt } = planned.pours[0]!;
  const strips = [{ mould: '900 no. 1', order: '27-001', stripStart, stripEnd, pieceReadyAt }];
  return { ...planned, strips, batches: [], pours: planned.pours.slice(1) };
};

test('a strip that is put off ends as much later, and its piece is ready no sooner', () => {
  const [strip] = withStripPutOff(plan(), '900 no. 1', minuteOf(saturday('10:55')), yard).strips;
  expect(strip).toMatchObject({ stripStart: saturday('10:55'), stripEnd: saturday('11:03') });
  expect(minuteOf(strip!.pieceReadyAt)).toBeGreaterThanOrEqual(minuteOf(saturday('11:03')));
});

test('a mould that holds nothing is left as it is', () => {
  expect(withStripPutOff(plan(), '900 no. 2', minuteOf(saturday('10:55')), yard)).toEqual(plan());
});

test.each([
  ['10:36', true],
  ['10:40', false],
  ['10:50', false],
  ['10:57', true],
  ['11:37', true],
  ['11:38', false],
])('at %s there are hands for it beside all else: %s', (clock, there) => {
  const session = sessionsOf(yard, calendarOf(yard.yard.timeZone)).find(({ day }) => day === dayNumber('2027-04-10'))!;
  expect(hasHandsToStrip(plan(), yard, session, '900 no. 1', minuteOf(saturday(clock)))).toBe(there);
});
