import { setWeather, weatherSaid } from '../../../db/stores/temperature-store.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import { clockIn, dayNumber } from '../../../shared/time.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { climateOf } from '../../engine/cure/climate.ts';
import { dayByThermometer } from '../../engine/cure/thermometer.ts';
import { temperatureSaid } from '../../engine/units/temperature.ts';
import { done, today, type UseCaseContext } from '../core/context.ts';
import type { Edit } from '../plan/save-edit.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { readCelsius } from '../typed/temperature-figures.ts';
import { TypedReader } from '../typed/typed-reader.ts';

/** What the thermometer says now takes the place of what was expected of this hour, and what is left of the day goes by it. */
export const readThermometer = ({ now }: Pick<UseCaseContext, 'now'>, fields: FormFields): Edit<{ reads: string }> => ({
  what: { kind: 'weather set', words: ({ reads }) => `The thermometer reads ${reads}` },
  work: async (tx, yard) => {
    const system = await unitsOfYard(tx);
    const reader = new TypedReader(fields);
    const celsius = readCelsius(reader, 'thermometer', system);
    const read = reader.outcome(celsius);
    if (!read.ok) return read;
    const { timeZone } = yard.yard;
    const date = today(timeZone, now);
    const mean = climateOf(yard, calendarOf(timeZone)).celsiusOn(dayNumber(date));
    const weather = await weatherSaid(tx);
    const day = dayByThermometer(weather, { date, clock: clockIn(timeZone, now), celsius, mean });
    await setWeather(tx, { ...weather, days: [day] }, [date]);
    return done({ reads: temperatureSaid(celsius, system) });
  },
});
