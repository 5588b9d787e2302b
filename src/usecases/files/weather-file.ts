import type { Fault } from '../../../shared/fault.ts';
import { type WeatherDay, WIND_UNITS, type WindUnit } from '../../../shared/temperature.ts';
import { UNIT_SYSTEMS, type UnitSystem } from '../../../shared/units.ts';
import { type WeatherTable, weatherTable } from '../../../shared/weather-table.ts';
import type { CellOrder } from '../../engine/csv/date-cells.ts';
import { readCsv } from '../../engine/csv/read-csv.ts';
import {
  dateOfHour,
  orderOfHours,
  WEATHER_COLUMNS,
  type WeatherColumn,
  weatherColumns,
} from '../../engine/csv/weather-cells.ts';
import { readRain } from '../../engine/units/rain.ts';
import { type Reading, unread } from '../../engine/units/reading.ts';
import { readTemperature } from '../../engine/units/temperature.ts';
import { readWind } from '../../engine/units/wind.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { uploadText } from './upload-bytes.ts';

/** So much of a file is carried from form to form. */
const MOST_LETTERS = 20_000;

/** Which column is what, in which units its bare numbers are. */
export interface WeatherChoice {
  columns: Record<WeatherColumn, number | null>;
  temperatures: UnitSystem;
  wind: WindUnit;
  rain: UnitSystem;
}

/** The coming day that a cell names, whatever order its column has where that is not known; null where it names none. */
const dayIn = (dates: readonly string[], cell: string, known: CellOrder | null): string | null => {
  const orders = known ? [known] : (['day first', 'month first'] as const);
  const days = orders.flatMap((order) => {
    const read = dateOfHour(cell, order);
    return read.ok && dates.includes(read.value) ? [read.value] : [];
  });
  return days[0] ?? null;
};

/** A number with a decimal comma, as files apart by semicolons have it, with a point. */
const pointed = (cell: string): string => cell.replace(/^(-?\d+),(\d+)$/, '$1.$2');

/** The table in a file that was sent: its rows of the coming days. Refuses what is no CSV, and one without any of these days. */
export const weatherUpload = (bytes: Uint8Array, dates: readonly string[]): Outcome<WeatherTable> => {
  const text = uploadText(bytes);
  if (!text.ok) return text;
  const read = readCsv(text.value.text);
  if (!read.ok) return refuse('file', read.row === null ? read.reason : `Row ${read.row}: ${read.reason}`);
  const { header, rows, dialect } = read.csv;
  // The days that settle in which order a column has them may not be among those to come.
  const orders = header.map((_, at) => orderOfHours(rows.map(({ cells }) => cells[at] ?? '')));
  const asDays = rows.map(({ cells }) =>
    cells.map((cell, at) => {
      const order = orders[at] ?? null;
      return { cell, order, day: dayIn(dates, cell, order) };
    }),
  );
  const coming = asDays
    .filter((cells) => cells.some(({ day }) => day !== null))
    .map((cells) => cells.map(({ cell, order, day }) => (order !== null && day !== null ? day : cell)));
  if (coming.length === 0)
    return refuse('file', 'No row of the file is of today or the six days after it. Each row needs a date.');
  const table = {
    header,
    rows: coming.map((cells) => cells.map((cell) => (dialect.decimal === ',' ? pointed(cell.trim()) : cell.trim()))),
  };
  return JSON.stringify(table).length > MOST_LETTERS
    ? refuse('file', 'The rows of the coming days are too long. Leave out columns that are not needed.')
    : done(table);
};

/** A table that was carried in a form; null for what is none. */
export const tableCarried = ({ table = '' }: FormFields): WeatherTable | null => {
  try {
    return weatherTable.parse(JSON.parse(table));
  } catch {
    return null;
  }
};

/** What the names of the columns say by themselves. */
export const choiceBy = ({ header }: WeatherTable, system: UnitSystem): WeatherChoice => {
  const columns = weatherColumns(header);
  const name = (column: WeatherColumn) => header[columns[column] ?? -1] ?? '';
  const windSaid = WIND_UNITS.find((unit) => name('wind').toLowerCase().includes(unit));
  return {
    columns,
    temperatures: /°\s?f\b|\bf\b|fahrenheit/i.test(name('low'))
      ? 'US'
      : /°\s?c\b|\bc\b/i.test(name('low'))
        ? 'metric'
        : system,
    wind: windSaid ?? (system === 'US' ? 'mph' : 'km/h'),
    rain: /\bmm\b/i.test(name('rain')) ? 'metric' : /\bin\b|inch/i.test(name('rain')) ? 'US' : system,
  };
};

const systemTyped = (typed: string | undefined, otherwise: UnitSystem): UnitSystem =>
  UNIT_SYSTEMS.find((one) => one === typed) ?? otherwise;

