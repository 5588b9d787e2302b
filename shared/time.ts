import { z } from 'zod';

/** Whole minutes since 1970-01-01T00:00Z. The engine counts time in nothing else. */
export type Minute = number;

/** Whole days since 1970-01-01 in the proleptic Gregorian calendar, without a zone. */
export type DayNumber = number;

const DAY_MS = 86_400_000;
const DATE = /^\d{4}-\d{2}-\d{2}$/;
const INSTANT = /^(\d{4}-\d{2}-\d{2})T(\d{2}):(\d{2})(?::00(?:\.0{1,9})?)?(Z|[+-](\d{2}):(\d{2}))$/;
const CLOCK = /^([01]\d|2[0-3]):[0-5]\d$/;

/**
 * The day of a date `YYYY-MM-DD`; NaN for what is none. A day that its month does not have may be read as one of the
 * next: ask `isDate` first.
 *
 * Example: `dayNumber('1970-01-02')` is 1, `dayNumber('1969-12-31')` is -1.
 */
export const dayNumber = (date: string): DayNumber => Math.round(Date.parse(`${date}T00:00:00Z`) / DAY_MS);

/**
 * The date of a day, `YYYY-MM-DD`. Throws a RangeError where the runtime knows no such day (100 million from 1970).
 *
 * Example: `dateOfDay(20820)` is "2027-01-02".
 */
export const dateOfDay = (day: DayNumber): string => new Date(day * DAY_MS).toISOString().slice(0, 10);

/**
 * True for a `YYYY-MM-DD` that exists.
 *
 * Example: `isDate('2028-02-29')` is true, `isDate('2027-02-29')` is false.
 */
export const isDate = (text: string): boolean => {
  if (!DATE.test(text)) return false;
  const day = dayNumber(text);
  return Number.isFinite(day) && dateOfDay(day) === text;
};

/**
 * True for an RFC 3339 instant with an offset, in whole minutes, on a date that exists. Seconds may be there and have
 * to be 0.
 *
 * Example: `isInstant('2027-04-05T07:30:00+01:00')` is true, `isInstant('2027-04-05T07:30:30Z')` is false.
 */
export const isInstant = (text: string): boolean => {
  const parts = INSTANT.exec(text);
  if (!parts || !isDate(parts[1]!)) return false;
  return Number(parts[2]) < 24 && Number(parts[3]) < 60 && Number(parts[5] ?? 0) < 24 && Number(parts[6] ?? 0) < 60;
};

/** Days of a common year before each month. */
const DAYS_BEFORE = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];
/** Days from the year 0 to 1970. */
const DAYS_TO_1970 = 719_528;

/** Days from 1970 to a date; 30 February is 2 March, as the runtime has it. */
const daysTo = (year: number, month: number, day: number): DayNumber => {
  const leapYears = month > 2 ? year : year - 1;
  const leapDays = Math.floor(leapYears / 4) - Math.floor(leapYears / 100) + Math.floor(leapYears / 400) + 1;
  return 365 * year + leapDays + DAYS_BEFORE[month - 1]! + day - 1 - DAYS_TO_1970;
};

/** The number that two digits of a text are; less than any bound where they are none. */
const twoDigits = (text: string, at: number): number => {
  const tens = text.charCodeAt(at) - 48;
  const ones = text.charCodeAt(at + 1) - 48;
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? tens * 10 + ones : -10_000;
};

const [DASH, COLON, ZERO, LETTER_T, PLUS, MINUS] = Array.from('-:0T+-', (letter) => letter.charCodeAt(0)) as number[];

const isWrittenAsInPlans = (text: string): boolean =>
  text.length === 25 &&
  text.charCodeAt(4) === DASH &&
  text.charCodeAt(7) === DASH &&
  text.charCodeAt(10) === LETTER_T &&
  text.charCodeAt(13) === COLON &&
  text.charCodeAt(16) === COLON &&
  text.charCodeAt(17) === ZERO &&
  text.charCodeAt(18) === ZERO &&
  (text.charCodeAt(19) === PLUS || text.charCodeAt(19) === MINUS) &&
  text.charCodeAt(22) === COLON;

