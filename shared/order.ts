import { z } from 'zod';
import { amount, id, wholePositive } from './number.ts';
import { date } from './time.ts';

/** The most kits or pieces of a line: years of work for a yard of this kind, and still planned in seconds. */
const MOST_OF_A_LINE = 10_000;
/** The most pieces and cuts that all orders of a yard file may ask for. */
export const PIECES_IN_ALL = 100_000;

/** One line asks for a number of kits, of single pieces, or a quantity of a material: exactly one of the three. */
export const orderLine = z
  .strictObject({ kit: id.optional(), casting: id.optional(), material: id.optional(), quantity: amount })
  .superRefine((line, context) => {
    const named = [line.kit, line.casting, line.material].filter((x) => x !== undefined).length;
    if (named !== 1) context.addIssue({ code: 'custom', message: 'has to name exactly one of kit, casting, material' });
    if (line.material !== undefined) return;
    const fault = (message: string) => context.addIssue({ code: 'custom', path: ['quantity'], message });
    if (!Number.isInteger(line.quantity)) fault('has to be a whole number');
    if (line.quantity > MOST_OF_A_LINE) fault(`is more than ${MOST_OF_A_LINE.toLocaleString('en')}`);
  });
/** A line once read: exactly one of kit, casting and material is there. */
export type OrderLine = z.infer<typeof orderLine>;

/**
 * What was ordered (yard file, `orders`). `due` is the date given, promised or held; without one the order is
 * never late. `wanted` is the date asked for, which counts after it. Nothing is poured for the order before `notBefore`.
 * `weight` is how much a day late matters, and what leaving the order out costs in the score. With `packedMinutes` so much of
 * its packing is done, and all that it is made of has left the stock.
 */
export const order = z.strictObject({
  id,
  customer: z.string().optional(),
  due: date.optional(),
  wanted: date.optional(),
  notBefore: date.optional(),
  weight: amount.default(1),
  packedMinutes: wholePositive.optional(),
  lines: z.array(orderLine),
});
/** An order once read: weight 1 where none was given. */
export type Order = z.infer<typeof order>;

/** "Can it slip?" as the maker answers it, and the weight of a day late that each answer stands for. */
export const SLIPS = ['not', 'rather not', 'yes'] as const;
/** One of `SLIPS`, the maker's answer to "can it slip?". */
export type Slip = (typeof SLIPS)[number];
/** The weight of a day late that each answer stands for. Chosen, not measured: a day of "not" is worth six of "yes". */
export const SLIP_WEIGHTS: Record<Slip, number> = { not: 6, 'rather not': 3, yes: 1 };
/**
 * The answer that a weight is shown as, the nearest below; what is under every one is "yes".
 *
 * Example: `slipOfWeight(4.5)` is "rather not", `slipOfWeight(0)` is "yes".
 */
export const slipOfWeight = (weight: number): Slip =>
  weight >= SLIP_WEIGHTS.not ? 'not' : weight >= SLIP_WEIGHTS['rather not'] ? 'rather not' : 'yes';
