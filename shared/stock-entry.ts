import { z } from 'zod';
import { amount, count, id, LARGEST, positive } from './number.ts';
import { date, instant } from './time.ts';

/**
 * Why stock became more or less: it was there when the book began, it came, a batch or an order took it, it was cut, it was
 * counted, it is no good any more, an order gave it back, or somebody set it right by a form or a file.
 */
export const STOCK_KINDS = [
  'opening',
  'received',
  'used',
  'cut',
  'counted',
  'spoiled',
  'returned',
  'corrected',
] as const;
/** What stock was taken for, or came back from: a batch, known as its record is, or an order. */
const stockWork = z.union([z.strictObject({ mix: id, mould: id, at: instant }), z.strictObject({ order: id })]);
/** The batch or the order once read. */
export type StockWork = z.infer<typeof stockWork>;

const signed = z.number().min(-LARGEST, 'is too little').max(LARGEST, 'is too much');

/**
 * One line of the stock book of a material, for good: so much more of it, or less, in its own unit. With `lengthMm` it is
 * `quantity` offcuts of that length, with `widthMm` as well rests of sheets of that size. `useBy` and `openedAt` name the bags. `beyond` is how much more was taken than there was
 * by the book. Lines stand in the order in which they were written; `at` is when it was so, which may be before that. A line of
 * which something was undone stays: with `ofLine` one takes back what that line of the list (counted from 0) says, the next that
 * names the same brings it back, and so on.
 */
export const stockEntry = z.strictObject({
  at: instant,
  material: id,
  kind: z.enum(STOCK_KINDS),
  quantity: signed,
  lengthMm: positive.optional(),
  widthMm: positive.optional(),
  useBy: date.optional(),
  openedAt: instant.optional(),
  beyond: amount.optional(),
  work: stockWork.optional(),
  reason: z.string().min(1, 'is empty').optional(),
  by: z.string().min(1, 'is empty').optional(),
  ofLine: count.optional(),
});
/** A line once read. */
export type StockEntry = z.infer<typeof stockEntry>;
