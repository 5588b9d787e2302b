import { replaceDay } from '../../../db/stores/work-store.ts';
import { dayWords } from '../../../shared/day-words.ts';
import { dateOfDay, minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { hoursKind } from '../plan/hours-changed.ts';
import { hoursWith } from '../plan/hours-of-day.ts';
import { hoursOfPeople } from '../plan/hours-of-people.ts';
import { sessionChosen } from './session-chosen.ts';

/** Someone is not coming to a session. `window` says whose hours fall away: the place among those of its people. */
export const onePersonFewer = (
  context: UseCaseContext,
  { session: start, window: missing }: { session: string; window: number | null },
): Promise<Outcome<Changed<null>>> => {
  const date = start.slice(0, 10);
  return changing(
    context,
    { kind: hoursKind(date), words: `One person fewer on ${dayWords(date)}` },
    async (tx, yard) => {
      const chosen = sessionChosen(yard, start, minuteOf(context.now));
      if (!chosen.ok) return chosen;
      const { windows, start: from } = chosen.value;
      const people = hoursOfPeople(windows);
      const gone = missing === null ? undefined : people[missing];
      if (!gone) return refuse('window', "Choose who can't come.");
      if (people.reduce((sum, { crew }) => sum + crew, 0) <= 1)
        return refuse('window', 'Nobody would be left. Say that there is no work instead.');
      // A session may go on past midnight: the hours are those of the date on which they begin.
      const day = dateOfDay(calendarOf(yard.yard.timeZone).dayOf(gone.start));
      const hours = hoursWith(yard, day, from, (window, index) => {
        if (!gone.places.includes(index)) return window;
        return window.crew <= 1 ? null : { ...window, crew: window.crew - 1 };
      });
      await replaceDay(tx, day, hours);
      return done(null);
    },
  );
};
