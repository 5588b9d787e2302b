import { Temporal } from 'temporal-polyfill';
import { type DayNumber, dateOfDay, type Minute } from '../../../shared/time.ts';

/** Local dates and clock times of one zone, worked out on whole minutes. */
export interface Calendar {
  timeZone: string;
  /** Local date an instant falls on. */
  dayOf(minute: Minute): DayNumber;
  /** Instant of 00:00 on a local date; where midnight is skipped, the first minute of that date. */
  midnightOf(day: DayNumber): Minute;
  /** Instant of a clock time in minutes after midnight, 0 to 1440 (24:00 is 00:00 of the next date). */
  minuteAt(day: DayNumber, clockMinutes: number): Minute;
  /** RFC 3339 with the offset the zone has then, in whole minutes: "2027-04-05T07:30:00+01:00". */
  instantText(minute: Minute): string;
}

/** A time during which the offset from UTC (in minutes) stays the same; `wallEnd` is `end` on the local clock. */
interface OffsetSpan {
  start: Minute;
  wallEnd: number;
  offset: number;
  /** The offset as it is written: "+01:00". */
  text: string;
}

const DAY_MINUTES = 1440;
const NS_PER_MINUTE = 60_000_000_000;
/** Offsets are read from the zone database block by block, about a year each, and kept. */
const BLOCK_MINUTES = 524_288;
/** How far a block reaches past its ends: a local clock is never two days away from UTC. */
const MARGIN_MINUTES = 2 * DAY_MINUTES;

const two = (n: number): string => (n < 10 ? `0${n}` : `${n}`);

const offsetText = (offset: number): string => {
  const size = Math.abs(offset);
  return `${offset < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
};

/** Every minute of a day as a clock shows it: a plan has ten times a pour. */
const CLOCKS = Array.from({ length: DAY_MINUTES }, (_, clock) => `${two(Math.floor(clock / 60))}:${two(clock % 60)}`);

const spansOf = (timeZone: string, block: number): OffsetSpan[] => {
  const first = block * BLOCK_MINUTES - MARGIN_MINUTES;
  const last = (block + 1) * BLOCK_MINUTES + MARGIN_MINUTES;
  const spans: OffsetSpan[] = [];
  let at: Temporal.ZonedDateTime | null = Temporal.Instant.fromEpochMilliseconds(first * 60_000).toZonedDateTimeISO(
    timeZone,
  );
  let start = first;
  while (at && start < last) {
    const next: Temporal.ZonedDateTime | null = at.getTimeZoneTransition('next');
    const end: Minute = next ? Math.ceil(next.epochMilliseconds / 60_000) : last;
    const offset = Math.floor(at.offsetNanoseconds / NS_PER_MINUTE);
    spans.push({ start, wallEnd: Math.min(end, last) + offset, offset, text: offsetText(offset) });
    [at, start] = [next, end];
  }
  return spans;
};

/** Dates whose text is kept, of each zone: some years. */
const KEPT_DATES = 4096;

const makeCalendar = (timeZone: string): Calendar => {
  const blocks = new Map<number, OffsetSpan[]>();
  const spansAround = (minute: number): OffsetSpan[] => {
    const block = Math.floor(minute / BLOCK_MINUTES);
    const known = blocks.get(block);
    if (known) return known;
    const spans = spansOf(timeZone, block);
    blocks.set(block, spans);
    return spans;
  };
  const spanAt = (minute: Minute): OffsetSpan => {
    const spans = spansAround(minute);
    let i = spans.length - 1;
    while (spans[i]!.start > minute) i--;
    return spans[i]!;
  };
  const minuteAt = (day: DayNumber, clockMinutes: number): Minute => {
    const wall = day * DAY_MINUTES + clockMinutes;
    const spans = spansAround(wall);
    // The first span whose local clock has not yet passed `wall`: of two instants with one clock time, the first.
    let i = 0;
    while (wall >= spans[i]!.wallEnd) i++;
    const minute = wall - spans[i]!.offset;
    // Skipped by the clock: the offset before the gap counts.
    return minute < spans[i]!.start ? wall - spans[i - 1]!.offset : minute;
  };
  const dates = new Map<DayNumber, string>();
  const dateText = (day: DayNumber): string => {
    const known = dates.get(day);
    if (known !== undefined) return known;
    if (dates.size >= KEPT_DATES) dates.clear();
    const text = dateOfDay(day);
    dates.set(day, text);
    return text;
  };
  return {
    timeZone,
    dayOf: (minute) => Math.floor((minute + spanAt(minute).offset) / DAY_MINUTES),
    midnightOf: (day) => minuteAt(day, 0),
    minuteAt,
    instantText: (minute) => {
      const { offset, text } = spanAt(minute);
      const wall = minute + offset;
      const day = Math.floor(wall / DAY_MINUTES);
      return `${dateText(day)}T${CLOCKS[wall - day * DAY_MINUTES]}:00${text}`;
    },
  };
};

const KEPT_CALENDARS = 32;
const calendars = new Map<string, Calendar>();

/**
 * The calendar of an IANA zone. Offsets come from the zone's transitions in the runtime's time zone database, once
 * each; every conversion after that is arithmetic on whole minutes.
 *
 * A clock time that does not exist is read with the offset before the gap, one that occurs twice is the first (RFC
 * 5545, 3.3.5). Old offsets with seconds in them (before 1972) count to the minute below. Throws a RangeError for a
 * zone nobody knows; a yard file that was read has none.
 *
 * Example: in Europe/Dublin the clocks go from 01:00 to 02:00 on 2027-03-28 (day 20905), so 01:30 is 01:30Z, which the
 * clock calls 02:30: `calendarOf('Europe/Dublin').instantText(calendarOf('Europe/Dublin').minuteAt(20905, 90))` is
 * "2027-03-28T02:30:00+01:00".
 */
export const calendarOf = (timeZone: string): Calendar => {
  const known = calendars.get(timeZone);
  if (known) return known;
  if (calendars.size >= KEPT_CALENDARS) calendars.clear();
  const calendar = makeCalendar(timeZone);
  calendars.set(timeZone, calendar);
  return calendar;
};
