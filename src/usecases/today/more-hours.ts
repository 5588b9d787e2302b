import { replaceDay } from '../../../db/stores/work-store.ts';
import { dateOfDay, isInstant, type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Calendar, calendarOf } from '../../engine/calendar/calendar.ts';
import type { OpenWindow, Session } from '../../engine/calendar/sessions.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { clockWords, dayWords } from '../core/day-words.ts';
import { hoursWith, sessionsOfDay } from '../plan/hours-of-day.ts';
import type { Edit } from '../plan/save-edit.ts';
import type { SessionSpan } from '../plan/session-effect.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { clockInSession } from './clock-in-session.ts';
import { hoursKind } from './hours-changed.ts';
import { sessionChosen } from './session-chosen.ts';

const HOUR = 60;

interface Chosen {
  yard: YardFile;
  session: Session;
  calendar: Calendar;
  now: Minute;
}

/** Another window in the place of one, or several. */
type ChangeWindow = (window: OpenWindow, index: number) => readonly OpenWindow[];

/** The hours of a day as they become, and what that is called. */
interface HoursThen {
  words: string;
  change: ChangeWindow;
}

/** To the end of the day on which a session begins, in case its hours become longer than they are. */
const spanOf =
  (start: string) =>
  ({ yard }: YardFile): SessionSpan => {
    const calendar = calendarOf(yard.timeZone);
    const from = isInstant(start) ? minuteOf(start) : minuteOf(yard.now);
    return { start: from, end: calendar.midnightOf(calendar.dayOf(from) + 1) };
  };

/** Changes the hours of the session that a form names; shown first, whatever it moves. */
const changingHours =
  (read: (chosen: Chosen, fields: FormFields) => Outcome<HoursThen>) =>
  ({ now }: Pick<UseCaseContext, 'now'>, fields: FormFields): Edit<{ words: string }> => {
    const { session: start = '' } = fields;
    return {
      what: { kind: hoursKind(start.slice(0, 10)), words: ({ words }) => words },
      session: spanOf(start),
      work: async (tx, yard) => {
        const chosen = sessionChosen(yard, start, minuteOf(now));
        if (!chosen.ok) return chosen;
        const [session, calendar] = [chosen.value, calendarOf(yard.yard.timeZone)];
        const then = read({ yard, session, calendar, now: minuteOf(now) }, fields);
        if (!then.ok) return then;
        const date = dateOfDay(session.day);
        await replaceDay(tx, date, hoursWith(yard, date, session.start, then.value.change));
        return done({ words: then.value.words });
      },
    };
  };

const onDay = ({ session }: Chosen): string => dayWords(dateOfDay(session.day));

/** How late a session may go on: no hour is worked twice, and a day's hours end at midnight. */
const latestEnd = ({ yard, session, calendar }: Chosen): Minute => {
  const next = sessionsOfDay(yard, session.day).find(({ start }) => start > session.start);
  return Math.min(calendar.midnightOf(session.day + 1), next?.start ?? Number.POSITIVE_INFINITY);
};

/** Whoever is there at the end of a session stays an hour longer, or until the next hours of that day begin. */
export const anotherHour = changingHours((chosen) => {
  const { session, calendar } = chosen;
  const end = Math.min(session.end + HOUR, latestEnd(chosen));
  if (end <= session.end) return refuse('session', 'Other hours follow on these as it is. Nothing was changed.');
  return done({
    words: `Work on ${onDay(chosen)} goes on until ${clockWords(calendar.instantText(end))}`,
    change: (window) => [window.end === session.end ? { ...window, end } : window],
  });
});

/** The kinds of work that can be done at all in a session are those that one person more can do. */
const allowsOf = ({ windows }: Session): OpenWindow['allows'] => [...new Set(windows.flatMap(({ allows }) => allows))];

/** One person more from a time on, until the end of the session; from its beginning, or now, where none is named. */
export const onePersonMore = changingHours((chosen, { at = '' }) => {
  const { yard, session, calendar, now } = chosen;
  const named =
    at === '' ? done(Math.max(session.start, now)) : clockInSession(yard, session, { field: 'at', text: at, now });
  if (!named.ok) return named;
  const more = { start: named.value, end: session.end, crew: 1, allows: allowsOf(session) };
  return done({
    words: `One person more on ${onDay(chosen)} from ${clockWords(calendar.instantText(more.start))}`,
    change: (window, index) => (index === 0 ? [window, more] : [window]),
  });
});

/**
 * The work is behind: what has not begun begins at a time or later. The people are there until then, and nothing of the plan
 * is given to them; it stays one session, so that nobody opens the yard twice.
 */
export const runningLate = changingHours((chosen, { at = '' }) => {
  const { yard, session, now } = chosen;
  const from = clockInSession(yard, session, { field: 'at', text: at, now });
  if (!from.ok) return from;
  return done({
    words: `Running late on ${onDay(chosen)}: the next step begins at ${at.replace(/^0/, '')}`,
    change: (window) =>
      [
        { ...window, end: Math.min(window.end, now) },
        { ...window, start: Math.max(window.start, now), end: Math.min(window.end, from.value), allows: [] },
        { ...window, start: Math.max(window.start, from.value) },
      ].filter(({ start, end }) => start < end),
  });
});
