import { z } from 'zod';
import { id, whole, wholePositive } from './number.ts';
import { date, instant } from './time.ts';

/** What a mould is like while it is empty. "damaged" takes pours again from `repairedOn` on, "retired" never (R5). */
export const MOULD_CONDITIONS = ['ready', 'dirty', 'damaged', 'retired'] as const;
/** One of `MOULD_CONDITIONS`. That a piece is in the mould is no condition: it stands in `inMould`. */
export type MouldCondition = (typeof MOULD_CONDITIONS)[number];

/**
 * A reusable mould (R5, R6). "oil" in the field names is the sealing coat, not the release oil of every pour: due
 * after `oilEveryTurns` pours, never without that field; it takes `oilMinutes` and then dries for `oilDryMinutes`.
 * `dryFrom` is when the coat it has now is dry; without it nothing dries. `prepped` says that nothing is left to do before
 * a pour of `setFor`.
 */
export const mould = z.strictObject({
  id,
  makes: z.array(z.strictObject({ casting: id, changeMinutes: whole.default(0) })),
  setFor: id,
  condition: z.enum(MOULD_CONDITIONS),
  prepped: z.boolean().default(false),
  repairedOn: date.optional(),
  turnsSinceOil: whole.default(0),
  oilEveryTurns: wholePositive.optional(),
  oilMinutes: whole.default(0),
  oilDryMinutes: whole.default(0),
  dryFrom: instant.optional(),
});
/** A mould once read: every default filled in. */
export type Mould = z.infer<typeof mould>;

/**
 * Poured and not stripped yet. Its age counts from `filledAt`, which is not after the yard's `now`; `order` sets it
 * aside.
 */
export const pieceInMould = z.strictObject({ mould: id, casting: id, filledAt: instant, order: id.optional() });
/** A filled mould once read; at most one of each mould. */
export type PieceInMould = z.infer<typeof pieceInMould>;

/**
 * Pieces in the yard out of their moulds, several alike in one entry. Until `readyAt` they take rack spaces and go to
 * no order; without it they are cured. `order` sets them aside for one.
 */
export const finishedPieces = z.strictObject({
  casting: id,
  count: whole,
  readyAt: instant.optional(),
  order: id.optional(),
});
/** An entry of finished pieces once read. Plans name it by its index in `finished`, from 0. */
export type FinishedPieces = z.infer<typeof finishedPieces>;
