import type { ChangeHead } from '../../../db/stores/change-store.ts';

/** What changes to the hours of any date are called, before the date. */
export const HOURS_OF = 'hours of ';

/** What a change to the hours of a date is called on record, so that it can be found again while the date is to come. */
export const hoursKind = (date: string): string => `${HOURS_OF}${date}`;

/** A change to the hours of a date that still stands. */
export interface HoursChanged {
  change: number;
  words: string;
  date: string;
}

/** Changes to the hours of today and of dates to come that still stand, the newest first. */
export const hoursChangedOn = (changes: readonly ChangeHead[], today: string): HoursChanged[] =>
  changes
    .filter(
      ({ kind, undoneBy }) => undoneBy === null && kind.startsWith(HOURS_OF) && kind.slice(HOURS_OF.length) >= today,
    )
    .map(({ id, words, kind }) => ({ change: id, words, date: kind.slice(HOURS_OF.length) }));
