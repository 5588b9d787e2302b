import type { Tx } from '../../../db/open.ts';
import { dropGuess, guessesOfYard, setTyped, typedOf } from '../../../db/stores/figure-store.ts';
import { addSteps, removeSteps, temperatureSteps, updateStep } from '../../../db/stores/temperature-store.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { climateOf } from '../../engine/cure/climate.ts';
import { done, refuse, today } from '../core/context.ts';
import { dayWords } from '../core/day-words.ts';
import type { Edit } from '../plan/save-edit.ts';
import { keepFigures } from '../typed/figures.ts';
import { TypedReader } from '../typed/typed-reader.ts';
import { datedLines, isOfMonths, type MonthFigures, monthsOf, stepsOfMonths } from './month-temperatures.ts';
import { celsiusShown, lineFigure, monthField, readCelsius, TEMPERATURE_OWNER } from './temperature-figures.ts';

type Typed = Readonly<Record<string, string>>;

const MONTHS = Array.from({ length: 12 }, (_, month) => month);

/** Twelve figures; all empty: none. What stands as the form showed it is the figure it was, to the last bit. */
const monthsTyped = (reader: TypedReader, before: MonthFigures, shown: readonly string[], system: UnitSystem) => {
  const empty = MONTHS.filter((month) => reader.text(monthField(month)) === '');
  if (empty.length === MONTHS.length) return null;
  for (const month of empty) reader.refuse(monthField(month), 'Fill in all twelve months, or none of them.');
  return MONTHS.map((month) => {
    const name = monthField(month);
    const stored = before[month];
    if (stored !== null && stored !== undefined && reader.text(name) === shown[month]) return stored;
    return empty.includes(month) ? 0 : readCelsius(reader, name, system);
  });
};

const GUESS = { ...TEMPERATURE_OWNER, figure: 'temperatures' };

/** A yard that has just begun goes by one guessed figure from its first day on: the months take its place. */
const onlyGuessed = async (tx: Tx, months: MonthFigures): Promise<boolean> => {
  if (months.some((figure) => figure !== null)) return false;
  return (await guessesOfYard(tx)).some(({ kind, figure }) => kind === GUESS.kind && figure === GUESS.figure);
};

/** What each month is like: twelve figures, or none at all. Dated lines stay as they are. */
export const editMonths = (typed: Typed): Edit<null> => ({
  what: { kind: 'temperatures set', words: 'Temperatures by month changed' },
  work: async (tx, yard) => {
    const [day, system, steps] = [
      today(yard.yard.timeZone, yard.yard.now),
      await unitsOfYard(tx),
      await temperatureSteps(tx),
    ];
    const before = monthsOf(steps, day);
    const kept = await typedOf(tx, TEMPERATURE_OWNER);
    const shown = before.map((celsius, month) => celsiusShown(celsius, kept[monthField(month)], system));
    const reader = new TypedReader(typed);
    const months = monthsTyped(reader, before, shown, system);
    if (reader.faults.length > 0) return { ok: false, faults: reader.faults };
    const replaced = steps.filter((step) => isOfMonths(step, before, day));
    const lines = steps.filter((step) => step.from >= `${day.slice(0, 8)}01` && !replaced.includes(step));
    const guessed = months !== null && (await onlyGuessed(tx, before));
    // Of two steps from one day on the later counts: lines that begin with a month come after it.
    const after = lines.filter(({ from }) => from.endsWith('-01'));
    await removeSteps(
      tx,
      [...replaced, ...(guessed ? lines : after)].map(({ id }) => id),
    );
    await addSteps(tx, [
      ...(months ? stepsOfMonths(months, day, yard.yard.horizonDays) : []),
      ...(guessed ? [] : after),
    ]);
    const figures = MONTHS.map((month) => {
      const figure = monthField(month);
      return { figure, before: before[month], after: months?.[month] ?? null, typed: typed[figure] ?? '' };
    });
    await keepFigures(tx, TEMPERATURE_OWNER, figures);
    if (months) await dropGuess(tx, GUESS);
    return done(null);
  },
});

