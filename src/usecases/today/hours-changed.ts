import type { ChangeHead } from '../../../db/stores/change-store.ts';

const PREFIX = 'hours of ';

/** What a change to the hours of a date is called on record, so that it can be found again while the date is to come. */
export const hoursKind = (date: string): string => `${PREFIX}${date}`;

/** A change to the hours of a date that still stands. */
export interface HoursChanged {
  change: number;
  words: string;
  date: string;
}

/** Changes to the hours of today and of dates to come that still stand, the newest first. */
export const hoursChangedOn = (changes: readonly ChangeHead[], today: string): HoursChanged[] =>
  changes
    .filter(({ kind, undoneBy }) => undoneBy === null && kind.startsWith(PREFIX) && kind.slice(PREFIX.length) >= today)
    .map(({ id, words, kind }) => ({ change: id, words, date: kind.slice(PREFIX.length) }));
