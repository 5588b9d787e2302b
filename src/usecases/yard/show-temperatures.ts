import { typedOf } from '../../../db/stores/figure-store.ts';
import { temperatureSteps } from '../../../db/stores/temperature-store.ts';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { monthsBetween, seasonsGuess } from '../../engine/begin/seasons.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { climateOf } from '../../engine/cure/climate.ts';
import { datedLines, isOfMonths, monthsOf } from '../../engine/cure/month-temperatures.ts';
import { temperatureSaid, temperatureText } from '../../engine/units/temperature.ts';
import { done, type Outcome, type UseCaseContext } from '../core/context.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { celsiusShown, lineFigure, monthField, TEMPERATURE_OWNER } from '../typed/temperature-figures.ts';
import { seasonsTyped } from '../typed/temperature-form.ts';
import { showYardFrame, type YardPageHead } from './show-yard-frame.ts';

/** A month in its field. */
interface MonthShown {
  /** In °C, for the drawing; null where nothing is said of it. */
  celsius: number | null;
  shown: string;
  guess: boolean;
}

/** What is said of single days or weeks: in its field, and in words. */
export interface TemperatureLine {
  id: number;
  from: string;
  /** The last day it holds; null: it holds on. */
  to: string | null;
  shown: string;
  text: string;
}

export interface TemperaturesModel extends YardPageHead {
  /** Six days from today: offered as the end of a line. */
  inAWeek: string;
  /** Of today, in words; null where nothing is expected. */
  now: string | null;
  /** January first. */
  months: readonly MonthShown[];
  lines: readonly TemperatureLine[];
  /** A guess at the coldest and the warmest month of where the yard lies. */
  seasons: { coldest: string; warmest: string };
  /** The last day of the months, where that is before the last day planned. */
  endsBefore: string | null;
}

const seasonsShown = (timeZone: string, system: UnitSystem): TemperaturesModel['seasons'] => {
  const { coldest, warmest } = seasonsGuess(timeZone);
  return { coldest: temperatureText(coldest, system), warmest: temperatureText(warmest, system) };
};

/** The fields of the twelve months as they follow from the coldest and the warmest one; what was wrong with these. */
export const monthsFilledIn = async (
  context: UseCaseContext,
  typed: FormFields,
): Promise<Outcome<Record<string, string>>> => {
  const { yard, system } = await showYardFrame(context);
  const read = seasonsTyped(typed, system);
  if (!read.ok) return read;
  const months = monthsBetween(read.value, yard.yard.timeZone);
  return done(
    Object.fromEntries(months.map((celsius, month) => [monthField(month), temperatureText(celsius, system)])),
  );
};

/** What is expected today, what each month is like, and what is said of single weeks. */
export const showTemperatures = async (context: UseCaseContext): Promise<TemperaturesModel> => {
  const { yard, yardName, today: day, system, guesses } = await showYardFrame(context);
  const [steps, typed] = await context.database.read(
    async (tx) => [await temperatureSteps(tx), await typedOf(tx, TEMPERATURE_OWNER)] as const,
  );
  const celsius = climateOf(yard, calendarOf(yard.yard.timeZone)).celsiusOn(dayNumber(day));
  const months = monthsOf(steps, day);
  return {
    ...{ yardName, today: day, system, inAWeek: dateOfDay(dayNumber(day) + 6) },
    now: celsius === null ? null : temperatureSaid(celsius, system),
    months: months.map((figure, month) => ({
      celsius: figure,
      shown: celsiusShown(figure, typed[monthField(month)], system),
      guess: guesses.some((one) => one.kind === 'yard' && one.figure === 'temperatures'),
    })),
    lines: datedLines(steps, day).map(({ celsius: figure, ...line }) => ({
      ...line,
      shown: celsiusShown(figure, typed[lineFigure(line.from)], system),
      text: temperatureSaid(figure, system),
    })),
    endsBefore: monthsEndBefore(yard, day),
    seasons: seasonsShown(yard.yard.timeZone, system),
  };
};

/**
 * The last month that is known, where more are planned: all after it are taken to be like it. Null where none is missing.
 */
export const monthsEndBefore = ({ yard, temperatures }: YardFile, day: string): string | null => {
  const months = monthsOf(temperatures, day);
  const known = temperatures.filter((step) => isOfMonths(step, months, day)).map(({ from }) => from);
  const last = known.sort().at(-1);
  const planned = dateOfDay(dayNumber(day) + yard.horizonDays);
  return last !== undefined && last.slice(0, 7) < planned.slice(0, 7) ? last : null;
};
