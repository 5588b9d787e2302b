import { z } from 'zod';
import { whole } from './number.ts';
import { keep } from './plan.ts';
import { date, instant } from './time.ts';

/** What an order was promised by a plan. */
const loggedPromise = z.strictObject({
  order: z.string(),
  customer: z.string().nullable(),
  due: date.nullable().optional(),
  isWanted: z.literal(true).optional(),
  isThere: z.literal(true).optional(),
  completesOn: date.nullable(),
  daysLate: z.number().nullable(),
  reason: z.string().nullable(),
});

/** A mix that was fixed and could not stay. */
const loggedDrop = z.strictObject({ at: instant, moulds: z.array(z.string()), reason: z.string() });

/** What was done, in the maker's words, and what it did to dates. `undoneBy` is the place in the log of what undid it. */
const loggedChange = z.strictObject({
  at: instant,
  kind: z.string().min(1, 'is empty'),
  words: z.string(),
  /** The name chosen on the device it was done on. */
  by: z.string().min(1, 'is empty').optional(),
  before: z.array(loggedPromise),
  after: z.array(loggedPromise),
  undoneBy: whole.optional(),
  dropped: z.array(loggedDrop).optional(),
});

/** Something the maker had to be told; `change` is the place in the log of what it is about. */
const loggedNotice = z.strictObject({
  at: instant,
  words: z.string(),
  change: whole,
  dismissedAt: instant.optional(),
});

/** A session that was fixed and was planned anew by a change, with its mixes and pours until then. */
const sessionAnew = z.strictObject({ change: whole, sessionStart: instant, before: keep });

/** All that was done, the oldest first. Entries refer to each other by their place in `changes`, from 0. */
export const changeLog = z.strictObject({
  changes: z.array(loggedChange),
  notices: z.array(loggedNotice),
  plannedAnew: z.array(sessionAnew),
});
/** A log once read; its references are checked apart, by `archiveReferenceFaults`. */
export type ChangeLog = z.infer<typeof changeLog>;
