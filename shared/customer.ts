import { z } from 'zod';
import { wholePositive } from './number.ts';

/** Who orders. Two people may share a name, so each has a number, from 1. A yard file has the name only. */
export const customer = z.strictObject({
  id: wholePositive,
  name: z.string(),
  phone: z.string().optional(),
  note: z.string().optional(),
});
