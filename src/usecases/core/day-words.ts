import { dayNumber } from '../../../shared/time.ts';

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** A date in the words of a change: '2027-05-08' is "Sat 8 May". Day 0 of the count, 1970-01-01, was a Thursday. */
export const dayWords = (date: string): string => {
  const [, month, day] = date.split('-').map(Number) as [number, number, number];
  return `${WEEKDAYS[(dayNumber(date) + 3) % 7]} ${day} ${MONTHS[month - 1]}`;
};
