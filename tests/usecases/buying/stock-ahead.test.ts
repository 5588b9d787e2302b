import { expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import { DAYS_AHEAD, stockAhead } from '../../../src/usecases/buying/stock-ahead.ts';
import { smallYard } from '../../support/small-yard.ts';

const NOW = '2027-04-08T09:00:00+01:00';
const use = (day: string, quantity: number) => ({ at: minuteOf(`${day}T10:00:00+01:00`), quantity, orders: [] });

test('what is there is used up day by day, and the day on which it runs short is told', () => {
  const yard = smallYard({ incoming: [{ material: 'mortar', quantity: 2, on: '2027-04-12' }] });
  const mortar = { ...yard.materials[0]!, onHand: 3 };
  const uses = [use('2027-04-10', 2), use('2027-04-17', 4), use('2027-08-17', 9)];
  expect(stockAhead(mortar, uses, { yard, now: NOW, counted: { inYard: 3, past: 0 } })).toEqual({
    start: 3,
    levels: [
      { day: 2, left: 1 },
      { day: 4, left: 3 },
      { day: 9, left: 0 },
    ],
    shortDay: 9,
  });
});

test('what is past its date is not there, and what is used later than is drawn is no step', () => {
  const yard = smallYard();
  const mortar = { ...yard.materials[0]!, onHand: 3 };
  const late = use('2027-08-17', 9);
  expect(DAYS_AHEAD).toBe(42);
  expect(stockAhead(mortar, [late], { yard, now: NOW, counted: { inYard: 3, past: 1 } })).toEqual({
    start: 2,
    levels: [],
    shortDay: null,
  });
});
