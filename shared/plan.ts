import { z } from 'zod';
import { amount, id, positive, whole, wholePositive } from './number.ts';
import { date, instant } from './time.ts';

const planBatch = z.strictObject({
  id,
  mix: id,
  start: instant,
  mixEnd: instant,
  end: instant,
  bags: amount,
  kg: amount,
  pours: z.array(id),
});
export type PlanBatch = z.infer<typeof planBatch>;

const stripTimes = { stripStart: instant, stripEnd: instant, pieceReadyAt: instant };

const planPour = z.strictObject({
  id,
  batch: id,
  mould: id,
  casting: id,
  order: id.optional(),
  prepStart: instant,
  prepEnd: instant,
  oiled: z.boolean(),
  fillStart: instant,
  fillEnd: instant,
  ...stripTimes,
});
export type PlanPour = z.infer<typeof planPour>;

const planStrip = z.strictObject({ mould: id, order: id.optional(), ...stripTimes });
export type PlanStrip = z.infer<typeof planStrip>;

const unstripped = z.strictObject({ mould: id, reason: z.string() });

const planOrder = z.strictObject({
  id,
  packStart: instant.optional(),
  packEnd: instant.optional(),
  completesAt: instant,
  completesOn: date,
  daysLate: whole,
  fromFinished: z.array(z.strictObject({ finished: whole, count: wholePositive })),
});
export type PlanOrder = z.infer<typeof planOrder>;

const UNPLANNED_CAUSES = ['mould', 'material', 'time'] as const;
const unplannedOrder = z.strictObject({
  order: id,
  cause: z.enum(UNPLANNED_CAUSES),
  what: z.string().optional(),
  reason: z.string(),
});
export type UnplannedOrder = z.infer<typeof unplannedOrder>;

const planStick = z.strictObject({
  material: id,
  openedAt: instant,
  cuts: z.array(z.strictObject({ lengthMm: positive, count: wholePositive, for: id })),
});
export type PlanStick = z.infer<typeof planStick>;

const planBuy = z.strictObject({ material: id, quantity: positive, orderBy: date, arrivesOn: date });
export type PlanBuy = z.infer<typeof planBuy>;

const score = z.strictObject({
  unplannedWeight: amount,
  weightedDaysLate: amount,
  batches: whole,
  bags: amount,
  weightedCompletionDays: amount,
});
export type Score = z.infer<typeof score>;

/** The engine's answer: every task with its times, what each order gets, what to cut and to buy. */
export const planFile = z.strictObject({
  format: z.literal('mould-rota/plan'),
  version: z.literal(1),
  batches: z.array(planBatch),
  pours: z.array(planPour),
  strips: z.array(planStrip),
  unstripped: z.array(unstripped),
  orders: z.array(planOrder),
  unplanned: z.array(unplannedOrder),
  sticks: z.array(planStick),
  buys: z.array(planBuy),
  dropped: z.array(z.strictObject({ batch: id, reason: z.string() })),
  score,
  bound: z.strictObject({ weightedDaysLate: amount }).optional(),
});
export type PlanFile = z.infer<typeof planFile>;

/** Batches and pours that are firm (R13), as they stood in an earlier plan. */
export const keep = z.strictObject({ batches: z.array(planBatch), pours: z.array(planPour) });
export type Keep = z.infer<typeof keep>;
