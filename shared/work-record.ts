import { z } from 'zod';
import { PART_CONDITIONS, partName } from './mould-part.ts';
import { amount, celsius, id, wholePositive } from './number.ts';
import { PHOTO_TYPES, photoName } from './photo.ts';
import { pieceMark } from './piece-mark.ts';
import { CAME_OUT } from './piece-to-mend.ts';
import { date, instant } from './time.ts';

/** What can be said of a mould that goes into its history. The sealing coat is work of its own. */
const MARKED = ['cleaned', 'damaged', 'mended', 'scrapped', 'serviced'] as const;

const reason = z.string().min(1, 'is empty').optional();
const poured = z.strictObject({ mould: id, casting: id, filledAt: instant, order: id.optional() });
/**
 * What the bags of one material are of: the date on them, `typed` where somebody read it off at the mixer and `dated` where the
 * stock book knows it; with neither the day they came, of bags of which nobody knows a date.
 */
const bagDate = z.strictObject({
  material: id,
  on: date,
  typed: z.literal(true).optional(),
  dated: z.literal(true).optional(),
});
const batch = {
  at: instant,
  mix: id,
  bags: amount,
  pours: z.array(poured).min(1),
  bagDates: z.array(bagDate).optional(),
};
const few = z.string().min(1, 'is empty');
/** Whose doing it was, by the name chosen on the device it was recorded on. */
const who = { doneBy: few.optional() };
/** What was not by the recipe, or was read or measured: litres in all, temperatures of the mortar and of the air, who mixed. */
const told = {
  ...{ waterLitres: amount.optional(), mortarCelsius: celsius.optional(), airCelsius: celsius.optional() },
  ...{ by: few.optional(), note: few.optional() },
};
/** When it was tapped as done, where it was just then; and when it was begun, where a tap tells that too. */
const timed = { tappedAt: instant.optional(), workedFrom: instant.optional() };
/** A piece is known by its mould and by when that was full. Everything is called as it was called then. */
const piece = { at: instant, mould: id, casting: id, filledAt: instant, reason };
/** A piece that went into an order, by its mark; and how many of a kind did of which nobody knows the mark. */
const tracked = pieceMark.extend({ casting: id });
const counted = z.strictObject({ casting: id, count: wholePositive });

/**
 * One thing that was done, as it was recorded and for good: no plan reads it. `at` is when it was done, of a batch when its
 * last mould was full, `mixedFrom` when somebody said that it was being mixed, and `mixedAt` that it was. `mayFrom` of a strip is when it was to be hard
 * by the figures of then; what was looked at and not hard says so. A piece may come out of its mould to be mended,
 * and be mended or scrapped later; what is packed for an order may be unpacked.
 */
export const workRecord = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('poured'),
    ...who,
    ...batch,
    ...told,
    mixedFrom: instant.optional(),
    mixedAt: instant.optional(),
    tappedAt: timed.tappedAt,
  }),
  z.strictObject({ kind: z.literal('mixing begun'), ...who, at: instant, moulds: z.array(id).min(1) }),
  z.strictObject({ kind: z.literal('mixed'), ...who, at: instant, moulds: z.array(id).min(1) }),
  z.strictObject({ kind: z.literal('thrown away'), ...who, ...batch }),
  z.strictObject({
    kind: z.literal('stripped'),
    ...who,
    ...piece,
    ...timed,
    mayFrom: instant.optional(),
    cameOut: z.enum(CAME_OUT),
  }),
  z.strictObject({ kind: z.literal('not hard'), ...who, at: instant, mould: id, casting: id, filledAt: instant }),
  z.strictObject({ kind: z.literal('set up'), ...who, at: instant, mould: id, casting: id, ...timed }),
  z.strictObject({ kind: z.literal('after mending'), ...who, ...piece, cameOut: z.enum(['good', 'scrap']) }),
  z.strictObject({ kind: z.literal('coated'), ...who, at: instant, mould: id }),
  z.strictObject({
    kind: z.literal('packed'),
    ...who,
    at: instant,
    order: id,
    pieces: z.array(tracked),
    others: z.array(counted),
  }),
  z.strictObject({ kind: z.literal('unpacked'), ...who, at: instant, order: id }),
  z.strictObject({ kind: z.literal('marked'), ...who, at: instant, mould: id, mark: z.enum(MARKED), reason }),
  z.strictObject({
    kind: z.literal('photo'),
    ...who,
    ...{ at: instant, mould: id, casting: id, filledAt: instant, photo: photoName, type: z.enum(PHOTO_TYPES) },
  }),
  z.strictObject({
    kind: z.literal('photo removed'),
    ...who,
    ...{ at: instant, mould: id, casting: id, filledAt: instant, photo: photoName },
  }),
  z.strictObject({
    kind: z.literal('part'),
    ...who,
    ...{ at: instant, mould: id, part: partName, condition: z.enum(PART_CONDITIONS), reason },
    /** What it made of the whole mould. */
    mark: z.enum(['damaged', 'mended']).optional(),
  }),
]);
/** A record once read. */
export type WorkRecord = z.infer<typeof workRecord>;

/** The moulds that something was done to; to begin a mix, or to pack, does nothing to any. */
export const mouldsOfRecord = (record: WorkRecord): string[] => {
  if (
    record.kind === 'packed' ||
    record.kind === 'unpacked' ||
    record.kind === 'mixing begun' ||
    record.kind === 'mixed'
  )
    return [];
  return 'pours' in record ? record.pours.map(({ mould }) => mould) : [record.mould];
};
