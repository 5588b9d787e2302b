import type { Reading } from '../units/reading.ts';
import { type CellOrder, dateOfCell, orderOfCells } from './date-cells.ts';

/** What a file of weather can say of a day. */
export const WEATHER_COLUMNS = ['date', 'low', 'high', 'wind', 'humidity', 'rain'] as const;
/** One of `WEATHER_COLUMNS`. */
export type WeatherColumn = (typeof WEATHER_COLUMNS)[number];

/** By what words a column is known, as weather stations and services name theirs. */
const NAMED: Readonly<Record<WeatherColumn, RegExp>> = {
  date: /\b(date|day|time|datetime|timestamp)\b/i,
  low: /min|low|cold/i,
  high: /max|high|warm/i,
  wind: /wind/i,
  humidity: /humid|damp|\brh\b/i,
  rain: /rain|precip/i,
};
/** A file by the hour has one temperature for both ends of the day. */
const ANY_TEMPERATURE = /temp|°\s?[cf]\b/i;
/** A direction is no speed, and a chance is no amount. */
const OTHER = /direction|\bdir\b|chance|probab|gust/i;

/**
 * Which column of a header says what, by its name; the first that fits, null where none does.
 *
 * Example: `weatherColumns(['Day', 'Tmin', 'Tmax'])` has date 0, low 1 and high 2; of ['time', 'temperature'] low and high are both 1.
 */
export const weatherColumns = (header: readonly string[]): Record<WeatherColumn, number | null> => {
  const found = (fits: RegExp): number | null => {
    const at = header.findIndex((name) => fits.test(name) && !OTHER.test(name));
    return at < 0 ? null : at;
  };
  const by = Object.fromEntries(WEATHER_COLUMNS.map((column) => [column, found(NAMED[column])])) as Record<
    WeatherColumn,
    number | null
  >;
  const any = found(ANY_TEMPERATURE);
  return { ...by, low: by.low ?? by.high ?? any, high: by.high ?? by.low ?? any };
};

/** "2027-05-08T14:00Z", "8/5/2027 14:00": the hour of a row plans nothing by itself. */
const TIME_OF_DAY = /[T ]\d{1,2}:\d{2}.*$/;

/**
 * The date of a cell that may have a time of day behind it.
 *
 * Example: `dateOfHour('2027-05-08T14:00Z')` reads "2027-05-08".
 */
export const dateOfHour = (cell: string, order: CellOrder | null = null): Reading<string> =>
  dateOfCell(cell.trim().replace(TIME_OF_DAY, ''), order);

/** The order of day and month in a column of dates that may have times behind them; null where nothing tells. */
export const orderOfHours = (cells: readonly string[]): CellOrder | null =>
  orderOfCells(cells.map((cell) => cell.trim().replace(TIME_OF_DAY, '')));
