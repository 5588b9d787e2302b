import type { Tx } from '../../../db/open.ts';
import { setTyped } from '../../../db/stores/figure-store.ts';
import { materialById, type StoredMaterial, updateMaterial } from '../../../db/stores/material-store.ts';
import { offcutsOf } from '../../../db/stores/offcut-store.ts';
import { restsOf } from '../../../db/stores/rest-store.ts';
import { setOffcuts, setOnHand, setRests } from '../../../db/stores/stock-store.ts';
import type { Material } from '../../../shared/material.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import { amountField, amountTyped, worthKeeping } from '../typed/amount-typed.ts';
import { WHOLE_ONES, WHOLE_SHEETS } from '../typed/material-form.ts';
import { measuresOf } from '../typed/measures.ts';
import { offcutsText, offcutsTyped } from '../typed/offcuts-typed.ts';
import type { CountTyped } from '../typed/purchase-form.ts';
import { sizesText, sizesTyped } from '../typed/sizes-typed.ts';
import { bookOf } from '../typed/stock-book.ts';

type Offcuts = NonNullable<Material['offcuts']>;
type Rests = NonNullable<Material['rests']>;

/** What was there by the stock book, and what is. */
interface Count {
  onHand: number;
  offcuts: Offcuts;
  rests: Rests;
}

/** In words for the record: "25 oz" where it is a measure, the bare number where it is none. */
const figure = (quantity: number, unit: string, system: UnitSystem): string => {
  const { word, perUnit } = shownUnit(unit, system);
  const number = amountField(quantity, unit, system);
  return perUnit === 1 ? number : `${number} ${word}`;
};

const isCut = ({ stickMm, inSheets }: StoredMaterial): boolean => stickMm !== null || inSheets === true;

/** The same of what is cut: "2 whole, offcuts 2232 mm". */
const wordsOf = (material: StoredMaterial, { onHand, offcuts, rests }: Count, system: UnitSystem): string => {
  const whole = figure(onHand, material.unit, system);
  if (!isCut(material)) return whole;
  const lengths = offcuts.length === 0 ? '' : `, offcuts ${offcutsText(offcuts, system)}`;
  const sizes = material.inSheets && rests.length > 0 ? `, rests ${sizesText(rests, system)}` : '';
  return `${whole} whole${lengths}${sizes}`;
};

const MEANWHILE = 'The stock book was changed meanwhile.';

/** A material that was counted, with what the book has of it now and had before, in words. */
export interface Counted {
  name: string;
  now: string;
  before: string;
}

/** What is left of opened ones, as it was typed: offcuts, or rests of sheets. */
const leftRead = (
  { stickMm, inSheets }: StoredMaterial,
  typed: string,
  before: Count,
  system: UnitSystem,
): Outcome<Pick<Count, 'offcuts' | 'rests'>> => {
  if (inSheets) {
    if (typed === sizesText(before.rests, system)) return done(before);
    const sizes = sizesTyped(typed, system);
    return sizes.ok ? done({ ...before, rests: sizes.value }) : refuse('offcuts', sizes.reason);
  }
  const lengths = offcutsTyped(typed, { system, before: before.offcuts, stickMm: stickMm ?? 0 });
  return lengths.ok ? done({ ...before, offcuts: lengths.value }) : refuse('offcuts', lengths.reason);
};

/** How much there is. Of what is cut it may be left out where only what is left of it was counted. */
const countRead = (
  material: StoredMaterial,
  { counted, offcuts }: CountTyped,
  before: Count,
  system: UnitSystem,
): Outcome<Count> => {
  const read = amountTyped(counted, material.unit, system);
  if (!read.ok) return refuse('counted', read.reason);
  if (isCut(material) && read.value !== null && !Number.isInteger(read.value))
    return refuse('counted', material.inSheets ? WHOLE_SHEETS : WHOLE_ONES);
  if (!isCut(material) || offcuts === null)
    return read.value === null
      ? refuse('counted', 'How much is there? Write a number.')
      : done({ ...before, onHand: read.value });
  const left = leftRead(material, offcuts, before, system);
  return left.ok ? done({ ...left.value, onHand: read.value ?? material.onHand }) : left;
};

/** Somebody else counted it meanwhile, or work was recorded that took from it: what was counted may be of before that. */
const changedSince = (was: string | null, before: Count, words: string): Outcome<null> => {
  if (was === null || was === bookOf(before)) return done(null);
  return refuse(
    'counted',
    `${MEANWHILE} It is ${words} now. What you typed still stands here: send it again to have it so.`,
  );
};

/**
 * One material is as it was counted, as part of a change at an instant: of what is cut the whole ones and what is left of others. Refused at
 * `counted` or `offcuts` where that cannot be read, or where the book is another one than the form was shown for; null where it
 * says so already.
 */
export const countOne = async (tx: Tx, id: string, typed: CountTyped, at: string): Promise<Outcome<Counted | null>> => {
  const material = await materialById(tx, id);
  if (!material) return refuse('material', 'That material is not in the stock book.');
  const { system } = await measuresOf(tx);
  const before = { onHand: material.onHand, offcuts: await offcutsOf(tx, id), rests: await restsOf(tx, id) };
  const read = countRead(material, typed, before, system);
  if (!read.ok) return read;
  const { onHand, offcuts, rests } = read.value;
  const isSame = bookOf(read.value) === bookOf(before);
  if (isSame && material.shortBy === 0) return done(null);
  const since = isSame ? done(null) : changedSince(typed.bookWas, before, wordsOf(material, before, system));
  if (!since.ok) return since;
  await updateMaterial(tx, id, { shortBy: 0 });
  await setOnHand(tx, id, onHand, { kind: 'counted', at });
  await setOffcuts(tx, id, offcuts, { kind: 'counted', at });
  await setRests(tx, id, rests, { kind: 'counted', at });
  const kept = worthKeeping(typed.counted.text);
  await setTyped(tx, { kind: 'material', id, figure: 'onHand' }, kept);
  const now = (isCut(material) ? null : kept) ?? wordsOf(material, read.value, system);
  return done({ name: material.name, now, before: wordsOf(material, before, system) });
};
