import type { StoredPlan } from '../../../db/stores/plan-store.ts';
import { replaceDay } from '../../../db/stores/work-store.ts';
import type { Tx } from '../../../db/transaction.ts';
import { dayWords } from '../../../shared/day-words.ts';
import { dateOfDay, type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Calendar, calendarOf } from '../../engine/calendar/calendar.ts';
import type { OpenWindow, Session } from '../../engine/calendar/sessions.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { clockWords } from '../core/day-words.ts';
import { hoursKind } from '../plan/hours-changed.ts';
import { hoursWith, sessionsOfDay } from '../plan/hours-of-day.ts';
import type { Edit } from '../plan/save-edit.ts';
import { spanOf } from '../plan/session-effect.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { clockInSession } from './clock-in-session.ts';
import { leaveOut } from './leave-out.ts';
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

interface HoursChanged extends HoursThen {
  session: Session;
}

type Read = (chosen: Chosen, fields: FormFields) => Outcome<HoursThen>;

/** Writes the hours of the session that a form names as they become. */
const changeHours = async (tx: Tx, yard: YardFile, now: string, fields: FormFields, read: Read) => {
  const chosen = sessionChosen(yard, fields.session ?? '', minuteOf(now));
  if (!chosen.ok) return chosen;
  const [session, calendar] = [chosen.value, calendarOf(yard.yard.timeZone)];
  const then = read({ yard, session, calendar, now: minuteOf(now) }, fields);
  if (!then.ok) return then;
  const date = dateOfDay(session.day);
  await replaceDay(tx, date, hoursWith(yard, date, session.start, then.value.change));
  return done<HoursChanged>({ ...then.value, session });
};

/** Changes the hours of the session that a form names; shown first, whatever it moves. */
const changingHours =
  (read: Read) =>
  ({ now }: Pick<UseCaseContext, 'now'>, fields: FormFields): Edit<{ words: string }> => {
    const { session: start = '' } = fields;
    return {
      what: { kind: hoursKind(start.slice(0, 10)), words: ({ words }) => words },
      session: spanOf(start),
      work: (tx, yard) => changeHours(tx, yard, now, fields, read),
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

/** The next step can begin only at a time: until then people are there, and nothing of the plan is given to them. */
const heldUpUntil: Read = (chosen, { at = '' }) => {
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
};

/** Other hours, and what stands of the plan where something is left out of them beside. */
interface LateHours {
  words: string;
  stands: StoredPlan | null;
}

/**
 * The work is behind: what has not begun begins at a time or later. It stays one session, so that nobody opens the yard twice.
 * `without` names an order of which the rest is left for another day beside.
 */
export const runningLate = (context: UseCaseContext, fields: FormFields): Edit<LateHours> => ({
  what: { kind: hoursKind((fields.session ?? '').slice(0, 10)), words: ({ words }) => words },
  session: spanOf(fields.session ?? ''),
  work: async (tx, yard, _change, plan) => {
    const hours = await changeHours(tx, yard, context.now, fields, heldUpUntil);
    if (!hours.ok) return hours;
    const { words, session } = hours.value;
    const { without = '' } = fields;
    if (without === '') return done({ words, stands: null });
    const left = await leaveOut(tx, context, { yard, plan, session }, without);
    return left.ok ? done({ stands: left.value.stands, words: `${words}; ${left.value.words}` }) : left;
  },
  replanning: { unfixed: ({ stands }) => (stands ? { standAgain: stands } : {}) },
});
