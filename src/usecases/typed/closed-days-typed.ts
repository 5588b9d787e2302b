import { fullDayWords } from '../../../shared/day-words.ts';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import { type DateReading, readDate } from './date-typed.ts';

const BETWEEN = /;|\n|,\s/;
const STRETCH = /^(.+?)\s+(?:to|until)\s+(.+)$/i;
/** More are a rule. */
const MOST_DAYS = 366;

type Read<T> = { ok: true; value: T } | { ok: false; reason: string };

const stretchTyped = (text: string, how: DateReading): Read<string[]> => {
  const [, from = text, to = null] = STRETCH.exec(text) ?? [];
  const first = readDate(from.trim(), how);
  if (!first.ok) return first;
  const last = to === null ? first : readDate(to.trim(), { ...how, today: first.date });
  if (!last.ok) return last;
  const days = dayNumber(last.date) - dayNumber(first.date);
  if (days < 0) return { ok: false, reason: `${text}: the last day is before the first.` };
  if (days > MOST_DAYS) return { ok: false, reason: `${text} is more than a year.` };
  return { ok: true, value: Array.from({ length: days + 1 }, (_, i) => dateOfDay(dayNumber(first.date) + i)) };
};

/**
 * Single days and stretches of days as they are typed, set apart by semicolons: the dates in order, each once. `before` are
 * those there already: left as they are shown they stand for just that.
 */
export const closedDaysTyped = (text: string, how: DateReading, before: readonly string[]): Read<string[]> => {
  if (text === closedDaysText(before)) return { ok: true, value: [...before] };
  const dates = new Set<string>();
  for (const part of text.split(BETWEEN).map((one) => one.trim())) {
    if (part === '') continue;
    const read = stretchTyped(part, how);
    if (!read.ok) return read;
    for (const date of read.value) dates.add(date);
  }
  return { ok: true, value: [...dates].sort() };
};

/** "Thu 24 Dec 2026 to Fri 1 Jan 2027; Mon 3 May 2027". */
export const closedDaysText = (dates: readonly string[]): string => {
  const stretches: [string, string][] = [];
  for (const date of [...dates].sort()) {
    const last = stretches.at(-1);
    if (last && dayNumber(date) === dayNumber(last[1]) + 1) last[1] = date;
    else stretches.push([date, date]);
  }
  return stretches
    .map(([first, last]) => (first === last ? fullDayWords(first) : `${fullDayWords(first)} to ${fullDayWords(last)}`))
    .join('; ');
};
