import { z } from 'zod';
import { amount, days, positive } from './number.ts';
import { date } from './time.ts';
import { ruleFault } from './work.ts';

const rule = z.string().superRefine((text, ctx) => {
  const fault = ruleFault(text);
  if (fault !== null) ctx.addIssue({ code: 'custom', message: fault });
});

/** Days that repeat by a rule of RFC 5545, counted from a date. */
const dayRule = z.strictObject({ rule, from: date });

/** More single days than that are a rule. */
const MOST_CLOSED_DAYS = 1000;

/** Days on which a supplier is open and brings things, and dates on which it does neither. */
const daysThere = {
  opens: dayRule.optional(),
  delivers: dayRule.optional(),
  closed: z.array(date).max(MOST_CLOSED_DAYS).default([]),
};

/**
 * What planning asks of a supplier (R10): when it is open (absent: every day) and when it brings things (absent: whenever it is open), and
 * whether its things are fetched there (absent: no).
 */
export const supplierInFile = z.strictObject({
  name: z.string().min(1, 'is empty'),
  ...daysThere,
  fetched: z.boolean().optional(),
});
/** What planning asks of a supplier, once read. */
export type SupplierInFile = z.infer<typeof supplierInFile>;

/** A trip is for so many days ahead at most, where nobody said otherwise: plans further ahead change. */
export const AHEAD_DAYS = 14;

/**
 * What is said of a supplier beside its name: when it is open and when it brings things (absent: every day, and every day it
 * is open), dates on which it does neither, whether things are fetched there (absent: as far as they can be had the same
 * day), what it asks for (money in the yard's currency), what is carried at once (kg), how many days ahead is bought at most,
 * and how long its things take to come.
 */
const supplierFacts = z.strictObject({
  leadDays: days.optional(),
  ...daysThere,
  fetched: z.boolean().optional(),
  minimumOrder: amount.default(0),
  deliveryPrice: amount.default(0),
  carriesKg: positive.optional(),
  aheadDays: days.default(AHEAD_DAYS),
});
/** What is said of a supplier, once read. */
export type SupplierFacts = z.infer<typeof supplierFacts>;

/** A supplier; materials name it by its name. */
export const supplier = supplierFacts.extend({ name: z.string().min(1, 'is empty') });
/** A supplier once read: every default filled in. */
export type Supplier = z.infer<typeof supplier>;

/**
 * Whether things of a supplier are fetched there: as it was said, or else where all of it can be had the same day.
 *
 * Example: of one of whom nothing was said, with sand that takes 0 days and rods that take 5: false.
 */
export const isFetched = (
  { name, fetched }: Pick<Supplier, 'name' | 'fetched'>,
  materials: readonly { supplier?: string | null | undefined; leadDays?: number | null | undefined }[],
): boolean => fetched ?? materials.every(({ supplier: of, leadDays }) => of !== name || leadDays === 0);

/**
 * What buying asks of a material and planning does not, in the material's unit: what one weighs (kg), what one costs from
 * so many at once on, a date before which it is not to be had, how much is used up in a turn or a batch without a recipe
 * that says so, and how much is left when it is bought again.
 */
export const materialBuying = z.strictObject({
  kgPerUnit: positive.optional(),
  breaks: z.array(z.strictObject({ from: positive, unitPrice: amount })).default([]),
  notBefore: date.optional(),
  perTurn: positive.optional(),
  perBatch: positive.optional(),
  buyAt: amount.optional(),
});
/** A price list has no more steps than that. */
const MOST_BREAKS = 20;

/**
 * What figures of buying may not be, each by its field and in plain words; none where all is well. Files of before may have more
 * price breaks, or two at one amount, and are read.
 *
 * Example: two prices from 10 on are a fault of `breaks`.
 */
export const buyingFaults = (facts: MaterialBuying): { field: keyof MaterialBuying; message: string }[] => {
  const read = materialBuying.safeParse(facts);
  const faults = (read.error?.issues ?? []).map(({ path, message }) => ({
    ...{ field: path[0] as keyof MaterialBuying, message },
  }));
  const { breaks } = facts;
  if (breaks.length > MOST_BREAKS)
    faults.push({ field: 'breaks', message: `has ${breaks.length} steps. ${MOST_BREAKS} are the most` });
  if (new Set(breaks.map(({ from }) => from)).size < breaks.length)
    faults.push({ field: 'breaks', message: 'has two prices from one amount on. Leave one of them out' });
  return faults;
};
/** What buying asks of a material, once read. */
export type MaterialBuying = z.infer<typeof materialBuying>;
