import { expect, test } from 'vitest';
import { dateTrack, trackSpan } from '../../../views/charts/date-track-geometry.ts';

const line = { first: 0, last: 10 };
const sizes = { width: 100, side: 0 };

test('an order with time in hand is worked on until it is ready, and then waits', () => {
  expect(dateTrack({ today: 0, ready: 5, due: 10 }, line, sizes)).toEqual({
    ...{ todayX: 0, readyX: 50, dueX: 100 },
    work: { from: 0, to: 50 },
    spare: { from: 50, to: 100 },
    late: null,
  });
});

test('a late one is late from the day it was due, also where that has passed', () => {
  expect(dateTrack({ today: 0, ready: 8, due: 5 }, line, sizes)).toMatchObject({
    work: { from: 0, to: 50 },
    spare: null,
    late: { from: 50, to: 80 },
  });
  expect(dateTrack({ today: 5, ready: 8, due: 2 }, line, sizes)).toMatchObject({
    work: null,
    late: { from: 20, to: 80 },
  });
});

test('on the day there is neither time in hand nor delay', () => {
  expect(dateTrack({ today: 0, ready: 5, due: 5 }, line, sizes)).toMatchObject({ spare: null, late: null });
});

test('one that is ready already has the rest of the time in hand; one without a date, or that cannot be made, has none', () => {
  expect(dateTrack({ today: 4, ready: 1, due: 6 }, line, sizes)).toMatchObject({
    work: null,
    spare: { from: 40, to: 60 },
  });
  expect(dateTrack({ today: 0, ready: 5, due: null }, line, sizes)).toMatchObject({
    dueX: null,
    spare: null,
    late: null,
  });
  expect(dateTrack({ today: 0, ready: null, due: 5 }, line, sizes)).toMatchObject({
    readyX: null,
    work: null,
    late: null,
  });
});

test('orders share a line from the first of their days to the last, a week at least', () => {
  expect(
    trackSpan([
      { today: 3, ready: 5, due: 2 },
      { today: 3, ready: 20, due: null },
    ]),
  ).toEqual({ first: 2, last: 20 });
  expect(trackSpan([{ today: 3, ready: 3, due: 4 }])).toEqual({ first: 3, last: 10 });
});
