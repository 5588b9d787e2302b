import { expect, test } from 'vitest';
import { planYard } from '../../../src/engine/plan.ts';
import { sessionsAhead } from '../../../src/usecases/first/sessions-ahead.ts';
import { smallYard } from '../../support/small-yard.ts';

/*
 * The small yard by hand: one person on Saturdays from 8:00 to 12:00, 240 minutes. Two set-ups of 12 minutes, a batch of 10
 * minutes with two fills of 7, two strips of 8 and 5 minutes of packing are 69; both moulds are filled.
 */
test('a session is taken by the minutes of its work and by the moulds that are filled in it', () => {
  const yard = smallYard();
  expect(sessionsAhead(planYard(yard), yard, '2027-04-17')).toEqual([
    { date: '2027-04-10', hands: { taken: 69, there: 240 }, moulds: { taken: 2, there: 2 } },
    { date: '2027-04-17', hands: { taken: 0, there: 240 }, moulds: { taken: 0, there: 2 } },
  ]);
});

test('sessions after the day are left out, and a mould that is out for good is not there', () => {
  const yard = smallYard({
    moulds: smallYard().moulds.map((mould, place) =>
      place === 0 ? { ...mould, condition: 'damaged' as const } : mould,
    ),
    orders: [],
  });
  expect(sessionsAhead(planYard(yard), yard, '2027-04-16')).toMatchObject([{ moulds: { taken: 0, there: 1 } }]);
});
