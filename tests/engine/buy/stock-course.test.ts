import { expect, test } from 'vitest';
import type { Material } from '../../../shared/material.ts';
import { dayNumber } from '../../../shared/time.ts';
import { stockCourse } from '../../../src/engine/buy/stock-course.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';

const calendar = calendarOf('Europe/Dublin');
const day = (date: string) => dayNumber(date);
const at = (date: string) => calendar.midnightOf(day(date)) + 600;
const now = at('2027-04-08');
const use = (date: string, quantity: number, order = 'A') => ({ at: at(date), quantity, orders: [order] });
const mortar = (more: Partial<Material>): Material => ({
  ...{ id: 'mortar', name: 'Mortar', unit: 'bag', onHand: 3, pack: 1, minimum: 0, kerfMm: 0 },
  ...more,
});
const course = (material: Material, ...given: [Parameters<typeof stockCourse>[1], Parameters<typeof stockCourse>[2]]) =>
  stockCourse(material, ...given, { now, calendar });

// By hand: 3 - 2 = 1, + 2 = 3, - 4 = 0 and one is missing.
test('goes down by what is used, up by what comes, and says what is not there', () => {
  const steps = course(
    mortar({}),
    [use('2027-04-17', 4, 'B'), use('2027-04-10', 2)],
    [{ day: day('2027-04-12'), quantity: 2 }],
  );
  expect(steps.map(({ kind, left, short }) => [kind, left, short])).toEqual([
    ['used', 1, 0],
    ['comes', 3, 0],
    ['used', 0, 1],
  ]);
  expect(steps.map(({ orders }) => orders)).toEqual([['A'], [], ['B']]);
});

test('what was to come before now comes now, and a share of a stick is none', () => {
  const [first] = course(mortar({ onHand: 1.9, stickMm: 3000 }), [], [{ day: day('2027-04-01'), quantity: 2 }]);
  expect(first).toMatchObject({ kind: 'comes', day: day('2027-04-08'), left: 3 });
});

test('bags go past their date on the way, and none that is past it is used', () => {
  const lots = [
    { quantity: 1, useBy: '2027-04-07' },
    { quantity: 1, useBy: '2027-04-12' },
    { quantity: 1, useBy: '2027-05-02' },
  ];
  const steps = course(mortar({ lots }), [use('2027-04-10', 0.5), use('2027-04-17', 1.5, 'B')], []);
  expect(
    steps.map(({ kind, day: on, quantity, left, short }) => [kind, on - day('2027-04-01') + 1, quantity, left, short]),
  ).toEqual([
    ['used', 10, 0.5, 1.5, 0],
    ['past its date', 13, 0.5, 1, 0],
    ['used', 17, 1.5, 0, 0.5],
  ]);
  expect(steps.map(({ bagDates }) => bagDates)).toEqual([
    [day('2027-04-12')],
    [day('2027-04-12')],
    [day('2027-05-02')],
  ]);
});

test('what is brought by the evening is not there in the morning, and what is fetched is', () => {
  const clock = { now, calendar, deliveredBy: '17:00' };
  const [uses, arrivals] = [[use('2027-04-12', 1)], [{ day: day('2027-04-12'), quantity: 2 }]];
  const kinds = (leadDays: number) =>
    stockCourse(mortar({ onHand: 0, leadDays }), uses, arrivals, clock).map(({ kind, short }) => `${kind} ${short}`);
  expect(kinds(3)).toEqual(['used 1', 'comes 0']);
  expect(kinds(0)).toEqual(['comes 0', 'used 0']);
});
