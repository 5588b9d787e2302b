import { z } from 'zod';
import { id, whole, wholePositive } from './number.ts';
import { date, instant } from './time.ts';

export const MOULD_CONDITIONS = ['ready', 'dirty', 'damaged', 'retired'] as const;
export type MouldCondition = (typeof MOULD_CONDITIONS)[number];

/** A reusable mould. "oil" in the field names is the sealing coat, not the release oil of every pour. */
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
});
export type Mould = z.infer<typeof mould>;

/** Poured and not stripped yet. */
export const pieceInMould = z.strictObject({ mould: id, casting: id, filledAt: instant, order: id.optional() });
export type PieceInMould = z.infer<typeof pieceInMould>;

/** Stripped pieces in the yard; without `readyAt` they are cured. */
export const finishedPieces = z.strictObject({
  casting: id,
  count: whole,
  readyAt: instant.optional(),
  order: id.optional(),
});
export type FinishedPieces = z.infer<typeof finishedPieces>;
