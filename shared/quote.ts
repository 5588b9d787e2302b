import { z } from 'zod';
import { wholePositive } from './number.ts';
import { promiseOdds } from './promise-odds.ts';
import { date, instant } from './time.ts';

/** What holds a date: relaxing it alone brings `earliestOn` forward by `daysSooner`. */
const quoteLimit = z.strictObject({
  limit: z.string(),
  what: z.string().optional(),
  change: z.string(),
  earliestOn: date,
  daysSooner: wholePositive,
});
/** One real gain: `limit` is a kind of relaxation, `what` the id it is about, `change` says it in plain words. */
export type QuoteLimit = z.infer<typeof quoteLimit>;

/** The first day by which the order is ready with such odds; null beyond the horizon. */
const dayByOdds = z.strictObject({ share: promiseOdds, on: date.nullable() });

/** When an order could be ready. All dates null, with a reason, when it cannot be made. */
const quote = z.strictObject({
  earliestAt: instant.nullable(),
  earliestOn: date.nullable(),
  promiseOn: date.nullable(),
  ifFirstOn: date.nullable(),
  proven: z.boolean(),
  limits: z.array(quoteLimit),
  odds: z.array(dayByOdds).optional(),
  reason: z.string().optional(),
});
/**
 * The answer to "when could it be ready?". Days are hand-over days; `earliestAt` is the minute behind `earliestOn`.
 * `ifFirstOn` lets other orders get later, `earliestOn` does not. `proven`: no plan whatever has it on an earlier day; where it
 * is false, none was found. `odds`: there where `promiseOn` goes by them.
 */
export type Quote = z.infer<typeof quote>;
