import type { Tx } from '../../../db/open.ts';
import { dropGuess, guessesOfYard, setTyped, typedOf } from '../../../db/stores/figure-store.ts';
import { addSteps, removeSteps, temperatureSteps, updateStep } from '../../../db/stores/temperature-store.ts';
import { englishOfYard, unitsOfYard } from '../../../db/stores/units-store.ts';
import { dayWords } from '../../../shared/day-words.ts';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { climateOf } from '../../engine/cure/climate.ts';
import {
  datedLines,
  isOfMonths,
  type MonthFigures,
  monthsOf,
  stepsOfMonths,
} from '../../engine/cure/month-temperatures.ts';
import { done, refuse, today } from '../core/context.ts';
import type { Edit } from '../plan/save-edit.ts';
import { keepFigures } from '../typed/figures.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { celsiusShown, lineFigure, monthField, TEMPERATURE_OWNER } from '../typed/temperature-figures.ts';
import { lineEdited, lineTyped, monthsShown, monthsTyped } from '../typed/temperature-form.ts';

const GUESS = { ...TEMPERATURE_OWNER, figure: 'temperatures' };

/** A yard that has just begun goes by one guessed figure from its first day on: the months take its place. */
const onlyGuessed = async (tx: Tx, months: MonthFigures): Promise<boolean> => {
  if (months.some((figure) => figure !== null)) return false;
  return (await guessesOfYard(tx)).some(({ kind, figure }) => kind === GUESS.kind && figure === GUESS.figure);
};

/** What each month is like: twelve figures, or none at all. Dated lines stay as they are. */
export const editMonths = (typed: FormFields): Edit<null> => ({
  what: { kind: 'temperatures set', words: 'Temperatures by month changed' },
  work: async (tx, yard) => {
    const [day, system, steps] = [
      today(yard.yard.timeZone, yard.yard.now),
      await unitsOfYard(tx),
      await temperatureSteps(tx),
    ];
    const before = monthsOf(steps, day);
    const kept = await typedOf(tx, TEMPERATURE_OWNER);
    const read = monthsTyped(typed, before, monthsShown(before, kept, system), system);
    if (!read.ok) return read;
    const months = read.value;
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
    const figures = before.map((celsius, month) => {
      const figure = monthField(month);
      return { figure, before: celsius, after: months?.[month] ?? null, typed: typed[figure] ?? '' };
    });
    await keepFigures(tx, TEMPERATURE_OWNER, figures);
    if (months) await dropGuess(tx, GUESS);
    return done(null);
  },
});

const howOf = async (tx: Tx, yard: YardFile) => ({
  today: today(yard.yard.timeZone, yard.yard.now),
  system: await unitsOfYard(tx),
  english: await englishOfYard(tx),
});

/** "6 degrees from Monday to Sunday": one step, and where nothing else begins the day after, one back to what it was. */
export const addLine = (typed: FormFields): Edit<string> => ({
  what: { kind: 'temperature added', words: (from) => `Temperature from ${dayWords(from)} added` },
  work: async (tx, yard) => {
    const how = await howOf(tx, yard);
    const taken = datedLines(yard.temperatures, how.today).map((line) => line.from);
    const read = lineTyped(typed, how, { taken, known: yard.temperatures.length > 0 });
    if (!read.ok) return read;
    const { from, to, celsius } = read.value;
    const { celsiusOn } = climateOf(yard, calendarOf(yard.yard.timeZone));
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

export const editLine = (id: number, typed: FormFields): Edit<string> => ({
  what: { kind: 'temperature set', words: (from) => `Temperature from ${dayWords(from)} changed` },
  work: async (tx, yard) => {
    const how = await howOf(tx, yard);
    const steps = await temperatureSteps(tx);
    const step = steps.find((one) => one.id === id);
    if (!step) return refuse('celsius', 'This temperature is not there any more.');
    const kept = (await typedOf(tx, TEMPERATURE_OWNER))[lineFigure(step.from)];
    const shown = celsiusShown(step.celsius, kept, how.system);
    const taken = datedLines(steps, how.today).flatMap((one) => (one.id === id ? [] : one.from));
    const read = lineEdited(typed, how, { taken, before: step.celsius, shown });
    if (!read.ok) return read;
    const { from, celsius } = read.value;
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
