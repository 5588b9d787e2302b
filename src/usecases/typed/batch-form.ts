import type { UnitSystem } from '../../../shared/units.ts';
import type { BatchTold } from '../../engine/book/work-done.ts';
import type { Reading } from '../../engine/units/reading.ts';
import { readTemperature } from '../../engine/units/temperature.ts';
import { readVolume } from '../../engine/units/volume.ts';
import { type DateReading, lastSuch, readDate } from './date-typed.ts';
import type { TypedReader } from './typed-reader.ts';

/** More dates than bags are ever opened for a batch. */
const MOST_DATES = 20;
/** In °C: mortar that hot is boiling, near enough. */
const HOTTEST = 90;

/** "3 Apr; 10 Apr": the dates on the bags, each once and in their order. */
const bagDatesTyped = (reader: TypedReader, how: DateReading): string[] => {
  const texts = reader
    .text('bagDates')
    .split(/;| and /)
    .map((text) => text.trim())
    .filter((text) => text !== '');
  if (texts.length > MOST_DATES) reader.refuse('bagDates', `${MOST_DATES} dates are the most.`);
  const dates = texts.slice(0, MOST_DATES).flatMap((text) => {
    const read = readDate(text, how);
    if (!read.ok) reader.refuse('bagDates', `${read.reason} Several with a semicolon between them.`);
    return read.ok ? [lastSuch(read.date, text, how.today)] : [];
  });
  return [...new Set(dates)].sort();
};

/** What is told of a batch beside what was poured; a field that is empty says nothing. */
export const toldTyped = (reader: TypedReader, how: DateReading): BatchTold => {
  const { system } = how;
  const measured = (name: string, read: (text: string, system: UnitSystem) => Reading<number>) =>
    reader.text(name) === '' ? undefined : reader.measure(name, (text) => read(text, system));
  const told = {
    ...{ waterLitres: measured('water', readVolume), mortarCelsius: measured('mortarCelsius', readTemperature) },
    ...{ airCelsius: measured('airCelsius', readTemperature) },
    ...{ by: reader.text('by') || undefined, note: reader.text('note') || undefined },
  };
  for (const name of ['mortarCelsius', 'airCelsius'] as const)
    if ((told[name] ?? 0) > HOTTEST) reader.refuse(name, 'That is hotter than any mortar or day.');
  const dates = bagDatesTyped(reader, how);
  const said = Object.fromEntries(Object.entries(told).filter(([, value]) => value !== undefined)) as BatchTold;
  return { ...said, ...(dates.length > 0 ? { bagDates: dates } : {}) };
};