const howOf = async (tx: Tx, yard: YardFile) => ({
  today: today(yard.yard.timeZone, yard.yard.now),
  system: await unitsOfYard(tx),
});

/** "6 degrees from Monday to Sunday": one step, and where nothing else begins the day after, one back to what it was. */
export const addLine = (typed: Typed): Edit<string> => ({
  what: { kind: 'temperature added', words: (from) => `Temperature from ${dayWords(from)} added` },
  work: async (tx, yard) => {
    const how = await howOf(tx, yard);
    const reader = new TypedReader(typed, how);
    const from = reader.date('from');
    const to = reader.dateOrNone('to');
    const celsius = readCelsius(reader, 'celsius', how.system);
    if (reader.faults.length === 0 && to !== null && to < from) reader.refuse('to', 'That is before the first day.');
    if (to !== null && yard.temperatures.length === 0)
      reader.refuse('to', 'Say first what the months are like: nothing is known of the days after that one.');
    if (datedLines(yard.temperatures, how.today).some((line) => line.from === from))
      reader.refuse('from', 'There is a temperature from that day on already. Change that one.');
    if (reader.faults.length > 0) return { ok: false, faults: reader.faults };
    const { celsiusOn } = climateOf(yard.temperatures, calendarOf(yard.yard.timeZone));
    const after = to === null ? null : dayNumber(to) + 1;
    const then = after === null ? null : celsiusOn(after);
    const within = yard.temperatures.filter((step) => to !== null && step.from > from && step.from <= to);
    if (within.length > 0 && to !== null && within.some(({ from: date }) => !date.endsWith('-01')))
      return refuse('to', `From ${dayWords(within[0]!.from)} on another temperature is given already.`);
    const back = after !== null && then !== null && !yard.temperatures.some((step) => step.from === dateOfDay(after));
    const inside = within.map((step) => ({ ...step, celsius }));
    await addSteps(tx, [{ from, celsius }, ...inside, ...(back ? [{ from: dateOfDay(after), celsius: then }] : [])]);
    await setTyped(tx, { ...TEMPERATURE_OWNER, figure: lineFigure(from) }, typed.celsius ?? null);
    return done(from);
  },
});

export const editLine = (id: number, typed: Typed): Edit<string> => ({
  what: { kind: 'temperature set', words: (from) => `Temperature from ${dayWords(from)} changed` },
  work: async (tx, yard) => {
    const how = await howOf(tx, yard);
    const steps = await temperatureSteps(tx);
    const step = steps.find((one) => one.id === id);
    if (!step) return refuse('celsius', 'This temperature is not there any more.');
    const reader = new TypedReader(typed, how);
    const from = reader.date('from');
    const kept = (await typedOf(tx, TEMPERATURE_OWNER))[lineFigure(step.from)];
    const asShown = reader.text('celsius') === celsiusShown(step.celsius, kept, how.system);
    const celsius = asShown ? step.celsius : readCelsius(reader, 'celsius', how.system);
    if (datedLines(steps, how.today).some((one) => one.id !== id && one.from === from))
      reader.refuse('from', 'There is a temperature from that day on already.');
    if (reader.faults.length > 0) return { ok: false, faults: reader.faults };
    await updateStep(tx, id, { from, celsius });
    await setTyped(tx, { ...TEMPERATURE_OWNER, figure: lineFigure(step.from) }, null);
    await setTyped(tx, { ...TEMPERATURE_OWNER, figure: lineFigure(from) }, typed.celsius ?? null);
    return done(from);
  },
});

export const removeLine = (id: number): Edit<string> => ({
  what: { kind: 'temperature removed', words: (from) => `Temperature from ${dayWords(from)} removed` },
  work: async (tx) => {
    const step = (await temperatureSteps(tx)).find((one) => one.id === id);
    if (!step) return refuse('line', 'This temperature is not there any more.');
    await removeSteps(tx, [id]);
    await setTyped(tx, { ...TEMPERATURE_OWNER, figure: lineFigure(step.from) }, null);
    return done(step.from);
  },
});
