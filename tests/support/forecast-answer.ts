/** What holds at an hour: °C, m/s, percent, and mm in the hour after it (or in the six after it, with their ends). */
export interface HourSaid {
  time: string;
  celsius: number;
  wind?: number;
  damp?: number;
  rain?: number;
  six?: { min: number; max: number; rain: number };
}

/** An answer as MET Norway's Locationforecast 2.0 documents it, made up: none could be recorded where this was written. */
export const forecastOf = (hours: readonly HourSaid[]) => ({
  type: 'Feature',
  geometry: { type: 'Point', coordinates: [-6.26, 53.35, 20] },
  properties: {
    meta: { updated_at: hours[0]?.time, units: { air_temperature: 'celsius', wind_speed: 'm/s' } },
    timeseries: hours.map(({ time, celsius, wind, damp, rain, six }) => ({
      time,
      data: {
        instant: {
          details: {
            air_temperature: celsius,
            ...(wind === undefined ? {} : { wind_speed: wind }),
            ...(damp === undefined ? {} : { relative_humidity: damp }),
          },
        },
        ...(rain === undefined
          ? {}
          : { next_1_hours: { summary: { symbol_code: 'rain' }, details: { precipitation_amount: rain } } }),
        ...(six
          ? {
              next_6_hours: {
                summary: { symbol_code: 'cloudy' },
                details: {
                  ...{ air_temperature_min: six.min, air_temperature_max: six.max },
                  precipitation_amount: six.rain,
                },
              },
            }
          : {}),
      },
    })),
  },
});

/** A day with a temperature an hour from one to the other and back, all else alike. */
export const dayOf = (date: string, low: number, high: number): HourSaid[] =>
  Array.from({ length: 24 }, (_, hour) => ({
    time: `${date}T${String(hour).padStart(2, '0')}:00:00Z`,
    celsius: low + ((high - low) * (12 - Math.abs(hour - 12))) / 12,
    ...{ wind: hour === 14 ? 5 : 2, damp: hour === 14 ? 45.4 : 80, rain: hour < 4 ? 0.5 : 0 },
  }));
