import { z } from 'zod';

/** Rows of a file of weather with the names of their columns, as they are carried from form to form. */
export const weatherTable = z.strictObject({
  header: z.array(z.string()).min(1).max(200),
  rows: z.array(z.array(z.string())).min(1).max(1000),
});
/** A table of weather once read. */
export type WeatherTable = z.infer<typeof weatherTable>;