/** What was chosen in the form; a column that is not there counts as none. */
export const choiceTyped = (fields: FormFields, table: WeatherTable, system: UnitSystem): WeatherChoice => {
  const column = (name: WeatherColumn): number | null => {
    const at = Number(fields[name] || Number.NaN);
    return Number.isInteger(at) && at >= 0 && at < table.header.length ? at : null;
  };
  return {
    columns: Object.fromEntries(WEATHER_COLUMNS.map((name) => [name, column(name)])) as WeatherChoice['columns'],
    temperatures: systemTyped(fields.temperatures, system),
    wind: WIND_UNITS.find((unit) => unit === fields.windUnit) ?? 'km/h',
    rain: systemTyped(fields.rainUnit, system),
  };
};

const percent = (cell: string): Reading<number> => {
  const value = Number(cell.replace(/\s*%$/, ''));
  return value >= 0 && value <= 100 ? { ok: true, value: Math.round(value) } : unread('is no percentage');
};

/** How a cell of a column is read: a bare number is in the unit that was chosen. */
const readersOf = ({ temperatures, wind, rain }: WeatherChoice) => ({
  low: (cell: string) => readTemperature(cell, temperatures),
  high: (cell: string) => readTemperature(cell, temperatures),
  wind: (cell: string) => readWind(/[a-z]/i.test(cell) ? cell : `${cell} ${wind}`, 'metric'),
  humidity: percent,
  rain: (cell: string) => readRain(cell, rain),
});

interface DayRows {
  date: string;
  rows: readonly (readonly string[])[];
}

const byDate = (table: WeatherTable, at: number, monthFirst: boolean, dates: readonly string[]): DayRows[] => {
  const order = orderOfHours(table.rows.map((cells) => cells[at] ?? '')) ?? (monthFirst ? 'month first' : 'day first');
  const dated = table.rows.map((cells) => ({ cells, date: dateOfHour(cells[at] ?? '', order) }));
  return dates.flatMap((date) => {
    const rows = dated.filter((one) => one.date.ok && one.date.value === date).map(({ cells }) => cells);
    return rows.length > 0 ? [{ date, rows }] : [];
  });
};

/** Of a day with a row an hour: the lowest, the highest, the strongest wind, the driest air, all rain together. */
const OF_A_DAY = {
  low: (all: readonly number[]) => Math.min(...all),
  high: (all: readonly number[]) => Math.max(...all),
  wind: (all: readonly number[]) => Math.max(...all),
  humidity: (all: readonly number[]) => Math.min(...all),
  rain: (all: readonly number[]) => Number(all.reduce((sum, one) => sum + one, 0).toFixed(2)),
};

/**
 * The days of a table by the columns that were chosen. Refuses at the column what has no date or no temperatures, and cells
 * that can not be read; empty ones say nothing.
 */
export const weatherOfTable = (
  table: WeatherTable,
  choice: WeatherChoice,
  { dates, monthFirst }: { dates: readonly string[]; monthFirst: boolean },
): Outcome<WeatherDay[]> => {
  const faults: Fault[] = (['date', 'low', 'high'] as const)
    .filter((column) => choice.columns[column] === null)
    .map((column) => ({ path: column, message: 'Say which column that is.' }));
  if (faults.length > 0) return { ok: false, faults };
  const readers = readersOf(choice);
  const of = (rows: DayRows['rows'], column: keyof typeof OF_A_DAY): number | undefined => {
    const at = choice.columns[column];
    if (at === null) return undefined;
    const cells = rows.map((row) => row[at] ?? '').filter((cell) => cell !== '');
    const values = cells.flatMap((cell) => {
      const read = readers[column](cell);
      if (!read.ok && !faults.some(({ path }) => path === column)) faults.push({ path: column, message: read.reason });
      return read.ok ? [read.value] : [];
    });
    return values.length > 0 ? OF_A_DAY[column](values) : undefined;
  };
  const days = byDate(table, choice.columns.date!, monthFirst, dates).flatMap(({ date, rows }): WeatherDay[] => {
    const [minCelsius, maxCelsius] = [of(rows, 'low'), of(rows, 'high')];
    const [windKmh, humidityPercent, rainMm] = [of(rows, 'wind'), of(rows, 'humidity'), of(rows, 'rain')];
    if (minCelsius === undefined || maxCelsius === undefined) return [];
    return [
      {
        ...{ date, minCelsius, maxCelsius },
        ...(windKmh === undefined ? {} : { windKmh }),
        ...(humidityPercent === undefined ? {} : { humidityPercent }),
        ...(rainMm === undefined ? {} : { rainMm }),
      },
    ];
  });
  if (faults.length > 0) return { ok: false, faults };
  return days.length > 0 ? done(days) : refuse('date', 'In that column no row is of the coming days.');
};
