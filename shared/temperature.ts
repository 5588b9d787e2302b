import { z } from 'zod';
import { celsius } from './number.ts';
import { clock, clockMinutes, date } from './time.ts';

/**
 * Expected mean temperature in °C of the open air, from 00:00 of a date in the yard's zone until the next step. Before
 * the first step the first one holds.
 */
export const temperatureStep = z.strictObject({ from: date, celsius });
/** A step once read. Steps may be in any order. */
export type TemperatureStep = z.infer<typeof temperatureStep>;

/** No wind at the ground has been faster by much (408 km/h at Barrow Island in 1996, World Meteorological Organization). */
const FASTEST_KMH = 410;
/** No day has been wetter (1,825 mm in 24 hours at Foc-Foc in 1966, World Meteorological Organization). */
const WETTEST_MM = 1825;

/**
 * What is expected of one date: the lowest and the highest temperature in °C, and, for how fast a surface dries, the wind in
 * km/h and the humidity of the air in percent; and the rain in mm.
 */
const weatherDay = z
  .strictObject({
    date,
    minCelsius: celsius,
    maxCelsius: celsius,
    windKmh: z.number().min(0, 'is negative').max(FASTEST_KMH, `is more than ${FASTEST_KMH}`).optional(),
    humidityPercent: z.number().min(0, 'is negative').max(100, 'is more than 100').optional(),
    rainMm: z.number().min(0, 'is negative').max(WETTEST_MM, `is more than ${WETTEST_MM}`).optional(),
  })
  .refine((day) => day.minCelsius <= day.maxCelsius, { path: ['maxCelsius'], message: 'is lower than the lowest' });
/** A day of weather once read. */
export type WeatherDay = z.infer<typeof weatherDay>;

/** In what winds are told. */
export const WIND_UNITS = ['km/h', 'mph', 'm/s', 'kn'] as const;
/** One of `WIND_UNITS`. */
export type WindUnit = (typeof WIND_UNITS)[number];

/** When a day is coldest and warmest where nobody says otherwise: about sunrise, and mid-afternoon (common practice, no source). */
export const USUAL_HOURS = { coldestAt: '05:00', warmestAt: '15:00' } as const;

/** Single days by the hour, each once, in any order, and at which times of the day it is coldest and warmest in this yard. */
export const weather = z
  .strictObject({
    coldestAt: clock.default(USUAL_HOURS.coldestAt),
    warmestAt: clock.default(USUAL_HOURS.warmestAt),
    days: z.array(weatherDay),
  })
  .refine((w) => clockMinutes(w.coldestAt) < clockMinutes(w.warmestAt), {
    path: ['warmestAt'],
    message: 'is not after the coldest',
  })
  .superRefine(({ days }, context) => {
    const seen = new Set<string>();
    for (const [i, { date: of }] of days.entries()) {
      if (seen.has(of)) context.addIssue({ code: 'custom', path: ['days', i, 'date'], message: 'is there twice' });
      seen.add(of);
    }
  });
/** A yard's weather once read. */
export type Weather = z.infer<typeof weather>;
