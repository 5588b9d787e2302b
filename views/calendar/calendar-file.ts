import ical, { ICalCalendarMethod, ICalEventStatus, ICalEventTransparency } from 'ical-generator';
import type { CalendarEvent } from '../../shared/calendar-entry.ts';
import type { CalendarModel } from '../../src/usecases/calendar/show-calendar.ts';
import { type Say, sayIn } from '../words/own-words.ts';
import { entryText } from './entry-text.ts';

/** How often a program that reads it may look again. */
const REFRESH_SECONDS = 3600;

const wholeDay = (date: string): Date => new Date(`${date}T00:00:00Z`);

/** Times are in UTC, which needs no table of time zones beside it; days are days, wherever it is read. */
const when = ({ entry }: CalendarEvent) =>
  entry.kind === 'session'
    ? { start: new Date(entry.start), end: new Date(entry.end), transparency: ICalEventTransparency.OPAQUE }
    : { start: wholeDay(entry.on), allDay: true, transparency: ICalEventTransparency.TRANSPARENT };

const eventData = (event: CalendarEvent, uidEnding: string, say: Say) => {
  const { summary, lines } = entryText(event.entry);
  const changed = new Date(event.changedAt);
  return {
    ...when(event),
    id: `${encodeURIComponent(event.entry.key)}@${uidEnding}`,
    ...{ summary: say(summary), description: lines.map(say).join('\n') },
    ...{ sequence: event.sequence, stamp: changed, lastModified: changed },
    status: event.isCancelled ? ICalEventStatus.CANCELLED : ICalEventStatus.CONFIRMED,
  };
};

/**
 * The calendar as a file (RFC 5545): the same text as long as nothing in it has changed. What was called off is in it as
 * cancelled, so that programs which keep what they once read take it out.
 */
export const calendarFile = ({ yardName, uidEnding, events, written }: CalendarModel): string =>
  ical({
    name: yardName,
    prodId: { company: 'Mould Rota', product: 'Calendar of a yard', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
    ttl: REFRESH_SECONDS,
    events: events.map((event) => eventData(event, uidEnding, sayIn(written))),
  }).toString();
