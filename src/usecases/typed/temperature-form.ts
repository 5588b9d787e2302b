import type { UnitSystem } from '../../../shared/units.ts';
import type { Seasons } from '../../engine/begin/seasons.ts';
import type { Outcome } from '../core/context.ts';
import type { DateReading } from './date-typed.ts';
import type { FormFields } from './form-fields.ts';
import { celsiusShown, monthField, readCelsius } from './temperature-figures.ts';
import { TypedReader } from './typed-reader.ts';

const MONTHS = Array.from({ length: 12 }, (_, month) => month);

/** The twelve months as the form shows them. */
export const monthsShown = (
  stored: readonly (number | null)[],
  typed: FormFields,
  system: UnitSystem,
): readonly string[] => stored.map((celsius, month) => celsiusShown(celsius, typed[monthField(month)], system));

/**
 * Twelve figures, in °C, January first; all empty: none. What stands as the form showed it is the figure it was, to the
 * last bit.
 */
export const monthsTyped = (
  fields: FormFields,
  before: readonly (number | null)[],
  shown: readonly string[],
  system: UnitSystem,
): Outcome<number[] | null> => {
  const reader = new TypedReader(fields);
  const empty = MONTHS.filter((month) => reader.text(monthField(month)) === '');
  if (empty.length === MONTHS.length) return reader.outcome(null);
  for (const month of empty) reader.refuse(monthField(month), 'Fill in all twelve months, or none of them.');
  const months = MONTHS.map((month) => {
    const name = monthField(month);
    const stored = before[month];
    if (stored !== null && stored !== undefined && reader.text(name) === shown[month]) return stored;
    return empty.includes(month) ? 0 : readCelsius(reader, name, system);
  });
  return reader.outcome(months);
};

/** The coldest and the warmest month, in °C. */
export const seasonsTyped = (fields: FormFields, system: UnitSystem): Outcome<Seasons> => {
  const reader = new TypedReader(fields);
  const [coldest, warmest] = [readCelsius(reader, 'coldest', system), readCelsius(reader, 'warmest', system)];
  if (reader.faults.length === 0 && warmest < coldest)
    reader.refuse('warmest', 'That is colder than the coldest month.');
  return reader.outcome({ coldest, warmest });
};

interface LineTyped {
  from: string;
  /** The last day; null: until the next month, or what is given next. */
  to: string | null;
  celsius: number;
}

/** Days of another temperature. `taken`: days from which one is given already; `known`: whether the months are. */
export const lineTyped = (
  fields: FormFields,
  how: DateReading,
  { taken, known }: { taken: readonly string[]; known: boolean },
): Outcome<LineTyped> => {
  const reader = new TypedReader(fields, how);
  const [from, to] = [reader.date('from'), reader.dateOrNone('to')];
  const celsius = readCelsius(reader, 'celsius', how.system);
  if (reader.faults.length === 0 && to !== null && to < from) reader.refuse('to', 'That is before the first day.');
  if (to !== null && !known)
    reader.refuse('to', 'Say first what the months are like: nothing is known of the days after that one.');
  if (taken.includes(from)) reader.refuse('from', 'There is a temperature from that day on already. Change that one.');
  return reader.outcome({ from, to, celsius });
};

/** The same line changed: its first day and its figure, which is what it was where it stands as it was shown. */
export const lineEdited = (
  fields: FormFields,
  how: DateReading,
  { taken, before, shown }: { taken: readonly string[]; before: number; shown: string },
): Outcome<Omit<LineTyped, 'to'>> => {
  const reader = new TypedReader(fields, how);
  const from = reader.date('from');
  const celsius = reader.text('celsius') === shown ? before : readCelsius(reader, 'celsius', how.system);
  if (taken.includes(from)) reader.refuse('from', 'There is a temperature from that day on already.');
  return reader.outcome({ from, celsius });
};
