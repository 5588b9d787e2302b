import type { English } from '../../../shared/english.ts';
import { isTimeZone, WEEKDAYS } from '../../../shared/time.ts';
import { type TypedLength, UNIT_SYSTEMS, type UnitSystem } from '../../../shared/units.ts';
import type { BeginAnswers, MinutesSaid } from '../../engine/begin/begin-yard.ts';
import { FIRST_FIGURES } from '../../engine/begin/first-figures.ts';
import { readLength } from '../../engine/units/length.ts';
import { NUMBER_TYPED, numberTyped, plainFractions } from '../../engine/units/number-typed.ts';
import { type Reading, read, unread } from '../../engine/units/reading.ts';
import { readTemperature } from '../../engine/units/temperature.ts';
import type { Outcome } from '../core/context.ts';
import { type FormFields, rowsTyped } from './form-fields.ts';
import { TypedReader } from './typed-reader.ts';
import { unclearLength } from './unclear-length.ts';
import { englishTyped } from './yard-form.ts';

/** Rows for lengths that the form begins with, and may have at most. */
const FIRST_ROWS = 4;
const MOST_ROWS = 24;
const HOURS_ROWS = 2;
const SEASONS = ['cold', 'between', 'warm'] as const;
const MINUTES_SAID = ['setUp', 'fill', 'clean', 'strip', 'mix', 'working'] as const;

const LONGEST_LENGTH_MM = 6000;
const MOST_MOULDS = 60;
const MOST_PIECES = 24;
const LONGEST_MINUTES = 480;
/** A week: an ordinary mix that is left in its mould. */
const LONGEST_STRIP_MINUTES = 10_080;

export interface BegunTyped {
  answers: BeginAnswers;
  system: UnitSystem;
  english: English;
  lengths: TypedLength[];
  height: TypedLength;
  thickness: TypedLength;
}

const lengthTyped = (
  reader: TypedReader,
  name: string,
  system: UnitSystem,
  mostMm = LONGEST_LENGTH_MM,
): TypedLength => {
  const text = reader.text(name);
  const reading = readLength(text, system);
  if (!reading.ok) reader.refuse(name, reading.reason);
  else if (reading.value.mm < 10) reader.refuse(name, 'That is shorter than anything that is cast.');
  else if (reading.value.mm > mostMm) reader.refuse(name, 'That is longer than anything that is cast by hand.');
  return reading.ok ? reading.value : { typed: text, mm: 0 };
};

/** A row for a length that was filled in. */
interface PanelRow {
  row: number;
  length: TypedLength;
  moulds: number;
}

const panelLength = (reader: TypedReader, name: string, system: UnitSystem): TypedLength => {
  const before = reader.faults.length;
  const length = lengthTyped(reader, name, system);
  const asked = unclearLength(reader.text(name), length, system);
  if (asked !== null && reader.faults.length === before) reader.refuse(name, asked);
  return length;
};

const panelRow = (reader: TypedReader, row: number, system: UnitSystem): PanelRow | null => {
  const [length, count] = [`length${row}`, `moulds${row}`];
  if (reader.text(length) === '' && reader.text(count) === '') return null;
  return {
    row,
    length: panelLength(reader, length, system),
    moulds: reader.whole(count, 'How many moulds of it?', { least: 1, most: MOST_MOULDS }),
  };
};

const panelsTyped = (reader: TypedReader, system: UnitSystem): PanelRow[] => {
  const rows = Array.from({ length: MOST_ROWS }, (_, row) => panelRow(reader, row, system)).filter(
    (one) => one !== null,
  );
  if (rows.length === 0) reader.refuse('length0', 'Which length do you cast? Write it as 900 or 4 ft 6 in.');
  for (const [at, { row, length }] of rows.entries())
    if (rows.slice(0, at).some((one) => one.length.mm === length.mm && length.mm > 0))
      reader.refuse(`length${row}`, 'That length is there already. Count all its moulds in one row.');
  return rows;
};

const halves = (text: string): Reading<number> => {
  const plain = plainFractions(text);
  const number = NUMBER_TYPED.exec(plain)?.[0] === plain && plain !== '' ? numberTyped(plain) : unread('');
  const fits = number.ok && number.value > 0 && number.value <= MOST_PIECES && Number.isInteger(number.value * 2);
  return fits ? read(number.value) : unread('How many pieces does one bag fill? A number, halves too: 2, or 1 1/2.');
};

const bagTyped = (reader: TypedReader, panels: readonly PanelRow[], system: UnitSystem) => {
  const pieces = reader.measure('bagPieces', halves);
  const text = reader.text('bagLength');
  const length = text === '' ? panels[0]?.length : lengthTyped(reader, 'bagLength', system);
  const known = panels.some((panel) => panel.length.mm === length?.mm);
  if (text !== '' && length && length.mm > 0 && !known)
    reader.refuse('bagLength', 'That is none of the lengths above. Write one of them.');
  return { pieces, lengthMm: length?.mm ?? 0 };
};

