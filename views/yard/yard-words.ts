import { DAY_NAMES } from '../../shared/day-names.ts';
import { WEEKDAYS, type Weekday } from '../../shared/time.ts';

/** The days of the week in the order in which the yard has them: `daysFrom('SU')` begins with Sunday. */
export const daysFrom = (weekStart: Weekday): { value: Weekday; text: string }[] => {
  const first = WEEKDAYS.indexOf(weekStart);
  return [...WEEKDAYS.slice(first), ...WEEKDAYS.slice(0, first)].map((value) => ({ value, text: DAY_NAMES[value] }));
};
