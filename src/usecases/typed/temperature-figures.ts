import type { UnitSystem } from '../../../shared/units.ts';
import { readTemperature, temperatureText } from '../../engine/units/temperature.ts';
import { figureShown } from './figures.ts';
import type { TypedReader } from './typed-reader.ts';

/** Whose the figures of temperatures are. */
export const TEMPERATURE_OWNER = { kind: 'yard', id: 'yard' } as const;
/** The field of a month, and the figure that is kept as it was typed: 'month-4' for April. */
export const monthField = (month: number): string => `month-${month + 1}`;

/** No yard casts in more or less. */
const COLDEST = -60;
const HOTTEST = 60;

/** A temperature that was typed, in °C. */
export const readCelsius = (reader: TypedReader, name: string, system: UnitSystem): number => {
  const faults = reader.faults.length;
  const celsius = reader.measure(name, (text) => readTemperature(text, system));
  if (reader.faults.length === faults && (celsius < COLDEST || celsius > HOTTEST))
    reader.refuse(name, 'No yard is that warm or that cold. Is the unit right?');
  return celsius;
};

/** As the field shows a figure. */
export const celsiusShown = (celsius: number | null, typed: string | undefined, system: UnitSystem): string =>
  celsius === null
    ? ''
    : figureShown(
        typed,
        celsius,
        (text) => readTemperature(text, system),
        (stored) => temperatureText(stored, system),
      );

/** The figure of a dated line that is kept as it was typed. */
export const lineFigure = (from: string): string => `celsius ${from}`;
