import { ENGLISHES, type English, englishOf } from '../../../shared/english.ts';
import { FLOAT_DAYS, yardHabits } from '../../../shared/habits.ts';
import { ODDS_SAID, type PromiseOdds, USUAL_ODDS } from '../../../shared/promise-odds.ts';
import { SPARE_RULES, type SpareRule } from '../../../shared/spares.ts';
import { WEEKDAYS, type Weekday } from '../../../shared/time.ts';
import { UNIT_SYSTEMS, type UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { FormFields } from './form-fields.ts';
import { TypedReader } from './typed-reader.ts';

/** Nobody sets up for a session longer ahead than this. */
export const MOST_FIXED_HOURS = 336;
const LONGEST_HORIZON = 7300;

/** Zones and currencies to choose from, as the runtime knows them. */
export const namesOf = (of: 'timeZone' | 'currency'): string[] => Intl.supportedValuesOf(of);

const currencyTyped = (reader: TypedReader): string => {
  const text = reader.text('currency').toUpperCase();
  if (!namesOf('currency').includes(text))
    reader.refuse('currency', 'Which currency? Its three letters, as in EUR, GBP or USD.');
  return text;
};

/** The English that was chosen; a form that does not ask for it goes by the units. */
export const englishTyped = (reader: TypedReader, system: UnitSystem): English =>
  reader.text('english') === '' ? englishOf(system) : reader.choice('english', ENGLISHES, 'Choose one of the two.');

/** As they were where they are the same days; none and all of them are any day. */
const handoverTyped = (reader: TypedReader, before: readonly Weekday[] | undefined): Weekday[] | null => {
  const days = reader.ticked('handoverDays', WEEKDAYS);
  if (before && before.length === days.length && days.every((day) => before.includes(day))) return [...before];
  return days.length === 0 || days.length === WEEKDAYS.length ? null : days;
};

/** As it was in a form that does not ask for it; the usual odds are what holds where nothing is said. */
const promiseOddsTyped = (reader: TypedReader, before: PromiseOdds | undefined): PromiseOdds | null => {
  if (reader.text('promiseOdds') === '') return before ?? null;
  const chosen = reader.choice(
    'promiseOdds',
    ODDS_SAID.map(({ share }) => String(share)),
    'Choose one of them.',
  );
  const { share } = ODDS_SAID.find((one) => String(one.share) === chosen)!;
  return share === (before ?? USUAL_ODDS) ? (before ?? null) : share;
};

/** Null in a form that does not ask for it. */
const sparesTyped = (reader: TypedReader): SpareRule | null =>
  reader.text('spares') === '' ? null : reader.choice('spares', SPARE_RULES, 'Choose one of them.');

/** The form of the yard as a whole; `before` is how the yard stands. */
export const yardTyped = (fields: FormFields, { yard: before }: YardFile) => {
  const reader = new TypedReader(fields);
  const name = reader.words('name', 'What is the yard called?');
  const facts = {
    name,
    timeZone: reader.text('timeZone'),
    handoverDays: handoverTyped(reader, before.handoverDays),
    sessionsInHand: reader.whole('sessionsInHand', 'How many sessions?', { most: 50 }),
    promiseOdds: promiseOddsTyped(reader, before.promiseOdds),
    deliveryDaysInHand: reader.whole('deliveryDaysInHand', 'How many days?', { most: 90 }),
    deliveredBy: reader.clock('deliveredBy'),
    mixers: reader.whole('mixers', 'How many mixers?', { most: 50 }),
    rackSpaces: reader.wholeOrNone('rackSpaces', 'How many places? Leave it empty when there is no limit.'),
    setUpMinutes: reader.whole('setUpMinutes', 'How many minutes?', { most: 720 }),
    clearUpMinutes: reader.whole('clearUpMinutes', 'How many minutes?', { most: 720 }),
    horizonDays: reader.whole('horizonDays', 'How many days?', { least: 1, most: LONGEST_HORIZON }),
    batchWorthDays: reader.amount('batchWorthDays', 'How many days?'),
    bagWorthDays: reader.amount('bagWorthDays', 'How many days?'),
  };
  const fixed = reader.whole('fixedHours', 'How many hours?', { most: MOST_FIXED_HOURS });
  const system = reader.choice('system', UNIT_SYSTEMS, 'Choose one of the two.');
  const english = englishTyped(reader, system);
  const currency = currencyTyped(reader);
  const weekStart = reader.choice('weekStart', WEEKDAYS, 'Choose a day.');
  const floatDays = reader.wholeOrNone('floatDays', 'How many days?', { most: 30 }) ?? FLOAT_DAYS;
  const spares = sparesTyped(reader);
  return reader.outcome({
    ...{ facts, fixed, spares },
    system,
    english,
    habits: yardHabits.safeParse({ currency, weekStart, floatDays }),
  });
};
