import { z } from 'zod';
import { amount, id, wholePositive } from './number.ts';
import { date, instant } from './time.ts';

/**
 * What a cost is made up of: bags that went into pieces and bags that were thrown away with the rest of a mix, what else goes
 * into a piece or a kit, lengths cut and what is lost of their sticks, work, a turn of the mould, a share of what a session
 * costs whatever is made in it, and of the pieces that come out as scrap.
 */
export const COST_KINDS = [
  ...(['mix', 'thrown away', 'goods', 'cuts', 'cut waste', 'work', 'mould', 'session', 'rejects'] as const),
] as const;
/** One of `COST_KINDS`: what money went into. */
export type CostKind = (typeof COST_KINDS)[number];

/** The most that can be left of a price, or come out as scrap: of anything dearer the figure is a slip of the hand. */
export const MOST_PERCENT = 95;
const percent = z.number().min(0, 'is negative').max(MOST_PERCENT, `is more than ${MOST_PERCENT}`);

/**
 * What stock costs in a year of what was paid for it, where a yard says nothing: a guess, the least of "typically between 20-40
 * percent per year" in the dictionary of the Sourcing Industry Group (sig.org, "Inventory Holding (Carrying) Cost"), since bags that
 * would go past their date are not bought at all.
 */
export const HOLDING_PERCENT = 20;

/**
 * What a yard reckons its costs by, in its money and not in minor units, so that another currency reads the same figures. Each may be
 * left out. `wageHour` is one person's hour; `sessionFixed` what a session costs whatever is made in it; `mouldCost` and
 * `mouldTurns` are of moulds that say nothing of their own. `holdingPercent` is what money that is bound up in stock costs a year, with the
 * room it takes (`HOLDING_PERCENT` where nobody said).
 */
export const yardCosts = z.strictObject({
  wageHour: amount.optional(),
  sessionFixed: amount.optional(),
  rejectPercent: percent.optional(),
  marginPercent: percent.optional(),
  mouldCost: amount.optional(),
  mouldTurns: wholePositive.optional(),
  holdingPercent: percent.optional(),
});
/** A yard's cost figures once read. */
export type YardCosts = z.infer<typeof yardCosts>;

/** An estimate as it stood when a price was given: when that was, and its parts in the yard's money. */
const keptEstimate = z.strictObject({ at: instant, parts: z.partialRecord(z.enum(COST_KINDS), amount) });
/** An estimate that is kept with an order, to be set beside what it really cost. */
export type KeptEstimate = z.infer<typeof keptEstimate>;

/** So many of what, as it was called then, for so much in all. */
const quotedLine = z.strictObject({ name: z.string(), quantity: amount, unit: z.string(), price: amount });

/** A quote as it was given to a customer. `currency` is the money it was given in. */
const orderQuote = z.strictObject({
  at: instant,
  currency: z.string().length(3, 'has to be three letters'),
  lines: z.array(quotedLine),
  price: amount,
  deposit: amount.optional(),
  readyOn: date.optional(),
});
/** A quote once read. It says what was said, whatever the order is now. */
export type OrderQuote = z.infer<typeof orderQuote>;

const payment = z.strictObject({ on: date, amount, back: z.boolean(), note: z.string().optional() });

/** What goes to a customer about money. */
export const PAPER_KINDS = ['quote', 'bill'] as const;
/** One of `PAPER_KINDS`. */
export type PaperKind = (typeof PAPER_KINDS)[number];

/** A quote or a bill as it was sent: the n-th of its kind for its order, and of a bill what had been paid by then. */
const orderPaper = orderQuote.extend({
  kind: z.enum(PAPER_KINDS),
  number: wholePositive,
  payments: z.array(payment),
});
/** A quote or a bill once read. It says what was said, whatever the order is now. */
export type OrderPaper = z.infer<typeof orderPaper>;

/**
 * The money of an order: what is asked for it, and what was paid of it and when; `back` is money that went back. `papers` are
 * what was sent, in that order; `quote` is one that was given before all of them were kept.
 */
export const orderMoney = z.strictObject({
  order: id,
  price: amount.optional(),
  deposit: amount.optional(),
  estimate: keptEstimate.optional(),
  quote: orderQuote.optional(),
  papers: z.array(orderPaper).optional(),
  payments: z.array(payment),
});
/** An order's money once read, amounts in the yard's currency. */
export type OrderMoney = z.infer<typeof orderMoney>;
