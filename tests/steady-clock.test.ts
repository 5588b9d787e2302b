import { expect, test } from 'vitest';
import { steadyClock } from '../src/steady-clock.ts';

let told: string[] = [];

/** What it says as the machine's clock goes from one time to the next. */
const said = (...times: string[]): string[] => {
  const left = [...times];
  told = [];
  const clock = steadyClock(
    () => Date.parse(`2027-04-05T${left.shift()}Z`),
    (line) => told.push(line),
  );
  return times.map(() => clock().slice(11, 16));
};

test('a clock that is set back a little stands still until it is caught up, in whole minutes', () => {
  expect(said('10:00:59.999', '09:59:00', '09:01:00', '10:00:58', '10:01:00')).toEqual([
    ...['10:00', '10:00', '10:00', '10:00'],
    '10:01',
  ]);
  expect(told).toEqual([]);
});

test('one that was more than an hour ahead was wrong, and is followed both ways', () => {
  expect(said('08:00:00', '20:00:00', '08:01:00', '08:00:30')).toEqual(['08:00', '20:00', '08:01', '08:01']);
  expect(told).toEqual([
    'The clock of this machine was set back, from 2027-04-05T20:00Z to 2027-04-05T08:01Z. See on Today what is recorded for later.',
  ]);
});
