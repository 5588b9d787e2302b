import { dayNumber, WEEKDAYS, type Weekday, weekdayOf } from '../../../shared/time.ts';
import type { Recurrence } from './recurrence.ts';

/** Hours that repeat as a maker says it: on these days, every week or every second week. */
export interface PlainRhythm {
  /** In the order of the week, at least one. */
  days: Weekday[];
  everyWeeks: 1 | 2;
}

/**
 * A rhythm as a rule (RFC 5545, 3.3.10). Every second week is counted from the week, from Monday on, that holds the
 * date the rule is anchored at.
 *
 * Example: `ruleOfRhythm({ days: ['WE', 'SA'], everyWeeks: 2 })` is "FREQ=WEEKLY;INTERVAL=2;BYDAY=WE,SA".
 */
export const ruleOfRhythm = ({ days, everyWeeks }: PlainRhythm): string => {
  const sorted = WEEKDAYS.filter((day) => days.includes(day));
  return `FREQ=WEEKLY${everyWeeks === 2 ? ';INTERVAL=2' : ''};BYDAY=${sorted.join(',')}`;
};

const isDay = (text: string): text is Weekday => WEEKDAYS.some((day) => day === text);

/**
 * The rhythm that a rule comes to, or null where it says more than days of the week, every week or every second:
 * numbered days, dates of the month, longer intervals, COUNT, UNTIL, or weeks of every second that do not begin on
 * Monday. The rule has passed `ruleFault`.
 *
 * Example: "FREQ=DAILY" is all seven days of every week; anchored at a Saturday, `rhythmOfRule({ rule: 'FREQ=WEEKLY',
 * from: '2027-01-02' })` is `{ days: ['SA'], everyWeeks: 1 }`.
 */
export const rhythmOfRule = ({ rule, from }: Pick<Recurrence, 'rule' | 'from'>): PlainRhythm | null => {
  const parts = new Map(
    rule
      .replace(/^RRULE:/, '')
      .split(';')
      .map((part) => part.split('=') as [string, string]),
  );
  const [freq, interval, wkst] = [parts.get('FREQ'), parts.get('INTERVAL') ?? '1', parts.get('WKST') ?? 'MO'];
  if (parts.has('COUNT') || parts.has('UNTIL') || parts.has('BYMONTHDAY')) return null;
  const days = parts.get('BYDAY')?.split(',').filter(isDay) ?? null;
  if (freq === 'DAILY') return interval === '1' ? { days: days ?? [...WEEKDAYS], everyWeeks: 1 } : null;
  if (freq !== 'WEEKLY' || (interval !== '1' && interval !== '2')) return null;
  if (interval === '2' && wkst !== 'MO') return null;
  const named = days ?? [weekdayOf(dayNumber(from))];
  return { days: WEEKDAYS.filter((day) => named.includes(day)), everyWeeks: interval === '1' ? 1 : 2 };
};
