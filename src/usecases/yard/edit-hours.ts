import type { Tx } from '../../../db/open.ts';
import { englishOfYard, unitsOfYard } from '../../../db/stores/units-store.ts';
import {
  addExtra,
  addWork,
  closeDays,
  closedDays,
  extraWindows,
  removeExtra,
  removeWork,
  reopenDay,
  updateExtra,
  updateWork,
  workWindows,
} from '../../../db/stores/work-store.ts';
import { dayWords } from '../../../shared/day-words.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { done, type Outcome, refuse, today } from '../core/context.ts';
import type { Edit } from '../plan/save-edit.ts';
import type { DateReading } from '../typed/date-typed.ts';
import { type FieldWords, fitsYardFile } from '../typed/fits-yard-file.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { daysOffTyped, extraTyped, ruleRefused, workTyped } from '../typed/hours-form.ts';

const howOf = async (tx: Tx, yard: YardFile): Promise<DateReading> => ({
  today: today(yard.yard.timeZone, yard.yard.now),
  system: await unitsOfYard(tx),
  english: await englishOfYard(tx),
});

const WORDS: FieldWords = { rule: (fault) => ({ path: 'rule', message: ruleRefused(fault) }) };

const fits = (yard: YardFile, list: 'work' | 'extra', place: number, window: object): Outcome<YardFile> => {
  const entries: object[] = [...yard[list]];
  entries[place] = window;
  return fitsYardFile({ ...yard, [list]: entries }, `${list}[${place}]`, WORDS);
};

const GONE = 'These hours are not there any more.';

/** Hours that repeat, added. */
export const addHours = (typed: FormFields): Edit<null> => ({
  what: { kind: 'hours added', words: 'Hours added' },
  work: async (tx, yard) => {
    const read = workTyped(typed, await howOf(tx, yard));
    if (!read.ok) return read;
    const then = fits(yard, 'work', yard.work.length, read.value);
    if (!then.ok) return then;
    await addWork(tx, read.value);
    return done(null);
  },
});

export const editHours = (id: number, typed: FormFields): Edit<null> => ({
  what: { kind: 'hours set', words: 'Hours changed' },
  work: async (tx, yard) => {
    const place = (await workWindows(tx)).findIndex((one) => one.id === id);
    const before = yard.work[place];
    if (!before) return refuse('days', GONE);
    const read = workTyped(typed, await howOf(tx, yard), before);
    if (!read.ok) return read;
    const then = fits(yard, 'work', place, read.value);
    if (!then.ok) return then;
    await updateWork(tx, id, { ...read.value, until: read.value.until ?? null });
    return done(null);
  },
});

export const removeHours = (id: number): Edit<null> => ({
  what: { kind: 'hours removed', words: 'Hours removed' },
  work: async (tx) => {
    if (!(await workWindows(tx)).some((one) => one.id === id)) return refuse('hours', GONE);
    await removeWork(tx, id);
    return done(null);
  },
});

/** Hours of a single day, beside its usual ones or in their place. */
export const addDay = (typed: FormFields): Edit<string> => ({
  what: { kind: 'day of work added', words: (date) => `Hours on ${dayWords(date)} added` },
  work: async (tx, yard) => {
    const read = extraTyped(typed, await howOf(tx, yard));
    if (!read.ok) return read;
    const { window, instead } = read.value;
    const then = fits(yard, 'extra', yard.extra.length, window);
    if (!then.ok) return then;
    await addExtra(tx, window);
    if (instead) await closeDays(tx, [window.date]);
    return done(window.date);
  },
});

export const editDay = (id: number, typed: FormFields): Edit<string> => ({
  what: { kind: 'day of work set', words: (date) => `Hours on ${dayWords(date)} changed` },
  work: async (tx, yard) => {
    const place = (await extraWindows(tx)).findIndex((one) => one.id === id);
    const before = yard.extra[place];
    if (!before) return refuse('date', GONE);
    const read = extraTyped(typed, await howOf(tx, yard), before);
    if (!read.ok) return read;
    const { window, instead } = read.value;
    const then = fits(yard, 'extra', place, window);
    if (!then.ok) return then;
    await updateExtra(tx, id, window);
    await (instead ? closeDays(tx, [window.date]) : reopenDay(tx, window.date));
    if (window.date !== before.date) await usualAgain(tx, before.date);
    return done(window.date);
  },
});

/** A day whose hours took the place of the usual ones has its usual ones again when the last of them is gone. */
const usualAgain = async (tx: Tx, date: string): Promise<void> => {
  const left = (await extraWindows(tx)).some((one) => one.date === date);
  if (!left) await reopenDay(tx, date);
};

export const removeDay = (id: number): Edit<string> => ({
  what: { kind: 'day of work removed', words: (date) => `Hours on ${dayWords(date)} removed` },
  work: async (tx) => {
    const day = (await extraWindows(tx)).find((one) => one.id === id);
    if (!day) return refuse('hours', GONE);
    await removeExtra(tx, id);
    await usualAgain(tx, day.date);
    return done(day.date);
  },
});

const daysOffWords = (days: readonly string[]): string =>
  days.length === 1 ? `${dayWords(days[0]!)} off` : `${dayWords(days[0]!)} to ${dayWords(days.at(-1)!)} off`;

/** Days on which none of the usual hours are worked. */
export const addDaysOff = (typed: FormFields): Edit<string[]> => ({
  what: { kind: 'days off added', words: daysOffWords },
  work: async (tx, yard) => {
    const read = daysOffTyped(typed, await howOf(tx, yard));
    if (!read.ok) return read;
    const extra = read.value.find((date) => yard.extra.some((one) => one.date === date));
    if (extra) return refuse('from', `There are hours of its own on ${dayWords(extra)}. Remove those first.`);
    await closeDays(tx, read.value);
    return done(read.value);
  },
});

/** Days of holiday, worked as usual after all: from one date to another, both included. */
export const removeDaysOff = (from: string, to: string): Edit<null> => ({
  what: { kind: 'days off removed', words: `Work as usual from ${dayWords(from)} to ${dayWords(to)}` },
  work: async (tx) => {
    const days = (await closedDays(tx)).filter(({ date }) => date >= from && date <= to);
    if (days.length === 0) return refuse('hours', 'These days are worked as usual already.');
    for (const { date } of days) await reopenDay(tx, date);
    return done(null);
  },
});
