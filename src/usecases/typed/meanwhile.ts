import type { Fault } from '../../../shared/fault.ts';
import { dayYearWords } from '../core/day-words.ts';
import type { FormFields } from './form-fields.ts';

/** What stood in the days of a form when its page was made, by field: '' for none. A field without it says nothing. */
export type DaysShown = Readonly<Record<string, string>>;

/** The name of the hidden field that sends along what stood in a field: `promisedOnWas`. */
const wasName = (name: string): string => `${name}Was`;

/** What stood in some days of a form, as it was sent along. */
export const daysShown = (fields: FormFields, names: readonly string[]): DaysShown =>
  Object.fromEntries(
    names.flatMap((name) => {
      const was = fields[wasName(name)];
      return was === undefined ? [] : [[name, was]];
    }),
  );

const dayText = (day: string | null, today: string): string => (day ? dayYearWords(day, today) : 'no day');

/** The days of a form as its page showed them, as they are now, and as they were typed where that says enough. */
interface Days {
  shown: DaysShown;
  now: Readonly<Record<string, string | null>>;
  typed: Readonly<Record<string, string | null>>;
}

/**
 * The days of a form that somebody else changed since its page was made, to another day than is typed, each with what it is
 * now. The page that comes back shows what was typed and was filled in from what is there now, so that sent again it is saved.
 *
 * Example: on 8 April, with `{ on: '2027-04-09' }` shown and `{ on: '2027-04-16' }` there now, it is said at `on`: "It was
 * changed to Fri 16 Apr meanwhile. …"
 */
export const changedMeanwhile = ({ shown, now, typed }: Days, today: string): Fault[] => {
  const isOther = ([path, day]: [string, string | null]) =>
    shown[path] !== undefined && shown[path] !== (day ?? '') && typed[path] !== day;
  return Object.entries(now)
    .filter(isOther)
    .map(([path, day]) => ({
      path,
      message: `It was changed to ${dayText(day, today)} meanwhile. What you typed still stands here: send it again to have it so.`,
    }));
};
