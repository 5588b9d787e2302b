import { type DayNumber, dateOfDay } from '../../../shared/time.ts';
import { datesOf } from '../calendar/recurrence.ts';

/** Days that repeat, by a rule of RFC 5545 anchored at a date. */
interface DayRule {
  rule: string;
  from: string;
}

/** When a supplier is there. Null: every day. */
export interface SupplierDays {
  /** Days on which it takes orders, and things can be fetched. */
  opens: DayRule | null;
  /** Days on which it brings things. */
  delivers: DayRule | null;
  /** Dates on which it does neither. */
  closed: readonly string[];
}

const ruled = (rule: DayRule | null, first: DayNumber, last: DayNumber): DayNumber[] =>
  rule === null ? Array.from({ length: last - first + 1 }, (_, i) => first + i) : [...datesOf(rule, first, last)];

/** Days in order, and which of them is the first from, or the last up to, a day. */
class DaysThere {
  private readonly days: readonly DayNumber[];

  constructor(rule: DayRule | null, closed: readonly string[], first: DayNumber, last: DayNumber) {
    const shut = new Set(closed);
    this.days = ruled(rule, first, last).filter((day) => !shut.has(dateOfDay(day)));
  }

  /** How many of the days are before a day. */
  private before(day: DayNumber): number {
    let [low, high] = [0, this.days.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.days[middle]! < day) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** The first one on or after a day; null where there is none as far as was looked. */
  from(day: DayNumber): DayNumber | null {
    return this.days[this.before(day)] ?? null;
  }

  /** The last one on or before a day; null where there is none since the first that was looked at. */
  upTo(day: DayNumber): DayNumber | null {
    return this.days[this.before(day + 1) - 1] ?? null;
  }
}

/** A supplier's days, looked up from one day to another. */
export interface DaysOfSupplier {
  open: DaysThere;
  /** Days on which things come: those on which it brings them, or it is open where they are fetched. */
  comes: DaysThere;
}

/**
 * The days of a supplier from `first` to `last`, both included.
 *
 * Example: open Monday to Saturday, closed on Monday 5 April 2027: the last open day up to that Monday is Saturday the 3rd, the first one from then on
 * Tuesday the 6th.
 */
export const daysOfSupplier = (
  { opens, delivers, closed }: SupplierDays,
  fetched: boolean,
  first: DayNumber,
  last: DayNumber,
): DaysOfSupplier => {
  const open = new DaysThere(opens, closed, first, last);
  return { open, comes: fetched ? open : new DaysThere(delivers ?? opens, closed, first, last) };
};
