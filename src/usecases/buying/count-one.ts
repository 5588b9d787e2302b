import type { Tx } from '../../../db/open.ts';
import { setTyped } from '../../../db/stores/figure-store.ts';
import { materialById, type StoredMaterial, updateMaterial } from '../../../db/stores/material-store.ts';
import { offcutsOf } from '../../../db/stores/offcut-store.ts';
import { setOffcuts, setOnHand } from '../../../db/stores/stock-store.ts';
import type { Material } from '../../../shared/material.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import { amountField, amountTyped, worthKeeping } from '../typed/amount-typed.ts';
import { WHOLE_ONES } from '../typed/material-form.ts';
import { measuresOf } from '../typed/measures.ts';
import { offcutsText, offcutsTyped } from '../typed/offcuts-typed.ts';
import type { CountTyped } from '../typed/purchase-form.ts';
import { bookOf } from '../typed/stock-book.ts';

type Offcuts = NonNullable<Material['offcuts']>;

/** What was there by the stock book, and what is. */
interface Count {
  onHand: number;
  offcuts: Offcuts;
}

/** In words for the record: "25 oz" where it is a measure, the bare number where it is none. */
const figure = (quantity: number, unit: string, system: UnitSystem): string => {
  const { word, perUnit } = shownUnit(unit, system);
  const number = amountField(quantity, unit, system);
  return perUnit === 1 ? number : `${number} ${word}`;
};

/** The same of sticks: "2 whole, offcuts 2232 mm". */
const wordsOf = ({ unit, stickMm }: StoredMaterial, { onHand, offcuts }: Count, system: UnitSystem): string => {
  if (stickMm === null) return figure(onHand, unit, system);
  const rests = offcuts.length === 0 ? '' : `, offcuts ${offcutsText(offcuts, system)}`;
  return `${figure(onHand, unit, system)} whole${rests}`;
};

const MEANWHILE = 'The stock book was changed meanwhile.';

/** A material that was counted, with what the book has of it now and had before, in words. */
export interface Counted {
  name: string;
  now: string;
  before: string;
}

/** How much there is. Of sticks it may be left out where only their offcuts were counted. */
const countRead = (
  { unit, stickMm, onHand }: StoredMaterial,
  { counted, offcuts }: CountTyped,
  before: Count,
  system: UnitSystem,
): Outcome<Count> => {
  const read = amountTyped(counted, unit, system);
  if (!read.ok) return refuse('counted', read.reason);
  if (stickMm !== null && read.value !== null && !Number.isInteger(read.value)) return refuse('counted', WHOLE_ONES);
  if (stickMm === null || offcuts === null)
    return read.value === null
      ? refuse('counted', 'How much is there? Write a number.')
      : done({ ...before, onHand: read.value });
  const rests = offcutsTyped(offcuts, { system, before: before.offcuts, stickMm });
  if (!rests.ok) return refuse('offcuts', rests.reason);
  return done({ onHand: read.value ?? onHand, offcuts: rests.value });
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
 * One material is as it was counted, as part of a change at an instant: of sticks the whole ones and the offcuts. Refused at
 * `counted` or `offcuts` where that cannot be read, or where the book is another one than the form was shown for; null where it
 * says so already.
 */
export const countOne = async (tx: Tx, id: string, typed: CountTyped, at: string): Promise<Outcome<Counted | null>> => {
  const material = await materialById(tx, id);
  if (!material) return refuse('material', 'That material is not in the stock book.');
  const { system } = await measuresOf(tx);
  const before = { onHand: material.onHand, offcuts: await offcutsOf(tx, id) };
  const read = countRead(material, typed, before, system);
  if (!read.ok) return read;
  const { onHand, offcuts } = read.value;
  const isSame = onHand === before.onHand && JSON.stringify(offcuts) === JSON.stringify(before.offcuts);
  if (isSame && material.shortBy === 0) return done(null);
  const since = isSame ? done(null) : changedSince(typed.bookWas, before, wordsOf(material, before, system));
  if (!since.ok) return since;
  await updateMaterial(tx, id, { shortBy: 0 });
  await setOnHand(tx, id, onHand, { kind: 'counted', at });
  await setOffcuts(tx, id, offcuts, { kind: 'counted', at });
  const kept = worthKeeping(typed.counted.text);
  await setTyped(tx, { kind: 'material', id, figure: 'onHand' }, kept);
  const now = (material.stickMm === null ? kept : null) ?? wordsOf(material, read.value, system);
  return done({ name: material.name, now, before: wordsOf(material, before, system) });
};
