import type { TemperatureStep } from '../../../shared/temperature.ts';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';

/*
 * A yard file has dated steps; a maker knows what a month is like, year for year. Twelve figures become a step on the first
 * of each month, from the present month on, for as long as is planned and a year more, so that they need no renewing for a
 * year. Steps of months gone by stay: pieces poured then aged in them. A step on another day, or on the first of a month
 * with another figure than that month has, is a dated line of its own ("this week 6 degrees") and is left alone.
 */

/** What each month is like, January first; null where nobody said. */
export type MonthFigures = (number | null)[];

const MONTHS = 12;
/** How much farther than the plan the months go. */
const MONTHS_BEYOND = 12;

const firstOfMonth = (date: string): string => `${date.slice(0, 8)}01`;
const monthIndex = (date: string): number => Number(date.slice(5, 7)) - 1;
const isFirst = (date: string): boolean => date.endsWith('-01');

/** `later(2027, 11, 2)` is '2028-02-01': two months after December (11) 2027. */
const later = (year: number, month: number, months: number): string => {
  const count = year * MONTHS + month + months;
  return `${String(Math.floor(count / MONTHS)).padStart(4, '0')}-${String((count % MONTHS) + 1).padStart(2, '0')}-01`;
};

const byDate = <T extends TemperatureStep>(steps: readonly T[]): T[] =>
  [...steps].sort((a, b) => a.from.localeCompare(b.from));

/** A month is like its next step on a first says, the present month's own included; else like its last one. */
export const monthsOf = (steps: readonly TemperatureStep[], today: string): MonthFigures => {
  const firsts = byDate(steps).filter(({ from }) => isFirst(from));
  const start = firstOfMonth(today);
  return Array.from({ length: MONTHS }, (_, month) => {
    const own = firsts.filter(({ from }) => monthIndex(from) === month);
    return (own.find(({ from }) => from >= start) ?? own.at(-1))?.celsius ?? null;
  });
};

/** Whether a step is one of the months': on a first, not of a month gone by, with the month's figure. */
export const isOfMonths = ({ from, celsius }: TemperatureStep, months: MonthFigures, today: string): boolean =>
  isFirst(from) && from >= firstOfMonth(today) && months[monthIndex(from)] === celsius;

/**
 * The steps of twelve figures, from the present month on to a year beyond the last day planned.
 *
 * Example: planned 30 days from 2027-04-05 on, they begin on 2027-04-01 and end on 2028-05-01.
 */
export const stepsOfMonths = (months: readonly number[], today: string, horizonDays: number): TemperatureStep[] => {
  const [year, month] = [Number(today.slice(0, 4)), monthIndex(today)];
  const last = dateOfDay(dayNumber(today) + horizonDays);
  const planned = (Number(last.slice(0, 4)) - year) * MONTHS + monthIndex(last) - month;
  return Array.from({ length: planned + MONTHS_BEYOND + 1 }, (_, ahead) => {
    const from = later(year, month, ahead);
    return { from, celsius: months[monthIndex(from)]! };
  });
};

/** A step that is none of the months', with the last day it holds; null: it holds on. */
export type DatedLine<T extends TemperatureStep> = T & { to: string | null };

/** Those that are not over by today. */
export const datedLines = <T extends TemperatureStep>(steps: readonly T[], today: string): DatedLine<T>[] => {
  const months = monthsOf(steps, today);
  const sorted = byDate(steps);
  return sorted.flatMap((step, place) => {
    const next = sorted[place + 1]?.from ?? null;
    if (isOfMonths(step, months, today) || (next !== null && next <= today)) return [];
    return [{ ...step, to: next === null ? null : dateOfDay(dayNumber(next) - 1) }];
  });
};
