import { z } from 'zod';
import { count, id, positive, sum, wholePositive } from './number.ts';
import { memoryInFile } from './plan-memory.ts';
import { date, instant } from './time.ts';

const planBatch = z.strictObject({
  id,
  mix: id,
  start: instant,
  mixEnd: instant,
  end: instant,
  bags: sum,
  kg: sum,
  pours: z.array(id),
});
/**
 * One batch (R2 to R4): the mixer is taken from `start` to `mixEnd`, people until `end`, which is after washing.
 * `bags` are what goes in, `kg` what its pieces weigh.
 */
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
  fillStart: instant,
  fillEnd: instant,
  ...stripTimes,
});
/**
 * One turn of a mould (R5 to R8), from `prepStart` to `stripEnd`. Spans are half-open: what ends at a minute leaves
 * that minute free. Without an order the piece is for stock.
 */
export type PlanPour = z.infer<typeof planPour>;

const planCoat = z.strictObject({ mould: id, start: instant, end: instant });
/** A mould is cleaned and given its sealing coat (R6); from `end` on it dries, and is set up only after that. */
export type PlanCoat = z.infer<typeof planCoat>;

const planStrip = z.strictObject({ mould: id, order: id.optional(), ...stripTimes });
/** When a piece that is in its mould already comes out. Named by the mould, of which there is one each. */
export type PlanStrip = z.infer<typeof planStrip>;

const unstripped = z.strictObject({ mould: id, reason: z.string() });

const packSpell = z.strictObject({ packStart: instant, packEnd: instant });
/** One go at packing an order, half-open. */
export type PackSpell = z.infer<typeof packSpell>;

const planOrder = z.strictObject({
  id,
  packStart: instant.optional(),
  packEnd: instant.optional(),
  packs: z.array(packSpell).min(2, 'has to have two spells or more').optional(),
  completesAt: instant,
  completesOn: date,
  soonestOn: date.optional(),
  daysLate: count,
  fromFinished: z.array(z.strictObject({ finished: count, count: wholePositive })),
});
/**
 * What an order gets and when. Without packing both pack times are left out; packed over several sessions, `packs` has each
 * spell, the pack times are the start of the first and the end of the last. `completesOn` is a hand-over day;
 * `daysLate` is counted in days of the calendar, 0 where nothing is due. On no day before `soonestOn` does any plan complete it:
 * where that is `completesOn`, the day is proven the earliest. `fromFinished` names entries of the yard file
 * by index.
 */
export type PlanOrder = z.infer<typeof planOrder>;

/** Pours by the batch that fills them, in the order in which they are listed. */
export const poursByBatch = (pours: readonly PlanPour[]): Map<string, PlanPour[]> => {
  const byBatch = new Map<string, PlanPour[]>();
  for (const pour of pours) {
    const those = byBatch.get(pour.batch);
    if (those) those.push(pour);
    else byBatch.set(pour.batch, [pour]);
  }
  return byBatch;
};

/** The times at which a planned order is packed: none where nothing is, more than one where it takes several sessions. */
export const spellsOf = ({
  packStart,
  packEnd,
  packs,
}: Pick<PlanOrder, 'packStart' | 'packEnd' | 'packs'>): PackSpell[] =>
  packs ?? (packStart === undefined || packEnd === undefined ? [] : [{ packStart, packEnd }]);

/** A planned order with other times of packing, the earliest first; none where it is not packed any more. */
export const withSpells = <O extends PlanOrder>(
  { packStart: _start, packEnd: _end, packs: _packs, ...order }: O,
  spells: readonly PackSpell[],
) => ({
  ...order,
  ...(spells.length === 0 ? {} : { packStart: spells[0]!.packStart, packEnd: spells.at(-1)!.packEnd }),
  ...(spells.length > 1 ? { packs: [...spells] } : {}),
});

const UNPLANNED_CAUSES = ['mould', 'material', 'time'] as const;
const unplannedOrder = z.strictObject({
  order: id,
  cause: z.enum(UNPLANNED_CAUSES),
  what: z.string().optional(),
  reason: z.string(),
});
/**
 * An order that cannot be made beside the planned ones (R11); `what` is the id of the mould's casting or of the
 * material.
 */
export type UnplannedOrder = z.infer<typeof unplannedOrder>;

const planStick = z.strictObject({
  material: id,
  openedAt: instant,
  offcutMm: positive.optional(),
  cuts: z.array(z.strictObject({ lengthMm: positive, count: wholePositive, for: id })),
});
/**
 * One stick and what is cut from it; `for` is the id of a batch or of an order. What is left may serve later cuts. With
 * `offcutMm` it is an offcut of that length, and no whole stick.
 */
export type PlanStick = z.infer<typeof planStick>;

