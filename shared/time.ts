import { z } from 'zod';

/** Whole minutes since 1970-01-01T00:00Z. The engine counts time in nothing else. */
export type Minute = number;

/** Whole days since 1970-01-01 in the proleptic Gregorian calendar, without a zone. `dayNumber('1970-01-02')` is 1. */
export type DayNumber = number;

const DAY_MS = 86_400_000;
const DATE = /^\d{4}-\d{2}-\d{2}$/;
const INSTANT = /^(\d{4}-\d{2}-\d{2})T(\d{2}):(\d{2})(?::00(?:\.0{1,9})?)?(Z|[+-](\d{2}):(\d{2}))$/;
const CLOCK = /^([01]\d|2[0-3]):[0-5]\d$/;

export const dayNumber = (date: string): DayNumber => Math.round(Date.parse(`${date}T00:00:00Z`) / DAY_MS);

export const dateOfDay = (day: DayNumber): string => new Date(day * DAY_MS).toISOString().slice(0, 10);

/** True for a `YYYY-MM-DD` that exists: 2027-02-29 does not. */
export const isDate = (text: string): boolean => {
  if (!DATE.test(text)) return false;
  const day = dayNumber(text);
  return Number.isFinite(day) && dateOfDay(day) === text;
};

/** True for an RFC 3339 instant with an offset, in whole minutes, on a date that exists. */
export const isInstant = (text: string): boolean => {
  const parts = INSTANT.exec(text);
  if (!parts || !isDate(parts[1]!)) return false;
  return Number(parts[2]) < 24 && Number(parts[3]) < 60 && Number(parts[5] ?? 0) < 24 && Number(parts[6] ?? 0) < 60;
};

/** Minute of an RFC 3339 instant. `minuteOf('1970-01-01T01:00:00+01:00')` is 0. */
export const minuteOf = (instant: string): Minute => Math.round(Date.parse(instant) / 60_000);

/** Minutes after midnight of `HH:MM`; 24:00 is 1440. */
export const clockMinutes = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5));

/** ISO weekday letters by day number: 1970-01-01 was a Thursday. */
export const WEEKDAYS = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'] as const;
export type Weekday = (typeof WEEKDAYS)[number];
export const weekdayOf = (day: DayNumber): Weekday => WEEKDAYS[(((day + 3) % 7) + 7) % 7]!;

/** True when the runtime's time zone database (IANA) knows the name. */
export const isTimeZone = (name: string): boolean => {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return /^[A-Za-z]/.test(name);
  } catch {
    return false;
  }
};

export const date = z.string().refine(isDate, 'is no date that exists (YYYY-MM-DD)');
export const instant = z.string().refine(isInstant, 'is no instant with an offset, in whole minutes (RFC 3339)');
export const clock = z.string().regex(CLOCK, 'is no time of day (HH:MM)');
export const clockEnd = z.string().refine((t) => t === '24:00' || CLOCK.test(t), 'is no time of day (HH:MM)');
export const timeZone = z.string().refine(isTimeZone, 'is no time zone of the IANA list');
export const weekday = z.enum(WEEKDAYS);
