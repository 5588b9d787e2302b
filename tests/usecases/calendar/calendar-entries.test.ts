import { expect, test } from 'vitest';
import { calendarEntries } from '../../../src/usecases/calendar/calendar-entries.ts';
import type { TurnsOfPlan } from '../../../src/usecases/turns/turns-of-plan.ts';

const NONE: TurnsOfPlan = { sessions: [], moulds: [] };

const session = (date: string, from: string, to: string): TurnsOfPlan['sessions'][number] => ({
  ...{ date, week: '2027-04-05', start: `${date}T${from}:00+01:00`, end: `${date}T${to}:00+01:00` },
});

test('two sessions of one day are two entries, told apart by their place in it', () => {
  const turns = {
    ...NONE,
    sessions: [session('2027-04-10', '08:00', '12:00'), session('2027-04-10', '18:00', '21:00')],
  };
  const keys = calendarEntries({ turns, orders: [], buys: [] }).map(({ key }) => key);
  expect(keys).toEqual(['session-2027-04-10-1', 'session-2027-04-10-2']);
});

test('all that is to be ordered by one day is one entry, the same material once', () => {
  const buy = (name: string, quantity: number, orderBy: string) => ({ name, unit: 'bag', quantity, orderBy });
  const buys = [buy('Cement', 2, '2027-04-08'), buy('Sand', 1, '2027-04-08'), buy('Cement', 3, '2027-04-08')];
  const entries = calendarEntries({ turns: NONE, orders: [], buys: [...buys, buy('Cement', 1, '2027-04-09')] });
  expect(entries).toEqual([
    {
      ...{ kind: 'purchases', key: 'purchases-2027-04-08', on: '2027-04-08' },
      things: [
        { name: 'Cement', unit: 'bag', quantity: 5 },
        { name: 'Sand', unit: 'bag', quantity: 1 },
      ],
    },
    {
      ...{ kind: 'purchases', key: 'purchases-2027-04-09', on: '2027-04-09' },
      things: [{ name: 'Cement', unit: 'bag', quantity: 1 }],
    },
  ]);
});
