import { setWeather, weatherSaid } from '../../../db/stores/temperature-store.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import { done, today } from '../core/context.ts';
import type { Edit } from '../plan/save-edit.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { weatherTyped } from '../typed/weather-form.ts';
import { comingDays } from './coming-days.ts';

/** What is expected of the coming days; days that have passed stay as they were, since pieces have set in them. */
export const editWeather = (typed: FormFields): Edit<null> => ({
  what: { kind: 'weather set', words: 'Weather of the coming days changed' },
  work: async (tx, yard) => {
    const dates = comingDays(today(yard.yard.timeZone, yard.yard.now));
    const read = weatherTyped(typed, { dates, before: await weatherSaid(tx), system: await unitsOfYard(tx) });
    if (!read.ok) return read;
    await setWeather(tx, read.value, dates);
    return done(null);
  },
});
