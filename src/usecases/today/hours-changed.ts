import type { ChangeHead } from '../../../db/stores/change-store.ts';

const PREFIX = 'hours of ';

/** What a change to the hours of a date is called on record, so that it can be found again while the date is to come. */
export const hoursKind = (date: string): string => `${PREFIX}${date}`;

/** Changes to the hours of today and of dates to come that still stand, the newest first. */
export const hoursChangedOn = (changes: readonly ChangeHead[], today: string) =>
  changes
    .filter(({ kind, undoneBy }) => undoneBy === null && kind.startsWith(PREFIX) && kind.slice(PREFIX.length) >= today)
    .map(({ id, words, kind }) => ({ change: id, words, date: kind.slice(PREFIX.length) }));
