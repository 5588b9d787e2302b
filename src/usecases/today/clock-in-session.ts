import { clockMinutes, type Minute } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import type { Session } from '../../engine/calendar/sessions.ts';
import { done, type Outcome, refuse } from '../core/context.ts';

const CLOCK = /^([01]\d|2[0-3]):[0-5]\d$/;

/** A time of a session's own day as it was typed into a field: between its beginning and its end, and not passed. */
export const clockInSession = (
  yard: YardFile,
  session: Session,
  { field, text, now }: { field: string; text: string; now: Minute },
): Outcome<Minute> => {
  if (!CLOCK.test(text)) return refuse(field, 'When? Write a time such as 11:30.');
  const calendar = calendarOf(yard.yard.timeZone);
  const minute = calendar.minuteAt(session.day, clockMinutes(text));
  const clock = (at: Minute) => calendar.instantText(at).slice(11, 16);
  if (minute <= session.start || minute >= session.end)
    return refuse(field, `Write a time between ${clock(session.start)} and ${clock(session.end)}.`);
  return minute < now ? refuse(field, 'That time has passed.') : done(minute);
};
