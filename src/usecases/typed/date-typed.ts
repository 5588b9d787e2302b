import { DAY_NAMES, MONTH_NAMES, shortMonthName } from '../../../shared/day-names.ts';
import { type English, englishOf } from '../../../shared/english.ts';
import { quoted } from '../../../shared/said-back.ts';
import {
  type DayNumber,
  dateOfDay,
  dayNumber,
  isDate,
  WEEKDAYS,
  type Weekday,
  weekdayOf,
} from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';

/** What two numbers such as 5/6 stand for where both orders make a date. */
export type DateOrder = 'day first' | 'month first';

/**
 * What a typed day came to; `order` where it could have been another one. `next` where it has just gone by and no year was
 * named: the same day to come. Or in plain words why it is none.
 */
export type DateRead =
  | { ok: true; date: string; order: DateOrder | null; next?: string }
  | { ok: false; reason: string };

/**
 * What a day is read by: today, for what has no year, and the English of the yard (where it is not said, by the units), by
 * which 5/6 is the month first or the day.
 */
export interface DateReading {
  today: string;
  system: UnitSystem;
  english?: English;
}

const isMonthFirst = ({ system, english }: DateReading): boolean => (english ?? englishOf(system)) === 'US';

const HOW = 'Write a day like 8 May, Sat 8 May or 2027-05-08.';
const WEEK = 7;
const FARTHEST_WEEKS = 520;

const found = (date: string, next?: string): DateRead => ({ ok: true, date, order: null, ...(next ? { next } : {}) });
const none = (reason: string): DateRead => ({ ok: false, reason });

/** A word that begins a name of a weekday or a month, of at least its first three letters. */
const begins = (word: string, name: string): boolean => word.length >= 3 && name.toLowerCase().startsWith(word);
const weekdayNamed = (word: string): Weekday | null => WEEKDAYS.find((day) => begins(word, DAY_NAMES[day])) ?? null;
const monthNamed = (word: string): number | null => {
  const month = MONTH_NAMES.findIndex((name) => begins(word, name));
  return month < 0 ? null : month + 1;
};

interface Parts {
  day: number;
  month: number;
  year: number | null;
}

