import { clockText, dayText } from './day-text.ts';

const minutesOf = (instant: string): number => Number(instant.slice(11, 13)) * 60 + Number(instant.slice(14, 16));
const clock = (minutes: number): string => `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;

/** In steps of five minutes and never too early: "10:41" is "10:45". For the time from which something may be done. */
export const fromClock = (instant: string): string => clock(Math.ceil(minutesOf(instant) / 5) * 5);

/** In steps of five minutes and never too late: "10:44" is "10:40". For the time by which something has to be done. */
export const byClock = (instant: string): string => clock(Math.floor(minutesOf(instant) / 5) * 5);

const NEVER_YEARS = 25;

/** A moment so far off that it stands for never: a piece in hard frost does not set. No plan reaches that far. */
export const isNever = (instant: string, today: string): boolean =>
  Number(instant.slice(0, 4)) - Number(today.slice(0, 4)) > NEVER_YEARS;

/** "Sat 10 Apr, 9:40" */
export const momentText = (instant: string, today: string): string =>
  `${dayText(instant.slice(0, 10), today)}, ${clockText(instant)}`;

/** The moment from which something may be done: never shown too early. */
export const fromMomentText = (instant: string, today: string): string =>
  isNever(instant, today) ? 'Too cold to set' : `${dayText(instant.slice(0, 10), today)}, ${fromClock(instant)}`;

/** "8:00 to 13:30" */
export const hoursText = ({ start, end }: { start: string; end: string }): string => {
  const midnight = end.slice(0, 10) > start.slice(0, 10) && minutesOf(end) === 0;
  return `${clockText(start)} to ${midnight ? '24:00' : clockText(end)}`;
};
