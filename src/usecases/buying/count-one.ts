import type { Tx } from '../../../db/open.ts';
import { setTyped } from '../../../db/stores/figure-store.ts';
import { materialById, type StoredMaterial, updateMaterial } from '../../../db/stores/material-store.ts';
import { offcutsOf } from '../../../db/stores/offcut-store.ts';
import { restsOf } from '../../../db/stores/rest-store.ts';
import { lotsByMaterial, setOffcuts, setOnHand, setRests } from '../../../db/stores/stock-store.ts';
import type { Lots } from '../../../shared/bags.ts';
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
import { type BagsSeen, bagsSeen, bagsWords, bookBags, moreBags } from './count-bags.ts';

type Offcuts = NonNullable<Material['offcuts']>;
type Rests = NonNullable<Material['rests']>;

/** What was there by the stock book, and what is. */
interface Count {
  onHand: number;
  offcuts: Offcuts;
  rests: Rests;
  lots: Lots;
}

/** Sums of fractions are not exact: so little is no difference. */
const ROUNDING = 1e-6;

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

/** All of it by its bags: what was written for all has to be the same, where anything was. */
const allByBags = (
  read: number | null,
  before: Count,
  seen: readonly BagsSeen[],
  material: StoredMaterial,
  system: UnitSystem,
): Outcome<Count> => {
  const onHand = before.onHand + moreBags(seen);
  if (read === null || Math.abs(read - onHand) < ROUNDING) return done({ ...before, onHand });
  return refuse(
    'counted',
    `By their dates they come to ${figure(onHand, material.unit, system)}. Write the same here, or leave it empty.`,
  );
};

/** How much there is. Of what is cut it may be left out where only what is left of it was counted. */
const countRead = (
  material: StoredMaterial,
  { counted, offcuts }: CountTyped,
  before: Count,
  { seen, system }: { seen: readonly BagsSeen[]; system: UnitSystem },
): Outcome<Count> => {
  const read = amountTyped(counted, material.unit, system);
  if (!read.ok) return refuse('counted', read.reason);
  if (isCut(material) && read.value !== null && !Number.isInteger(read.value))
    return refuse('counted', material.inSheets ? WHOLE_SHEETS : WHOLE_ONES);
  if (seen.length > 0) return allByBags(read.value, before, seen, material, system);
  if (!isCut(material) || offcuts === null)
    return read.value === null
      ? refuse('counted', 'How much is there? Write a number.')
      : done({ ...before, onHand: read.value });
  const left = leftRead(material, offcuts, before, system);
  return left.ok ? done({ ...before, ...left.value, onHand: read.value ?? material.onHand }) : left;
};

/** Somebody else counted it meanwhile, or work was recorded that took from it: what was counted may be of before that. */
const changedSince = (was: string | null, before: Count, words: string): Outcome<null> => {
  if (was === null || was === bookOf(before)) return done(null);
  return refuse(
    'counted',
    `${MEANWHILE} It is ${words} now. What you typed still stands here: send it again to have it so.`,
  );
};

const inBook = async (tx: Tx, { id, onHand }: StoredMaterial): Promise<Count> => ({
  ...{ onHand, offcuts: await offcutsOf(tx, id), rests: await restsOf(tx, id) },
  lots: (await lotsByMaterial(tx, id)).get(id) ?? [],
});

/**
 * One material is as it was counted, as part of a change at an instant: of what is cut the whole ones and what is left of others. Refused at
 * `counted`, `offcuts` or the field of its bags (`Bags0`) where that cannot be read, or where the book is another one than the form was shown for; null where it
 * says so already.
 */
export const countOne = async (tx: Tx, id: string, typed: CountTyped, at: string): Promise<Outcome<Counted | null>> => {
  const material = await materialById(tx, id);
  if (!material) return refuse('material', 'That material is not in the stock book.');
  const { system } = await measuresOf(tx);
  const before = await inBook(tx, material);
  const bags = bagsSeen({ ...before, unit: material.unit }, typed.bags, system);
  if (!bags.ok) return bags;
  const seen = bags.value;
  const read = countRead(material, typed, before, { seen, system });
  if (!read.ok) return read;
  const { onHand, offcuts, rests } = read.value;
  const isSame = bookOf(read.value) === bookOf(before) && seen.every((one) => one.now === one.before);
  if (isSame && material.shortBy === 0) return done(null);
  const since = isSame ? done(null) : changedSince(typed.bookWas, before, wordsOf(material, before, system));
  if (!since.ok) return since;
  await updateMaterial(tx, id, { shortBy: 0 });
  await bookBags(tx, id, seen, at);
  await setOnHand(tx, id, onHand, { kind: 'counted', at });
  await setOffcuts(tx, id, offcuts, { kind: 'counted', at });
  await setRests(tx, id, rests, { kind: 'counted', at });
  if (seen.length > 0) {
    await setTyped(tx, { kind: 'material', id, figure: 'onHand' }, null);
    const words = (which: 'now' | 'before') => bagsWords(seen, which, { ...before, unit: material.unit }, system);
    return done({ name: material.name, now: words('now'), before: words('before') });
  }
  const kept = worthKeeping(typed.counted.text);
  await setTyped(tx, { kind: 'material', id, figure: 'onHand' }, kept);
  const now = (isCut(material) ? null : kept) ?? wordsOf(material, read.value, system);
  return done({ name: material.name, now, before: wordsOf(material, before, system) });
};
