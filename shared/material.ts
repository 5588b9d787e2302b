import { z } from 'zod';
import { amount, days, id, perOne, positive, wholePositive } from './number.ts';
import { date, instant } from './time.ts';

const lot = z.strictObject({ quantity: positive, useBy: date.optional(), openedAt: instant.optional() });
type Lot = z.infer<typeof lot>;

/**
 * Lots of one date and one opening are one lot, and what has neither is the same as what no lot accounts for. As a book that adds up
 * its lines has them.
 */
const oneOfEach = (lots: readonly Lot[]): Lot[] => {
  const known = new Map<string, Lot>();
  for (const one of lots) {
    if (one.useBy === undefined && one.openedAt === undefined) continue;
    const key = `${one.useBy} ${one.openedAt}`;
    known.set(key, { ...one, quantity: one.quantity + (known.get(key)?.quantity ?? 0) });
  }
  return [...known.values()];
};

/**
 * Something bought and used up (R10). Quantities count `unit`s, a word of the maker's own; it is bought in whole
 * `pack`s. Without `leadDays` it cannot be bought, with 0 it is there the same day. `minimum` is what always has to be
 * left. It keeps `shelfLifeDays` from the day it comes; `lots` are parts of what is on hand that have a date or are opened, and
 * where it says `openedDays` it is opened by `opensBy` and keeps so many days then. With `stickMm` a unit is a stick that is cut, each cut but the last of a stick losing `kerfMm`; `offcuts` are what
 * is left of sticks that were opened, and are cut like sticks of their length. With `sheetWidthMm` and
 * `sheetLengthMm` it comes as sheets or rolls of that size, of a mesh whose wires are `meshMm` apart; `rests` are what is left
 * of opened ones. Where it is `inSheets` a unit is a sheet that is cut, and plans count sheets.
 */
export const material = z.strictObject({
  id,
  name: z.string(),
  unit: z.string(),
  onHand: amount,
  pack: positive.default(1),
  leadDays: days.optional(),
  minimum: amount.default(0),
  unitPrice: amount.optional(),
  supplier: z.string().optional(),
  shelfLifeDays: days.optional(),
  lots: z.array(lot).transform(oneOfEach).optional(),
  opensBy: positive.optional(),
  openedDays: days.optional(),
  stickMm: positive.optional(),
  kerfMm: amount.default(0),
  offcuts: z.array(z.strictObject({ lengthMm: positive, count: wholePositive })).optional(),
  sheetWidthMm: positive.optional(),
  sheetLengthMm: positive.optional(),
  meshMm: positive.optional(),
  rests: z.array(z.strictObject({ widthMm: positive, lengthMm: positive, count: wholePositive })).optional(),
  inSheets: z.boolean().optional(),
});
/** A material once read: every default filled in (packs of 1, none to be kept, no kerf). */
export type Material = z.infer<typeof material>;

/**
 * Whether a unit of a material is a whole stick or sheet that is cut up: a share of one counts for nothing, and none has a date.
 *
 * Example: `isCutUp({ stickMm: 3000 })` is true, and so is `isCutUp({ inSheets: true })`; `isCutUp({})` is false.
 */
export const isCutUp = ({ stickMm, inSheets }: Pick<Material, 'stickMm' | 'inSheets'>): boolean =>
  stickMm !== undefined || inSheets === true;

/**
 * Bought already, there from the time of `on` by which the yard is brought things; where that date has passed it is overdue, and not
 * there. Counts in the material's unit.
 */
export const incoming = z.strictObject({ material: id, quantity: amount, on: date });

/** So much of a material, in the unit that it counts in; 0 is allowed and takes nothing. */
export const materialQuantity = z.strictObject({ material: id, quantity: amount });
/** A quantity once read. Whether the material exists is checked apart, by `referenceFaults`. */
export type MaterialQuantity = z.infer<typeof materialQuantity>;

/**
 * `count` pieces of `lengthMm` cut from sticks of a material; the material has to have `stickMm`, no shorter than the
 * piece.
 */
export const cut = z.strictObject({ material: id, lengthMm: positive, count: perOne });
/** A cut once read. On which stick it lies is the plan's to say. */
export type Cut = z.infer<typeof cut>;

/**
 * `count` pieces of so many millimetres cut from sheets of a material, which has to have a size. Where that is not `inSheets`,
 * how sheets are cut up is shown; a plan counts what `perPiece` says.
 */
export const sheetCut = z.strictObject({
  material: id,
  widthMm: positive,
  lengthMm: positive,
  count: perOne,
  mayTurn: z.boolean().default(true),
});
/** A piece of a sheet once read. On which sheet it lies is the plan's to say. */
export type SheetCut = z.infer<typeof sheetCut>;