/** The minute of an instant written "2027-04-05T07:30:00+01:00"; null for anything else. */
const minuteWritten = (text: string): Minute | null => {
  if (!isWrittenAsInPlans(text)) return null;
  const year = twoDigits(text, 0) * 100 + twoDigits(text, 2);
  const month = twoDigits(text, 5);
  const day = twoDigits(text, 8);
  const hour = twoDigits(text, 11);
  const minute = twoDigits(text, 14);
  const offsetHours = twoDigits(text, 20);
  const offsetMinutes = twoDigits(text, 23);
  if (year < 1 || month < 1 || month > 12 || day < 1 || day > 31) return null;
  if (hour < 0 || hour > 23 || minute < 0 || minute > 59) return null;
  if (offsetHours < 0 || offsetHours > 23 || offsetMinutes < 0 || offsetMinutes > 59) return null;
  const offset = (offsetHours * 60 + offsetMinutes) * (text.charCodeAt(19) === PLUS ? 1 : -1);
  return daysTo(year, month, day) * 1440 + hour * 60 + minute - offset;
};

/**
 * Minute of an RFC 3339 instant; NaN for a text that is none. A large plan has tens of thousands of them and every
 * page reads some: the way plans write them is read by hand, several times as fast as the runtime does.
 *
 * Example: `minuteOf('1970-01-01T01:00:00+01:00')` is 0, `minuteOf('1970-01-01T01:00:00-01:00')` is 120.
 */
export const minuteOf = (instant: string): Minute => minuteWritten(instant) ?? Math.round(Date.parse(instant) / 60_000);

/**
 * Minutes after midnight of `HH:MM`, which has to be well formed: nothing is checked.
 *
 * Example: `clockMinutes('07:30')` is 450, `clockMinutes('24:00')` is 1440.
 */
export const clockMinutes = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5));

/** Days of the week from Monday on, by their letters in recurrence rules (RFC 5545). */
export const WEEKDAYS = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'] as const;
/** One of `WEEKDAYS`; where the week starts is the yard's habit and not said by it. */
export type Weekday = (typeof WEEKDAYS)[number];
/**
 * The day of the week of any day, those before 1970 too.
 *
 * Example: `weekdayOf(0)` is "TH", `weekdayOf(-1)` is "WE".
 */
export const weekdayOf = (day: DayNumber): Weekday => WEEKDAYS[(((day + 3) % 7) + 7) % 7]!;

/**
 * The first day of the week that a day is in, where weeks begin on a weekday.
 *
 * Example: `weekStartOf(5, 'MO')` is 4, a Monday; `weekStartOf(5, 'SU')` is 3.
 */
export const weekStartOf = (day: DayNumber, begins: Weekday): DayNumber =>
  day - ((WEEKDAYS.indexOf(weekdayOf(day)) - WEEKDAYS.indexOf(begins) + WEEKDAYS.length) % WEEKDAYS.length);

/**
 * True when the runtime's time zone database (IANA) knows the name. An offset, which some runtimes take for a zone, is
 * none.
 *
 * Example: `isTimeZone('Europe/Oslo')` is true, `isTimeZone('+01:00')` is false.
 */
export const isTimeZone = (name: string): boolean => {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return /^[A-Za-z]/.test(name);
  } catch {
    return false;
  }
};

/**
 * The time of day that an instant is in a zone.
 *
 * Example: `clockIn('Europe/Dublin', '2027-06-01T23:30:00Z')` is '00:30'.
 */
export const clockIn = (timeZone: string, instant: string): string =>
  new Intl.DateTimeFormat('en-GB', { timeZone, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' }).format(
    Date.parse(instant),
  );

/**
 * The date that an instant falls on in a zone.
 *
 * Example: `dateIn('Europe/Dublin', '2027-06-01T23:30:00Z')` is "2027-06-02".
 */
export const dateIn = (timeZone: string, instant: string): string => {
  const parts = new Intl.DateTimeFormat('en-GB', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' });
  const part = new Map(parts.formatToParts(Date.parse(instant)).map(({ type, value }) => [type, value]));
  return `${part.get('year')!.padStart(4, '0')}-${part.get('month')}-${part.get('day')}`;
};

/** A date of the yard's calendar, in the yard's zone; stays a text. */
export const date = z.string().refine(isDate, 'is no date that exists (YYYY-MM-DD)');
/** An instant (see `isInstant`); stays the text it is, with the offset it was written with. */
export const instant = z.string().refine(isInstant, 'is no instant with an offset, in whole minutes (RFC 3339)');
/** A time of day from 00:00 to 23:59, where something starts. */
export const clock = z.string().regex(CLOCK, 'is no time of day (HH:MM)');
/** A time of day at which something ends, itself not included; "24:00" is the end of the day. */
export const clockEnd = z.string().refine((t) => t === '24:00' || CLOCK.test(t), 'is no time of day (HH:MM)');
/** A zone by its name in the IANA list, as this runtime has it. */
export const timeZone = z.string().refine(isTimeZone, 'is no time zone of the IANA list');
/** A day of the week by its two letters in recurrence rules. */
export const weekday = z.enum(WEEKDAYS);
