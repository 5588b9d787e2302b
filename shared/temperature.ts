import { z } from 'zod';
import { celsius } from './number.ts';
import { date } from './time.ts';

/**
 * Expected mean temperature in °C of the open air, from 00:00 of a date in the yard's zone until the next step. Before
 * the first step the first one holds.
 */
export const temperatureStep = z.strictObject({ from: date, celsius });
/** A step once read. Steps may be in any order. */
export type TemperatureStep = z.infer<typeof temperatureStep>;