const dayTyped = (reader: TypedReader, day: 'cold' | 'warm', system: UnitSystem) => ({
  celsius: reader.measure(`${day}Celsius`, (text) => {
    const reading = readTemperature(text, system);
    if (!reading.ok) return reading;
    return reading.value >= -20 && reading.value <= 45 ? reading : unread('No mortar is poured on such a day.');
  }),
  minutes: reader.whole(`${day}Minutes`, 'After how many minutes?', { least: 1, most: LONGEST_STRIP_MINUTES }),
});

const nowCelsius = (season: (typeof SEASONS)[number], cold: number, warm: number): number =>
  ({ cold, warm, between: Math.round(((cold + warm) / 2) * 10) / 10 })[season];

const hoursRow = (reader: TypedReader, row: number) => {
  const days = reader.ticked(`days${row}`, WEEKDAYS);
  if (days.length === 0) return null;
  const [start, end] = [reader.clock(`from${row}`), reader.clock(`to${row}`)];
  if (start >= end && reader.text(`to${row}`) !== '') reader.refuse(`to${row}`, 'That is not after the start.');
  return { days, start, end, people: reader.whole(`people${row}`, 'How many people?', { least: 1, most: 20 }) };
};

const hoursTyped = (reader: TypedReader): BeginAnswers['hours'] => {
  const hours = Array.from({ length: HOURS_ROWS }, (_, row) => hoursRow(reader, row)).filter((one) => one !== null);
  if (hours.length === 0) reader.refuse('days0', 'On which days do you work? Tick at least one.');
  return hours;
};

const minutesTyped = (reader: TypedReader): MinutesSaid => {
  const said = MINUTES_SAID.flatMap((name) => {
    const least = name === 'fill' || name === 'working' ? 1 : 0;
    const minutes = reader.wholeOrNone(name, 'How many minutes?', { least, most: LONGEST_MINUTES });
    return minutes === null ? [] : [[name, minutes] as const];
  });
  const minutes: MinutesSaid = Object.fromEntries(said);
  const working = minutes.working ?? FIRST_FIGURES.workingMinutes;
  if (minutes.fill !== undefined && minutes.fill > working)
    reader.refuse('fill', `The mix can be worked for ${working} minutes: a mould has to be full by then.`);
  return minutes;
};

/** What a yard that is begun measures with and how it is written; metric where the form does not say. */
export const writtenTyped = (reader: TypedReader): { system: UnitSystem; english: English } => {
  const system = reader.text('system') === '' ? 'metric' : reader.choice('system', UNIT_SYSTEMS);
  return { system, english: englishTyped(reader, system) };
};

/** The name and clock of a yard that is begun. */
export const nameTyped = (reader: TypedReader): { name: string; timeZone: string } => {
  const name = reader.words('name', 'What is the yard called?');
  const timeZone = reader.text('timeZone');
  if (!isTimeZone(timeZone))
    reader.refuse('timeZone', 'Which time zone? Choose one from the list, such as Europe/Dublin or America/Chicago.');
  return { name, timeZone };
};

/** A length as part of a name: what was typed, in single spaces. */
const called = ({ typed }: TypedLength): string => typed.replace(/\s+/g, ' ');

/** The four answers as they were typed, or everything that is wrong with them, each at its field. */
export const beginTyped = (typed: FormFields, now: string): Outcome<BegunTyped> => {
  const reader = new TypedReader(typed);
  const { system, english } = writtenTyped(reader);
  const panels = panelsTyped(reader, system);
  const bag = bagTyped(reader, panels, system);
  const [cold, warm] = [dayTyped(reader, 'cold', system), dayTyped(reader, 'warm', system)];
  const season = reader.choice('season', SEASONS);
  const hours = hoursTyped(reader);
  const named = nameTyped(reader);
  const [height, thickness] = [lengthTyped(reader, 'height', system), lengthTyped(reader, 'thickness', system)];
  const answers: BeginAnswers = {
    ...{ ...named, now, hours, bag, cold, warm },
    panels: panels.map(({ length, moulds }) => ({ called: called(length), lengthMm: length.mm, moulds })),
    ...{ heightMm: height.mm, thicknessMm: thickness.mm, minutes: minutesTyped(reader) },
    nowCelsius: nowCelsius(season, cold.celsius, warm.celsius),
  };
  return reader.outcome({ answers, system, english, lengths: panels.map(({ length }) => length), height, thickness });
};

const MOST_MADE = 200;
export const HOW_MANY_MADE = `How many pieces did it make? Write a whole number, 1 to ${MOST_MADE}.`;

/** How many pieces the last session made; null where that is no such number. */
export const madeTyped = (text: string): number | null => {
  const pieces = /^\d{1,3}$/.test(text) ? Number(text) : 0;
  return pieces >= 1 && pieces <= MOST_MADE ? pieces : null;
};

/** Rows for lengths that the form shows. */
export const lengthRows = (fields: FormFields): number =>
  Math.max(...['length', 'moulds'].map((name) => rowsTyped(fields, name, { first: FIRST_ROWS, most: MOST_ROWS })));
