import type { Fault } from '../../../shared/fault.ts';
import type { Reading } from '../../engine/units/reading.ts';
import type { Outcome } from '../core/context.ts';
import { clockTyped } from './clock-typed.ts';
import { type DateReading, readDate } from './date-typed.ts';

interface WholeRange {
  least?: number;
  most?: number;
}

const rangeText = ({ least = 0, most }: WholeRange): string =>
  most === undefined ? (least === 0 ? '' : `, at least ${least}`) : `, ${least} to ${most}`;

/** Reads what was typed field by field, and collects what could not be read, so that all of it is said at once. */
export class TypedReader {
  readonly faults: Fault[] = [];
  /** By field: the same day to come, where the one typed has just gone by and names no year. */
  readonly next: Record<string, string> = {};
  readonly #typed: Readonly<Record<string, string>>;
  readonly #days: DateReading;
  /** `days` is what a day without a year is read by; a form without days needs none. */
  constructor(typed: Readonly<Record<string, string>>, days: DateReading = { today: '1970-01-01', system: 'metric' }) {
    this.#typed = typed;
    this.#days = days;
  }

  refuse(path: string, message: string): void {
    this.faults.push({ path, message });
  }

  text(name: string): string {
    return this.#typed[name] ?? '';
  }

  /** What was typed, which must be something; `message` says what is wanted. How long it may be is asked of all forms alike (text-limits.ts). */
  words(name: string, message: string): string {
    const text = this.text(name);
    if (text === '') this.refuse(name, message);
    return text;
  }

  /** A whole number; 0 beside a fault where it is none. `ask` says what it counts: "How many mixers?" */
  whole(name: string, ask: string, range: WholeRange = {}): number {
    const text = this.text(name);
    const number = /^\d{1,9}$/.test(text) ? Number(text) : Number.NaN;
    if (number >= (range.least ?? 0) && number <= (range.most ?? Number.MAX_SAFE_INTEGER)) return number;
    this.refuse(name, `${ask} Write a whole number${rangeText(range)}.`);
    return 0;
  }

  /** The same, or null where nothing was typed. */
  wholeOrNone(name: string, ask: string, range: WholeRange = {}): number | null {
    return this.text(name) === '' ? null : this.whole(name, ask, range);
  }

  /** "2", "2.5" or "2,5"; never negative. */
  amount(name: string, ask: string): number {
    const text = this.text(name);
    if (/^\d{1,9}([.,]\d{1,20})?$/.test(text)) return Number(text.replace(',', '.'));
    this.refuse(name, `${ask} Write a number.`);
    return 0;
  }

  /** A measure, with whatever unit the reader of it takes. */
  measure(name: string, read: (text: string) => Reading<number>): number {
    const reading = read(this.text(name));
    if (!reading.ok) this.refuse(name, reading.reason);
    return reading.ok ? reading.value : 0;
  }

  /** A day in any of the usual ways, as "YYYY-MM-DD". */
  date(name: string): string {
    const read = readDate(this.text(name), this.#days);
    if (read.ok && read.next) this.next[name] = read.next;
    if (read.ok) return read.date;
    this.refuse(name, this.text(name) === '' ? 'Which day? Write it like 8 May or 2027-05-08.' : read.reason);
    return this.#days.today;
  }

  dateOrNone(name: string): string | null {
    return this.text(name) === '' ? null : this.date(name);
  }

  /** A time of day as "HH:MM": "8:30" is "08:30". */
  clock(name: string): string {
    const clock = clockTyped(this.text(name));
    if (clock === null) this.refuse(name, 'Which time? Write it as 8:30.');
    return clock ?? '00:00';
  }

  /** One of a few answers. */
  choice<T extends string>(name: string, answers: readonly T[], message = 'Choose one of them.'): T {
    const answer = answers.find((one) => one === this.text(name));
    if (answer === undefined) this.refuse(name, message);
    return answer ?? answers[0]!;
  }

  /** Those ticked of several boxes, each a field `name:value`. */
  ticked<T extends string>(name: string, values: readonly T[]): T[] {
    return values.filter((value) => this.#typed[`${name}:${value}`] !== undefined);
  }

  /** The value, if all of it could be read. */
  outcome<T>(value: T): Outcome<T> {
    return this.faults.length === 0 ? { ok: true, value } : { ok: false, faults: this.faults };
  }
}
