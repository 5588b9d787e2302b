import { habitsOfYard, setHabits } from '../../../db/stores/habits-store.ts';
import { setUnits, unitsOfYard } from '../../../db/stores/units-store.ts';
import { fixedHours, updateYard } from '../../../db/stores/yard-store.ts';
import { yardHabits } from '../../../shared/habits.ts';
import { WEEKDAYS, type Weekday } from '../../../shared/time.ts';
import { UNIT_SYSTEMS } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import type { Edit } from '../plan/save-edit.ts';
import { keepFigures } from '../typed/figures.ts';
import { fitsYardFile, sayAt } from '../typed/fits-yard-file.ts';
import { TypedReader } from '../typed/typed-reader.ts';
import { MOST_FIXED_HOURS } from './fix-hours.ts';
import { showYardFrame } from './show-yard-frame.ts';

const LONGEST_HORIZON = 7300;
const OWNER = { kind: 'yard', id: 'yard' } as const;

/** Zones and currencies to choose from, as the runtime knows them. */
const namesOf = (of: 'timeZone' | 'currency'): string[] => Intl.supportedValuesOf(of);

const currencyTyped = (reader: TypedReader): string => {
  const text = reader.text('currency').toUpperCase();
  if (!namesOf('currency').includes(text))
    reader.refuse('currency', 'Which currency? Its three letters, as in EUR, GBP or USD.');
  return text;
};

/** As they were where they are the same days; none and all of them are any day. */
const handoverTyped = (reader: TypedReader, before: readonly Weekday[] | undefined): Weekday[] | null => {
  const days = reader.ticked('handoverDays', WEEKDAYS);
  if (before && before.length === days.length && days.every((day) => before.includes(day))) return [...before];
  return days.length === 0 || days.length === WEEKDAYS.length ? null : days;
};

const yardTyped = (typed: Readonly<Record<string, string>>, { yard: before }: YardFile) => {
  const reader = new TypedReader(typed);
  const name = reader.words('name', 'What is the yard called?');
  const facts = {
    name,
    timeZone: reader.text('timeZone'),
    handoverDays: handoverTyped(reader, before.handoverDays),
    sessionsInHand: reader.whole('sessionsInHand', 'How many sessions?', { most: 50 }),
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
  const currency = currencyTyped(reader);
  const weekStart = reader.choice('weekStart', WEEKDAYS, 'Choose a day.');
  return reader.outcome({ facts, fixed, system, habits: yardHabits.safeParse({ currency, weekStart }) });
};

const WORDS = {
  timeZone: sayAt('timeZone', 'Choose a time zone from the list, such as Europe/Dublin.'),
};

/** What the yard file says of it now and would say then. */
const fits = (yard: YardFile, facts: object): Outcome<YardFile> => {
  const present = Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== null));
  return fitsYardFile({ ...yard, yard: { now: yard.yard.now, ...present } }, 'yard', WORDS);
};

/** What holds for the yard as a whole: its name, its clock, how it writes things, its habits. */
export const editYard = (typed: Readonly<Record<string, string>>): Edit<null> => ({
  what: { kind: 'yard set', words: 'Yard changed' },
  work: async (tx, yard) => {
    const read = yardTyped(typed, yard);
    if (!read.ok) return read;
    const { facts, fixed, system, habits } = read.value;
    const then = fits(yard, facts);
    if (!then.ok) return then;
    if (!habits.success) return refuse('currency', 'Which currency? Its three letters, as in EUR, GBP or USD.');
    const before = {
      ...yard.yard,
      fixedHours: await fixedHours(tx),
      system: await unitsOfYard(tx),
      ...(await habitsOfYard(tx)),
    };
    const after = { ...then.value.yard, fixedHours: fixed, system, ...habits.data };
    await updateYard(tx, { ...facts, fixedHours: fixed });
    await setUnits(tx, system);
    await setHabits(tx, habits.data);
    const figures = Object.entries({ ...before, ...after }).map(([figure]) => ({
      ...{ figure, before: before[figure as keyof typeof before], after: after[figure as keyof typeof after] },
    }));
    await keepFigures(tx, OWNER, figures);
    return done(null);
  },
});

/** The yard as a whole, as the form shows it. */
export const showYardAbout = async (context: UseCaseContext) => {
  const { yard, yardName, today, system, habits, guesses } = await showYardFrame(context);
  return {
    ...{ yardName, today, system, ...habits, facts: yard.yard },
    fixedHours: await context.database.read(fixedHours),
    guesses: guesses.filter(({ kind }) => kind === 'yard').map(({ figure }) => figure),
    zones: namesOf('timeZone'),
    currencies: namesOf('currency'),
  };
};
export type YardAboutModel = Awaited<ReturnType<typeof showYardAbout>>;
