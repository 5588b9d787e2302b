import { clockMinutes, dateOfDay, dayNumber, WEEKDAYS } from '../../../shared/time.ts';
import { type ExtraWindow, TASK_KINDS, type TaskKind, type WorkWindow } from '../../../shared/work.ts';
import { rhythmOfRule, ruleOfRhythm } from '../../engine/calendar/plain-rule.ts';
import type { Outcome } from '../core/context.ts';
import type { DateReading } from './date-typed.ts';
import type { FormFields } from './form-fields.ts';
import { TypedReader } from './typed-reader.ts';

type Hours = Omit<ExtraWindow, 'date'>;

/** What may be done in hours: everything, only what needs no mixer, or what a yard file said that is neither. */
const MAY = ['all', 'strip', 'kept'] as const;
export type May = (typeof MAY)[number];

const STRIP_AND_PACK: TaskKind[] = ['strip', 'pack'];
const sameKinds = (a: readonly TaskKind[], b: readonly TaskKind[]) =>
  a.length === b.length && b.every((kind) => a.includes(kind));

export const mayOf = (allows: readonly TaskKind[]): May =>
  sameKinds(allows, TASK_KINDS) ? 'all' : sameKinds(allows, STRIP_AND_PACK) ? 'strip' : 'kept';

const MOST_PEOPLE = 50;

/** Midnight, as a clock shows it, ends a day that has begun. */
const endTyped = (reader: TypedReader): string => {
  const end = reader.clock('end');
  return end === '00:00' ? '24:00' : end;
};

const hoursTyped = (reader: TypedReader, before: readonly TaskKind[] | undefined): Hours => {
  const [start, end] = [reader.clock('start'), endTyped(reader)];
  if (reader.faults.every(({ path }) => path !== 'start' && path !== 'end') && clockMinutes(end) <= clockMinutes(start))
    reader.refuse('end', 'That is not after the start. Hours past midnight are hours of the next day.');
  const crew = reader.whole('crew', 'How many people?', { least: 1, most: MOST_PEOPLE });
  const may = reader.choice('may', before ? MAY : (['all', 'strip'] as const), 'Choose what may be done.');
  const allows = may === 'all' ? [...TASK_KINDS] : may === 'strip' ? STRIP_AND_PACK : [...(before ?? TASK_KINDS)];
  return { start, end, crew, allows };
};

const ruleTyped = (reader: TypedReader): string => {
  const rule = reader.text('rule').toUpperCase().replace(/\s+/g, '');
  if (rule !== '') return rule;
  const days = reader.ticked('days', WEEKDAYS);
  if (days.length === 0) reader.refuse('days', 'Tick at least one day.');
  const everyWeeks = reader.choice('everyWeeks', ['1', '2'], 'Choose one of the two.') === '2' ? 2 : 1;
  return ruleOfRhythm({ days: days.length > 0 ? days : ['MO'], everyWeeks });
};

/** A rule that came written otherwise stays as it is while its days do. */
const saysTheSame = (rule: string, before: WorkWindow): boolean => {
  const rhythm = rhythmOfRule(before);
  return rhythm !== null && ruleOfRhythm(rhythm) === rule;
};

/** Hours that repeat: by the days ticked, or by a rule where one was typed. */
export const workTyped = (typed: FormFields, how: DateReading, before?: WorkWindow): Outcome<WorkWindow> => {
  const reader = new TypedReader(typed, how);
  const typedRule = ruleTyped(reader);
  const [from, until] = [reader.date('from'), reader.dateOrNone('until')];
  if (reader.faults.length === 0 && until !== null && until < from)
    reader.refuse('until', 'That is before the first day.');
  const hours = hoursTyped(reader, before?.allows);
  const rule = before && from === before.from && saysTheSame(typedRule, before) ? before.rule : typedRule;
  return reader.outcome({ rule, from, ...(until === null ? {} : { until }), ...hours });
};

/** Hours of one day, and whether they take the place of the usual ones. */
export const extraTyped = (
  typed: FormFields,
  how: DateReading,
  before?: ExtraWindow,
): Outcome<{ window: ExtraWindow; instead: boolean }> => {
  const reader = new TypedReader(typed, how);
  const date = reader.date('date');
  if (date < how.today) reader.refuse('date', 'That day has passed.');
  const window = { date, ...hoursTyped(reader, before?.allows) };
  return reader.outcome({ window, instead: reader.text('instead') !== '' });
};

const LONGEST_DAYS_OFF = 366;

/** Both included, and no more than one too many. */
const daysBetween = (from: string, to: string): string[] => {
  const count = Math.min(Math.max(0, dayNumber(to) - dayNumber(from) + 1), LONGEST_DAYS_OFF + 1);
  return Array.from({ length: count }, (_, n) => dateOfDay(dayNumber(from) + n));
};

/** A day off, or all days from one to another, both included. */
export const daysOffTyped = (typed: FormFields, how: DateReading): Outcome<string[]> => {
  const reader = new TypedReader(typed, how);
  const from = reader.date('from');
  const to = reader.dateOrNone('to') ?? from;
  if (reader.faults.length === 0 && to < from) reader.refuse('to', 'That is before the first day off.');
  if (reader.faults.length === 0 && to < how.today) reader.refuse(typed.to ? 'to' : 'from', 'That has passed.');
  const days = daysBetween(from, to);
  if (days.length > LONGEST_DAYS_OFF) reader.refuse('to', 'That is more than a year. Take the hours away instead.');
  return reader.outcome(days);
};

/** What is wrong with a rule, as `ruleFault` finds it, said at the field. */
export const ruleRefused = (fault: string): string =>
  /^[a-z]/.test(fault) ? `This rule ${fault}.` : `This rule does not do: ${fault}.`;
