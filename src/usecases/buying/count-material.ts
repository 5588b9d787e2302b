import type { Tx } from '../../../db/open.ts';
import { setTyped } from '../../../db/stores/figure-store.ts';
import { materialById, updateMaterial } from '../../../db/stores/material-store.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { type AmountTyped, amountField, amountTyped, worthKeeping } from '../typed/amount-typed.ts';
import { measuresOf } from '../typed/measures.ts';

/** In words for the record: "25 oz" where it is a measure, the bare number where it is none. */
const figure = (quantity: number, unit: string, system: UnitSystem): string => {
  const { word, perUnit } = shownUnit(unit, system);
  const number = amountField(quantity, unit, system);
  return perUnit === 1 ? number : `${number} ${word}`;
};

interface Counted {
  name: string;
  now: string;
  before: string;
}

const count = async (tx: Tx, id: string, typed: AmountTyped): Promise<Outcome<Counted>> => {
  const material = await materialById(tx, id);
  if (!material) return refuse('material', 'That material is not in the stock book.');
  const { system } = await measuresOf(tx);
  const read = amountTyped(typed, material.unit, system);
  if (!read.ok) return refuse('counted', read.reason);
  if (read.value === null) return refuse('counted', 'How much is there? Write a number.');
  if (read.value === material.onHand) return refuse('counted', 'The stock book says so already. Nothing was changed.');
  await updateMaterial(tx, id, { onHand: read.value });
  const kept = worthKeeping(typed.text);
  await setTyped(tx, { kind: 'material', id, figure: 'onHand' }, kept);
  const words = (quantity: number) => figure(quantity, material.unit, system);
  return done({ name: material.name, now: kept ?? words(read.value), before: words(material.onHand) });
};

/** The maker has counted: the stock book says what is really in the yard. */
export const countMaterial = (
  context: UseCaseContext,
  id: string,
  typed: AmountTyped,
): Promise<Outcome<Changed<Counted>>> =>
  changing(
    context,
    { kind: 'counted', words: ({ name, now, before }) => `${name} counted: ${now} in the yard, not ${before}` },
    (tx) => count(tx, id, typed),
  );
