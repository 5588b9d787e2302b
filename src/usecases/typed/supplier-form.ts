import { AHEAD_DAYS, type Supplier, type SupplierFacts } from '../../../shared/supplier.ts';
import { WEEKDAYS } from '../../../shared/time.ts';
import { ruleFault } from '../../../shared/work.ts';
import { rhythmOfRule, ruleOfRhythm } from '../../engine/calendar/plain-rule.ts';
import { minorDigits } from '../../engine/cost/minor-units.ts';
import { massText, readMass } from '../../engine/units/mass.ts';
import type { Outcome } from '../core/context.ts';
import { closedDaysText, closedDaysTyped } from './closed-days-typed.ts';
import type { DateReading } from './date-typed.ts';
import type { FormFields } from './form-fields.ts';
import { ruleRefused } from './hours-form.ts';
import { moneyTyped } from './money-typed.ts';
import { TypedReader } from './typed-reader.ts';

const LONGEST_WAIT_DAYS = 3650;
const MOST_AHEAD_DAYS = 365;

/** How the form of a supplier is read and written. */
export interface SupplierWriting extends DateReading {
  currency: string;
}

type DayRule = NonNullable<SupplierFacts['opens']>;

/** The days of the week that a rule comes to; null where it says more than that. */
export const plainDays = (rule: DayRule | undefined): readonly string[] | null => {
  if (!rule) return WEEKDAYS;
  const rhythm = rhythmOfRule(rule);
  return rhythm?.everyWeeks === 1 ? rhythm.days : null;
};

/** What the fields of a supplier's form show; days of the week stand in boxes of their own. */
export const supplierTexts = (supplier: Supplier, { currency, system }: SupplierWriting): Record<string, string> => {
  const money = (amount: number) => (amount === 0 ? '' : amount.toFixed(minorDigits(currency)));
  const ruleText = (rule: DayRule | undefined) => (plainDays(rule) === null ? (rule?.rule ?? '') : '');
  return {
    name: supplier.name,
    fetched: supplier.fetched === undefined ? 'unsaid' : supplier.fetched ? 'fetched' : 'brought',
    leadDays: String(supplier.leadDays ?? ''),
    opensRule: ruleText(supplier.opens),
    deliversRule: ruleText(supplier.delivers),
    closed: closedDaysText(supplier.closed),
    minimumOrder: money(supplier.minimumOrder),
    deliveryPrice: money(supplier.deliveryPrice),
    carriesKg: supplier.carriesKg === undefined ? '' : massText(supplier.carriesKg, system),
    aheadDays: String(supplier.aheadDays),
  };
};

/** A rule that was typed, else the days ticked; all of them, or none, are every day. It stays anchored where it was. */
const daysTyped = (reader: TypedReader, name: 'opens' | 'delivers', before: DayRule | undefined, today: string) => {
  const typed = reader.text(`${name}Rule`).toUpperCase().replace(/\s+/g, '');
  const fault = typed === '' ? null : ruleFault(typed);
  if (fault !== null) reader.refuse(`${name}Rule`, ruleRefused(fault));
  const days = reader.ticked(name, WEEKDAYS);
  const isEveryDay = days.length === 0 || days.length === WEEKDAYS.length;
  if (typed === '' && isEveryDay) return {};
  const rule = typed === '' ? ruleOfRhythm({ days, everyWeeks: 1 }) : typed;
  return { [name]: { rule, from: before?.rule === rule ? before.from : today } };
};

const moneyOf = (reader: TypedReader, name: 'minimumOrder' | 'deliveryPrice', currency: string): number => {
  const money = moneyTyped(reader.text(name), currency);
  if (!money.ok) reader.refuse(name, money.reason);
  return money.ok ? (money.value ?? 0) : 0;
};

const carriedTyped = (reader: TypedReader, before: Supplier | null, { system }: SupplierWriting) => {
  const text = reader.text('carriesKg');
  if (text === '') return {};
  if (before?.carriesKg !== undefined && massText(before.carriesKg, system) === text)
    return { carriesKg: before.carriesKg };
  const kg = reader.measure('carriesKg', (typed) => readMass(typed, system));
  if (kg <= 0 && reader.faults.length === 0)
    reader.refuse('carriesKg', 'How much? Leave it empty where it is no limit.');
  return { carriesKg: kg };
};

/** A supplier as it was typed; `before` is what was known of it. */
export const supplierTyped = (
  typed: FormFields,
  before: Supplier | null,
  writing: SupplierWriting,
): Outcome<Supplier> => {
  const reader = new TypedReader(typed, writing);
  const closed = closedDaysTyped(reader.text('closed'), writing, before?.closed ?? []);
  if (!closed.ok) reader.refuse('closed', closed.reason);
  const fetched = reader.choice('fetched', ['unsaid', 'fetched', 'brought'], 'Choose one of them.');
  const leadDays = reader.wholeOrNone('leadDays', 'How many days?', { most: LONGEST_WAIT_DAYS });
  const name = reader.words('name', 'What is it called?');
  // Its page would be the one that adds another.
  if (name === 'new') reader.refuse('name', 'Write more of its name.');
  return reader.outcome({
    name,
    ...(leadDays === null ? {} : { leadDays }),
    ...daysTyped(reader, 'opens', before?.opens, writing.today),
    ...daysTyped(reader, 'delivers', before?.delivers, writing.today),
    closed: closed.ok ? closed.value : [],
    ...(fetched === 'unsaid' ? {} : { fetched: fetched === 'fetched' }),
    minimumOrder: moneyOf(reader, 'minimumOrder', writing.currency),
    deliveryPrice: moneyOf(reader, 'deliveryPrice', writing.currency),
    ...carriedTyped(reader, before, writing),
    aheadDays: reader.wholeOrNone('aheadDays', 'How many days?', { most: MOST_AHEAD_DAYS }) ?? AHEAD_DAYS,
  });
};
