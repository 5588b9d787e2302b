import rrule from 'rrule';
import { type DayNumber, dayNumber, weekdayOf } from '../../../shared/time.ts';
import type { WorkWindow } from '../../../shared/work.ts';

const { RRule } = rrule;
type Options = ReturnType<typeof RRule.parseString>;
/** What of a window decides its dates. */
export type Recurrence = Pick<WorkWindow, 'rule' | 'from' | 'until'>;

const DAY_MS = 86_400_000;
const utcDate = (day: DayNumber): Date => new Date(day * DAY_MS);
const dayOfUtc = (date: Date): DayNumber => Math.floor(date.getTime() / DAY_MS);
/** Months since January 1970. */
const monthOf = (date: Date): number => (date.getUTCFullYear() - 1970) * 12 + date.getUTCMonth();

/** The last date a rule's own UNTIL lets through; only its date counts. */
const ruleUntil = (rule: string): DayNumber => {
  const until = /UNTIL=(\d{4})(\d\d)(\d\d)/.exec(rule);
  return until ? dayNumber(`${until[1]}-${until[2]}-${until[3]}`) : Number.POSITIVE_INFINITY;
};

/**
 * BYDAY=MO,2TU means every Monday and the second Tuesday; the library takes the two kinds as two conditions at once and
 * finds nothing. Written out as 1MO to 5MO they are of one kind.
 */
const withNumberedDays = (rule: string): string =>
  rule.replace(/BYDAY=([^;]*\d[^;]*)/, (_, days: string) => {
    const numbered = days.split(',').flatMap((day) => (/\d/.test(day) ? [day] : [1, 2, 3, 4, 5].map((n) => n + day)));
    return `BYDAY=${numbered.join(',')}`;
  });

/**
 * An anchor near `first` with the same dates from there on, so that a rule anchored years ago costs no more than one
 * anchored today. A rule with COUNT has to be counted from where it began.
 */
const anchorNear = (options: Options, from: DayNumber, first: DayNumber): DayNumber => {
  const interval = options.interval ?? 1;
  if (options.count != null || first <= from) return from;
  if (options.freq !== RRule.MONTHLY) {
    const step = interval * (options.freq === RRule.WEEKLY ? 7 : 1);
    return from + Math.floor((first - from) / step) * step;
  }
  const start = monthOf(utcDate(from));
  const steps = Math.floor((monthOf(utcDate(first)) - start) / interval);
  return dayOfUtc(new Date(Date.UTC(1970, start + steps * interval, 1)));
};

/** Every 7th, 14th … day is one weekday; when that is not listed the library would search to the year 9999. */
const neverHits = (options: Options, rule: string, from: DayNumber): boolean => {
  const days = /BYDAY=([^;]*)/.exec(rule)?.[1];
  if (options.freq !== RRule.DAILY || !days || (options.interval ?? 1) % 7 !== 0) return false;
  return !days.includes(weekdayOf(from));
};

const expand = (recurrence: Recurrence, first: DayNumber, last: DayNumber): DayNumber[] => {
  const rule = withNumberedDays(recurrence.rule);
  const from = dayNumber(recurrence.from);
  const until = Math.min(last, ruleUntil(rule), recurrence.until ? dayNumber(recurrence.until) : last);
  const options = RRule.parseString(rule);
  if (until < Math.max(first, from) || neverHits(options, rule, from)) return [];
  const dtstart = utcDate(anchorNear(options, from, first));
  const dates = new RRule({ ...options, dtstart, until: utcDate(until) }, true).all();
  return dates.map(dayOfUtc).filter((day) => day >= first);
};

const KEPT_EXPANSIONS = 256;
const expansions = new Map<string, DayNumber[]>();

/**
 * Dates on which a repeating window opens, from `first` to `last`, both included, in order. Expanded as RFC 5545 (3.3.10)
 * says by the rrule library on dates in UTC, so that no zone plays a part; `from` anchors the rule and is itself a date
 * only if the rule matches it; `until` and the rule's UNTIL are included, by date. COUNT counts from `from`.
 * The rule has passed `ruleFault`. Equal questions are answered from memory.
 *
 * Example: `datesOf({ rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-01' }, 20819, 20832)` is [20820, 20827]: Saturdays
 * 2 and 9 January 2027.
 */
export const datesOf = (recurrence: Recurrence, first: DayNumber, last: DayNumber): readonly DayNumber[] => {
  const key = [recurrence.rule, recurrence.from, recurrence.until ?? '', first, last].join(' ');
  const known = expansions.get(key);
  if (known) return known;
  const dates = expand(recurrence, first, last);
  if (expansions.size >= KEPT_EXPANSIONS) expansions.clear();
  expansions.set(key, dates);
  return dates;
};