const sheetSize = { widthMm: positive, lengthMm: positive };
const sheetRect = { ...sheetSize, xMm: sum, yMm: sum };
const planSheet = z.strictObject({
  material: id,
  for: id,
  rest: z.strictObject(sheetSize).optional(),
  pieces: z.array(z.strictObject({ ...sheetRect, isTurned: z.literal(true).optional() })).min(1, 'has to have a piece'),
  kept: z.array(z.strictObject(sheetRect)),
});
/**
 * One sheet, or with `rest` a rest of one of that size, that is cut at the start of a batch; `for` is the batch's id. Pieces are of
 * the size that their casting says and take whole openings, from so far from the left and the upper edge on; turned, the width
 * of one lies along the sheet. What is kept is a rest from then on.
 */
export type PlanSheet = z.infer<typeof planSheet>;

const planBuy = z.strictObject({
  material: id,
  quantity: sum.gt(0, 'has to be more than 0'),
  orderBy: date,
  arrivesOn: date,
});
/** Whole packs of a material, bought on `orderBy` and there from 00:00 of `arrivesOn`: as late as will do (R10). */
export type PlanBuy = z.infer<typeof planBuy>;

const score = z.strictObject({
  unplannedWeight: sum,
  weightedDaysLate: sum,
  weightedDaysAfterWanted: sum,
  batches: count,
  bags: sum,
  weightedCompletionDays: sum,
});
/**
 * What plans are compared by, in this order: unplanned weight, weighted days late, weighted days after the dates wanted,
 * then batches, bags and completion together at the yard's own rates. Less is better in each.
 */
export type Score = z.infer<typeof score>;

/** What kinds of tasks can be firm; of each, what names one. */
const FIRM_TASKS = ['batch', 'strip', 'pack', 'prep', 'coat'] as const;

const droppedTask = z
  .strictObject({
    batch: id.optional(),
    strip: id.optional(),
    pack: id.optional(),
    prep: id.optional(),
    coat: id.optional(),
    at: instant,
    reason: z.string(),
  })
  .refine((task) => FIRM_TASKS.filter((kind) => task[kind] !== undefined).length === 1, {
    message: 'has to name exactly one of batch, strip, pack, prep, coat',
  });
/**
 * A firm task that the rules no longer allow (R13): a batch by its id, a strip, set-up or coat by its mould, a packing by its
 * order; `at` is when it was to start.
 */
export type DroppedTask = z.infer<typeof droppedTask>;

/**
 * The engine's answer: every task with its times, what each order gets, what to cut and to buy. Strict, for reading
 * plans of others; the engine's own are not read through it.
 */
export const planFile = z.strictObject({
  format: z.literal('mould-rota/plan'),
  version: z.literal(2),
  batches: z.array(planBatch),
  pours: z.array(planPour),
  coats: z.array(planCoat),
  strips: z.array(planStrip),
  unstripped: z.array(unstripped),
  orders: z.array(planOrder),
  unplanned: z.array(unplannedOrder),
  sticks: z.array(planStick),
  sheets: z.array(planSheet).optional(),
  buys: z.array(planBuy),
  dropped: z.array(droppedTask),
  score,
  bound: z.strictObject({ weightedDaysLate: sum }).optional(),
  memory: memoryInFile.optional(),
});
/** A plan once read or made. Never changed after that: pages and threads share it. */
export type PlanFile = z.infer<typeof planFile>;

const keptStrip = z.strictObject({ mould: id, pour: id.optional(), stripStart: instant, stripEnd: instant });
/** When a piece comes out of its mould: that of a pour which is firm or under way too, or the one that is in it now. */
export type KeptStrip = z.infer<typeof keptStrip>;

const keptPack = z.strictObject({ order: id, packStart: instant, packEnd: instant });
/** When an order is packed; one for each spell. */
export type KeptPack = z.infer<typeof keptPack>;

const keptPrep = z.strictObject({ mould: id, casting: id, prepStart: instant, prepEnd: instant });
/** A set-up for the next pour in its mould, which is not firm itself. */
export type KeptPrep = z.infer<typeof keptPrep>;

/**
 * What is fixed (R13), as it stood in an earlier plan: batches with the set-ups and fills of their pours, strips, packings,
 * set-ups of other pours, sealing coats. What a pour is for may change.
 */
export const keep = z.strictObject({
  batches: z.array(planBatch),
  pours: z.array(planPour),
  strips: z.array(keptStrip).optional(),
  packs: z.array(keptPack).optional(),
  preps: z.array(keptPrep).optional(),
  coats: z.array(planCoat).optional(),
});
/** What is fixed, once read. What can no longer stay is dropped by the plan, with its reason. */
export type Keep = z.infer<typeof keep>;

const begunPack = z.strictObject({
  ...keptPack.shape,
  fromFinished: planOrder.shape.fromFinished,
  part: z.boolean().optional(),
});

/** Work under way at the yard's `now` (R14): begun by then, done later, and never dropped. */
export const begun = z.strictObject({
  batches: z.array(planBatch).default([]),
  pours: z.array(planPour).default([]),
  strips: z.array(keptStrip).default([]),
  packs: z.array(begunPack).default([]),
  preps: z.array(keptPrep).default([]),
  coats: z.array(planCoat).default([]),
});
/** Work under way, once read. A packing names the finished pieces that it takes; `part`: more of it comes in later spells. */
export type Begun = z.infer<typeof begun>;
