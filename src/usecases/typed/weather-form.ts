import type { Weather, WeatherDay } from '../../../shared/temperature.ts';
import { clockMinutes } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { rainText, readRain } from '../../engine/units/rain.ts';
import { temperatureText } from '../../engine/units/temperature.ts';
import { readWind, windText } from '../../engine/units/wind.ts';
import type { Outcome } from '../core/context.ts';
import type { FormFields } from './form-fields.ts';
import { readCelsius } from './temperature-figures.ts';
import { TypedReader } from './typed-reader.ts';

/** What is said of a day, as its fields show it. */
export type DayShown = Readonly<Record<'low' | 'high' | 'wind' | 'humidity' | 'rain', string>>;

/** The name of a field of a day: "low 2027-05-08". */
export const dayField = (what: keyof DayShown, date: string): string => `${what} ${date}`;

/** Winds that no yard works in are a slip of the hand, or of the unit. */
const STRONGEST_KMH = 200;

/** So much falls in no night and day but a flood's. */
const MOST_RAIN_MM = 500;

const EMPTY: DayShown = { low: '', high: '', wind: '', humidity: '', rain: '' };

export const dayShown = (day: WeatherDay | undefined, system: UnitSystem): DayShown =>
  day === undefined
    ? EMPTY
    : {
        low: temperatureText(day.minCelsius, system),
        high: temperatureText(day.maxCelsius, system),
        wind: day.windKmh === undefined ? '' : windText(day.windKmh, system),
        humidity: day.humidityPercent === undefined ? '' : String(day.humidityPercent),
        rain: day.rainMm === undefined ? '' : rainText(day.rainMm, system),
      };

interface DayReading {
  date: string;
  was: WeatherDay | undefined;
  system: UnitSystem;
}

const windTyped = (reader: TypedReader, { date, system }: DayReading): number => {
  const name = dayField('wind', date);
  const faults = reader.faults.length;
  const kmh = reader.measure(name, (text) => readWind(text, system));
  if (reader.faults.length === faults && kmh > STRONGEST_KMH)
    reader.refuse(name, 'No yard works in that. Is the unit right?');
  return kmh;
};

const rainTyped = (reader: TypedReader, { date, system }: DayReading): number => {
  const name = dayField('rain', date);
  const faults = reader.faults.length;
  const mm = reader.measure(name, (text) => readRain(text, system));
  if (reader.faults.length === faults && mm > MOST_RAIN_MM) reader.refuse(name, 'That is a flood. Is the unit right?');
  return mm;
};

/** One day: lowest and highest, or neither; wind, humidity and rain where they are known. What was not touched is what it was. */
const dayTyped = (reader: TypedReader, of: DayReading): WeatherDay[] => {
  const { date, was, system } = of;
  const shown = dayShown(was, system);
  const isAs = (what: keyof DayShown) => reader.text(dayField(what, date)) === shown[what];
  const isEmpty = (what: keyof DayShown) => reader.text(dayField(what, date)) === '';
  if ((Object.keys(EMPTY) as (keyof DayShown)[]).every(isEmpty)) return [];
  for (const what of ['low', 'high'] as const)
    if (isEmpty(what))
      reader.refuse(dayField(what, date), 'Fill in the lowest and the highest, or leave the whole day out.');
  const celsius = (what: 'low' | 'high', before: number | undefined) =>
    before !== undefined && isAs(what) ? before : isEmpty(what) ? 0 : readCelsius(reader, dayField(what, date), system);
  const faults = reader.faults.length;
  const [minCelsius, maxCelsius] = [celsius('low', was?.minCelsius), celsius('high', was?.maxCelsius)];
  if (reader.faults.length === faults && !isEmpty('low') && !isEmpty('high') && minCelsius > maxCelsius)
    reader.refuse(dayField('high', date), 'That is lower than the lowest.');
  const windKmh = isEmpty('wind') ? undefined : isAs('wind') ? was?.windKmh : windTyped(reader, of);
  const rainMm = isEmpty('rain') ? undefined : isAs('rain') ? was?.rainMm : rainTyped(reader, of);
  const humidityPercent = reader.wholeOrNone(dayField('humidity', date), 'How damp is the air, in percent?', {
    most: 100,
  });
  return [
    {
      ...{ date, minCelsius, maxCelsius },
      ...(windKmh === undefined ? {} : { windKmh }),
      ...(humidityPercent === null ? {} : { humidityPercent }),
      ...(rainMm === undefined ? {} : { rainMm }),
    },
  ];
};

/** The weather of these dates, and when days are coldest and warmest. */
export const weatherTyped = (
  fields: FormFields,
  { dates, before, system }: { dates: readonly string[]; before: Weather; system: UnitSystem },
): Outcome<Weather> => {
  const reader = new TypedReader(fields);
  const days = dates.flatMap((date) =>
    dayTyped(reader, { date, was: before.days.find((day) => day.date === date), system }),
  );
  const faults = reader.faults.length;
  const [coldestAt, warmestAt] = [reader.clock('coldestAt'), reader.clock('warmestAt')];
  if (reader.faults.length === faults && clockMinutes(warmestAt) <= clockMinutes(coldestAt))
    reader.refuse('warmestAt', 'A day is warmest after it is coldest.');
  return reader.outcome({ coldestAt, warmestAt, days });
};
