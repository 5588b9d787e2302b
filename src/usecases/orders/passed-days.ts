import type { PassedDay } from '../plan/save-edit.ts';
import type { DaysTyped } from '../typed/order-form.ts';

type Days = Pick<DaysTyped, 'promisedOn' | 'next'> & { wantedOn?: string | null };
type DaysBefore = Partial<Record<'wantedOn' | 'promisedOn', string | null>>;

/**
 * The days of an order that have gone by, unless they stood so before: to be asked about.
 *
 * Example: on 8 April `passedDays({ promisedOn: '2027-04-07', next: {} }, '2027-04-08')` is `[{ field: 'promisedOn', on:
 * '2027-04-07', next: null }]`.
 */
export const passedDays = (days: Days, today: string, before: DaysBefore = {}): PassedDay[] =>
  (['wantedOn', 'promisedOn'] as const).flatMap((field) => {
    const on = days[field];
    if (!on || on >= today || on === before[field]) return [];
    return [{ field, on, next: days.next[field] ?? null }];
  });
