import { z } from 'zod';
import { celsius } from './number.ts';
import { date } from './time.ts';

/** Expected mean temperature from 00:00 of a date until the next step. */
export const temperatureStep = z.strictObject({ from: date, celsius });
export type TemperatureStep = z.infer<typeof temperatureStep>;
