import { expect, test } from 'vitest';
import type { CalendarEvent, OrderEntry, SessionEntry } from '../../../shared/calendar-entry.ts';
import { DAYS_KEPT, eventsAfter } from '../../../src/usecases/calendar/calendar-history.ts';

const MONDAY = { now: '2027-04-05T07:00:00Z', today: '2027-04-05' };
const TUESDAY = { now: '2027-04-06T07:00:00Z', today: '2027-04-06' };
const SATURDAY_NOON = { now: '2027-04-10T11:00:00Z', today: '2027-04-10' };

const saturday = (moulds: string[]): SessionEntry => ({
  ...{ kind: 'session', key: 'session-2027-04-10-1', strips: 0 },
  ...{ start: '2027-04-10T08:00:00+01:00', end: '2027-04-10T16:00:00+01:00' },
  pours: moulds.map((mould) => ({ mould, piece: '1200 panel', customer: null })),
});

const promised = (on: string): OrderEntry => ({
  ...{ kind: 'order', key: 'order-27-001', order: '27-001', customer: 'School garden', contents: [] },
  ...{ on, heldUntil: null, readyOn: on },
});

const first = (entries: Parameters<typeof eventsAfter>[1]): CalendarEvent[] => eventsAfter([], entries, MONDAY);

test('an entry that is as it was keeps its number and its instant', () => {
  const before = first([saturday(['1200 no. 1']), promised('2027-05-08')]);
  expect(before.map(({ sequence }) => sequence)).toEqual([0, 0]);
  const after = eventsAfter(before, [saturday(['1200 no. 1']), promised('2027-05-08')], TUESDAY);
  expect(after).toEqual(before);
});

test('one that moves or changes counts one more, and says when', () => {
  const before = first([saturday(['1200 no. 1']), promised('2027-05-08')]);
  const [session, order] = eventsAfter(before, [saturday(['1200 no. 2']), promised('2027-05-15')], TUESDAY);
  expect(session).toMatchObject({ sequence: 1, changedAt: TUESDAY.now, isCancelled: false });
  expect(order).toMatchObject({ sequence: 1, changedAt: TUESDAY.now, entry: { on: '2027-05-15' } });
});

test('what is in the plan no more is called off once, and counts on when it comes back', () => {
  const before = first([promised('2027-05-08')]);
  const [off] = eventsAfter(before, [], TUESDAY);
  expect(off).toMatchObject({ sequence: 1, isCancelled: true, entry: { on: '2027-05-08' } });
  expect(eventsAfter([off!], [], SATURDAY_NOON)).toEqual([off]);
  const [back] = eventsAfter([off!], [promised('2027-05-08')], SATURDAY_NOON);
  expect(back).toMatchObject({ sequence: 2, isCancelled: false });
});

test('a session that has begun stays as it was: what is recorded of it leaves the plan bit by bit', () => {
  const before = first([saturday(['1200 no. 1', '1200 no. 2'])]);
  expect(eventsAfter(before, [saturday(['1200 no. 2'])], SATURDAY_NOON)).toEqual(before);
  expect(eventsAfter(before, [], SATURDAY_NOON)).toEqual(before);
});

test('an order that was handed over on its day stays on that day', () => {
  const before = first([promised('2027-04-10')]);
  expect(eventsAfter(before, [], SATURDAY_NOON)).toEqual(before);
});

test('an order that is late when it gets another day moves there', () => {
  const before = first([promised('2027-04-09')]);
  const [moved] = eventsAfter(before, [promised('2027-04-17')], SATURDAY_NOON);
  expect(moved).toMatchObject({ sequence: 1, entry: { on: '2027-04-17' } });
});

test(`what went by ${DAYS_KEPT} days ago is given out no more`, () => {
  const before = first([promised('2027-04-10')]);
  const at = (today: string) => eventsAfter(before, [], { now: `${today}T09:00:00Z`, today });
  expect(at('2027-06-09')).toEqual(before);
  expect(at('2027-06-10')).toEqual([]);
});
