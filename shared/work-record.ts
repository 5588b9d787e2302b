import { z } from 'zod';
import { amount, id } from './number.ts';
import { CAME_OUT } from './piece-to-mend.ts';
import { instant } from './time.ts';

/** What can be said of a mould that goes into its history. The sealing coat is work of its own. */
const MARKED = ['cleaned', 'damaged', 'mended', 'scrapped'] as const;

const reason = z.string().min(1, 'is empty').optional();
const poured = z.strictObject({ mould: id, casting: id, filledAt: instant, order: id.optional() });
const batch = { at: instant, mix: id, bags: amount, pours: z.array(poured).min(1) };
/** A piece is known by its mould and by when that was full. Everything is called as it was called then. */
const piece = { at: instant, mould: id, casting: id, filledAt: instant, reason };

/**
 * One thing that was done, as it was recorded and for good: no plan reads it. `at` is when it was done, of a batch when its
 * last mould was full. A piece may come out of its mould to be mended, and be mended or scrapped later.
 */
export const workRecord = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('poured'), ...batch }),
  z.strictObject({ kind: z.literal('thrown away'), ...batch }),
  z.strictObject({ kind: z.literal('stripped'), ...piece, cameOut: z.enum(CAME_OUT) }),
  z.strictObject({ kind: z.literal('after mending'), ...piece, cameOut: z.enum(['good', 'scrap']) }),
  z.strictObject({ kind: z.literal('coated'), at: instant, mould: id }),
  z.strictObject({ kind: z.literal('marked'), at: instant, mould: id, mark: z.enum(MARKED), reason }),
]);
/** A record once read. */
export type WorkRecord = z.infer<typeof workRecord>;

/** The moulds that a record is of. */
export const mouldsOfRecord = (record: WorkRecord): string[] =>
  record.kind === 'poured' || record.kind === 'thrown away' ? record.pours.map(({ mould }) => mould) : [record.mould];
