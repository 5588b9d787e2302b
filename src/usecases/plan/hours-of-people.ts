import type { Minute } from '../../../shared/time.ts';
import type { OpenWindow } from '../../engine/calendar/sessions.ts';

/** Hours of so many people in one go, and the places of the windows that they are made of. */
export interface PeopleHours {
  start: Minute;
  end: Minute;
  crew: number;
  places: number[];
}

/**
 * The windows of a session as people have them: where the hours of as many begin the minute others' are over, they are the same
 * people, whatever they may do in each.
 */
export const hoursOfPeople = (windows: readonly OpenWindow[]): PeopleHours[] => {
  const people: PeopleHours[] = [];
  for (const [place, { start, end, crew }] of windows.entries()) {
    const same = people.find((one) => one.end === start && one.crew === crew);
    if (same) {
      same.end = end;
      same.places.push(place);
    } else people.push({ start, end, crew, places: [place] });
  }
  return people;
};
