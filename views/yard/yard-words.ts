import { WEEKDAYS, type Weekday } from '../../shared/time.ts';

export const DAY_NAMES: Readonly<Record<Weekday, string>> = {
  MO: 'Monday',
  TU: 'Tuesday',
  WE: 'Wednesday',
  TH: 'Thursday',
  FR: 'Friday',
  SA: 'Saturday',
  SU: 'Sunday',
};

/** The days of the week in the order in which the yard has them: `daysFrom('SU')` begins with Sunday. */
export const daysFrom = (weekStart: Weekday): { value: Weekday; text: string }[] => {
  const first = WEEKDAYS.indexOf(weekStart);
  return [...WEEKDAYS.slice(first), ...WEEKDAYS.slice(0, first)].map((value) => ({ value, text: DAY_NAMES[value] }));
};