const iso = ({ day, month }: Parts, year: number): string =>
  `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;

/** Two figures of a year are of this century: nobody promises for the last one. */
const yearOf = (text: string | undefined): number | null => {
  if (!text) return null;
  return text.length <= 2 ? 2000 + Number(text) : Number(text);
};

/** 29 Feb is in one of four years; everything else that exists is in the next one at the latest. */
const LEAP_YEARS = 8;

/** The first such day from today on, where no year is named; null when there is none. */
const nextSuch = (parts: Parts, today: string): string | null => {
  const first = Number(today.slice(0, 4));
  for (let year = first; year <= first + LEAP_YEARS; year++) {
    const date = iso(parts, year);
    if (isDate(date) && date >= today) return date;
  }
  return null;
};

/** A day that went by no longer ago than this is meant as it was, and not as next year's, where no year is named. */
const JUST_GONE_DAYS = 90;

/** The last such day before today, where it has just gone by; null where it has not. */
const justGone = (parts: Parts, today: string): string | null => {
  const thisYear = Number(today.slice(0, 4));
  const gone = [thisYear, thisYear - 1].map((year) => iso(parts, year)).find((date) => isDate(date) && date < today);
  return gone !== undefined && dayNumber(today) - dayNumber(gone) <= JUST_GONE_DAYS ? gone : null;
};

/** The days it could be, the likeliest first. */
const existing = (parts: Parts, { today }: DateReading): string[] => {
  const dates = parts.year === null ? [justGone(parts, today), nextSuch(parts, today)] : [iso(parts, parts.year)];
  return dates.filter((date) => date !== null).filter(isDate);
};

/** Nobody plans for longer than this, or writes about longer ago: such a year is a slip of the hand. */
const YEARS_AWAY = 20;

const farYear = ({ year }: Parts, { today }: DateReading): number | null =>
  year !== null && Math.abs(year - Number(today.slice(0, 4))) > YEARS_AWAY ? year : null;

const missingText = ({ day, month, year }: Parts): string =>
  month >= 1 && month <= 12
    ? `${day} ${shortMonthName(month)}${year === null ? '' : ` ${year}`} does not exist. ${HOW}`
    : `There is no month ${month}. ${HOW}`;

/** A day with a weekday beside it: the two have to agree, in a year to come or, for one just gone by, in its own. */
const agreeing = (parts: Parts, weekday: Weekday | null, how: DateReading): DateRead => {
  const [first, later] = existing(parts, how);
  if (first === undefined) return none(missingText(parts));
  const far = farYear(parts, how);
  if (far !== null) return none(`Is the year ${far} right? It is too far off to plan for. ${HOW}`);
  if (weekday === null) return found(first, later);
  const agrees = [first, later].find((date) => date !== undefined && weekdayOf(dayNumber(date)) === weekday);
  if (agrees !== undefined) return found(agrees);
  const date = later ?? first;
  const day = `${parts.day} ${shortMonthName(parts.month)} ${date.slice(0, 4)}`;
  return none(`${day} is a ${DAY_NAMES[weekdayOf(dayNumber(date))]}, not a ${DAY_NAMES[weekday]}.`);
};

/** "8.5." has the day first everywhere. "5/6" has it by the yard's English, unless only one of the two is a date. */
const fromNumbers = (text: string, weekday: Weekday | null, how: DateReading): DateRead | null => {
  const match = /^(\d{1,2})\s*([./-])\s*(\d{1,2})\.?(?:\s*[./-]?\s*(\d{4}|(?<=[./-]\s*)\d{2}))?$/.exec(text);
  if (!match) return null;
  const [one, other, year] = [Number(match[1]), Number(match[3]), yearOf(match[4])];
  const dayFirst: Parts = { day: one, month: other, year };
  if (match[2] === '.') return agreeing(dayFirst, weekday, how);
  const monthFirst: Parts = { day: other, month: one, year };
  const [mine, theirs] = isMonthFirst(how) ? [monthFirst, dayFirst] : [dayFirst, monthFirst];
  const [isMine, isTheirs] = [mine, theirs].map((parts) => existing(parts, how).length > 0);
  if (isMine && isTheirs && one !== other) {
    const read = agreeing(mine, weekday, how);
    return read.ok ? { ...read, order: isMonthFirst(how) ? 'month first' : 'day first' } : read;
  }
  return agreeing(!isMine && isTheirs ? theirs : mine, weekday, how);
};

/** "8 May", "8th of May 2028", "May 8", "May 8, 2028". */
const fromMonthName = (text: string, weekday: Weekday | null, how: DateReading): DateRead | null => {
  const dayFirst = /^(\d{1,2})(?:st|nd|rd|th)?\.?\s*(?:of\s+)?([a-z]+)\.?,?(?:\s+(\d{4}|\d{2}))?$/.exec(text);
  const monthFirst = /^([a-z]+)\.?\s*(\d{1,2})(?:st|nd|rd|th)?\.?,?(?:\s+(\d{4}))?$/.exec(text);
  const [day, word, year] = dayFirst
    ? [dayFirst[1], dayFirst[2], dayFirst[3]]
    : [monthFirst?.[2], monthFirst?.[1], monthFirst?.[3]];
  const month = word === undefined ? null : monthNamed(word);
  return month === null ? null : agreeing({ day: Number(day), month, year: yearOf(year) }, weekday, how);
};

const firstAfter = (weekday: Weekday, from: DayNumber): DayNumber => {
  const ahead = (WEEKDAYS.indexOf(weekday) - WEEKDAYS.indexOf(weekdayOf(from)) + WEEK) % WEEK;
  return from + (ahead === 0 ? WEEK : ahead);
};

/** "today", "tomorrow", "Saturday", "next Saturday" (the first one after today), "in 2 weeks". */
const fromWords = (text: string, { today }: DateReading): DateRead | null => {
  const from = dayNumber(today);
  if (text === 'today') return found(today);
  if (text === 'tomorrow') return found(dateOfDay(from + 1));
  const ahead = /^(?:in\s+)?(\d{1,3}|a|one)\s*(day|week)s?$/.exec(text);
  if (ahead) {
    const count = /\d/.test(ahead[1] ?? '') ? Number(ahead[1]) : 1;
    if (count <= FARTHEST_WEEKS) return found(dateOfDay(from + count * (ahead[2] === 'week' ? WEEK : 1)));
  }
  const weekday = weekdayNamed(text.replace(/^(next|this|on|coming)\s+/, '').replace(/\.$/, ''));
  return weekday === null ? null : found(dateOfDay(firstAfter(weekday, from)));
};

/**
 * A day as people write it: "2027-05-08", "8 May", "Sat 8 May", "8.5.", "5/6", "next Saturday", "tomorrow". Without a year it
 * is the first such day from today on, or the one that has just gone by, with the `next` one beside it. A day that does not
 * exist, is another weekday than the one named, or lies decades away is refused.
 *
 * Example: on 5 April 2027 `readDate('8.5.', …)` reads 2027-05-08 and `readDate('4 Apr', …)` 2027-04-04, next 2028-04-04;
 * `readDate('31 Apr', …)` is refused: "31 Apr does not exist."; in a US yard `readDate('5/6', …)` reads 2027-05-06, month first.
 */
export const readDate = (typed: string, how: DateReading): DateRead => {
  const text = typed.trim().toLowerCase().replace(/\s+/g, ' ');
  const year = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text);
  if (year) return agreeing({ year: Number(year[1]), month: Number(year[2]), day: Number(year[3]) }, null, how);
  const [, word = '', rest = ''] = /^([a-z]+)\.?,?\s+(.+)$/.exec(text) ?? [];
  const weekday = weekdayNamed(word);
  const plain = weekday === null ? text : rest;
  return (
    fromNumbers(plain, weekday, how) ??
    fromMonthName(plain, weekday, how) ??
    fromWords(text, how) ??
    none(`${quoted(typed)} is no day. ${HOW}`)
  );
};

/**
 * The last such day where a day that was read without a year would still come: bags are of a day gone by. Of words that name no
 * day of a month there is no such day, "tomorrow" for one.
 *
 * `lastSuch('2028-03-20', '20 Mar', '2027-06-01')` is "2027-03-20".
 */
export const lastSuch = (date: string, text: string, today: string): string => {
  const before = `${Number(date.slice(0, 4)) - 1}${date.slice(4)}`;
  const isNamed = new RegExp(`(?<!\\d)0?${Number(date.slice(8))}(?!\\d)`).test(text) && !/\d{4}/.test(text);
  return date > today && isNamed && isDate(before) ? before : date;
};
