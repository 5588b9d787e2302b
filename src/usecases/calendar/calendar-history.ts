import type { CalendarEntry, CalendarEvent } from '../../../shared/calendar-entry.ts';
import { dayNumber, minuteOf } from '../../../shared/time.ts';

/** What went by stays in the calendar for so many days. */
export const DAYS_KEPT = 60;

interface Moment {
  /** An instant. */
  now: string;
  /** Its date in the yard. */
  today: string;
}

/** The last day of an entry. Sessions are told apart by an instant whose text begins with the date in the yard. */
const dayOf = (entry: CalendarEntry): string => (entry.kind === 'session' ? entry.start.slice(0, 10) : entry.on);

/** From then on its work is done bit by bit, and what is left of it in the plan is no longer all of it. */
const hasBegun = (entry: CalendarEntry, { now, today }: Moment): boolean => {
  if (entry.kind === 'session') return minuteOf(entry.start) <= minuteOf(now);
  return entry.kind === 'order' ? entry.on <= today : entry.on < today;
};

const isSame = (a: CalendarEntry, b: CalendarEntry): boolean => JSON.stringify(a) === JSON.stringify(b);

/** An entry of the plan as it is given out, beside what was given out before. */
const eventOf = (entry: CalendarEntry, before: CalendarEvent | undefined, moment: Moment): CalendarEvent => {
  if (!before) return { entry, sequence: 0, changedAt: moment.now, isCancelled: false };
  const stays = hasBegun(before.entry, moment) && hasBegun(entry, moment);
  if (!before.isCancelled && (stays || isSame(before.entry, entry))) return before;
  return { entry, sequence: before.sequence + 1, changedAt: moment.now, isCancelled: false };
};

/** What is in the plan no more: what has begun stays as it was, the rest is called off. */
const withoutEntry = (before: CalendarEvent, moment: Moment): CalendarEvent =>
  before.isCancelled || hasBegun(before.entry, moment)
    ? before
    : { ...before, sequence: before.sequence + 1, changedAt: moment.now, isCancelled: true };

/**
 * The events of a calendar: each entry of the plan with the number of its changes, and what was given out before and is in
 * the plan no more. An entry that is as it was keeps its number and its instant.
 */
export const eventsAfter = (
  before: readonly CalendarEvent[],
  entries: readonly CalendarEntry[],
  moment: Moment,
): CalendarEvent[] => {
  const given = new Map(before.map((event) => [event.entry.key, event]));
  const planned = new Set(entries.map(({ key }) => key));
  const oldest = dayNumber(moment.today) - DAYS_KEPT;
  const gone = before
    .filter(({ entry }) => !planned.has(entry.key) && dayNumber(dayOf(entry)) >= oldest)
    .map((event) => withoutEntry(event, moment));
  return [...entries.map((entry) => eventOf(entry, given.get(entry.key), moment)), ...gone];
};
