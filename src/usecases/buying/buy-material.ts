import type { Tx } from '../../../db/open.ts';
import { setTyped } from '../../../db/stores/figure-store.ts';
import { addIncoming, materialById } from '../../../db/stores/material-store.ts';
import type { Fault } from '../../../shared/fault.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { type AmountTyped, amountTyped, worthKeeping } from '../typed/amount-typed.ts';
import { type DateReading, readDate } from '../typed/date-typed.ts';
import { type Measures, measuresOf } from '../typed/measures.ts';
import { moneyTyped } from '../typed/money-typed.ts';

/** A purchase as it was typed. */
export interface PurchaseTyped {
  material: string;
  quantity: AmountTyped;
  /** The day it is expected. */
  on: string;
  /** What all of it costs; empty when nobody wrote it down. */
  price: string;
}

interface Purchase {
  quantity: number;
  on: string;
  price: number | null;
}

const quantityRead = (typed: AmountTyped, unit: string, { system }: Measures): Outcome<number> => {
  const quantity = amountTyped(typed, unit, system);
  if (!quantity.ok) return refuse('quantity', quantity.reason);
  if (quantity.value === null) return refuse('quantity', 'How much was bought? Write a number.');
  return quantity.value > 0 ? done(quantity.value) : refuse('quantity', 'How much was bought? Write a number above 0.');
};

const dayRead = (typed: string, how: DateReading): Outcome<string> => {
  if (typed === '') return refuse('on', 'When is it expected? Write a day.');
  const on = readDate(typed, how);
  if (!on.ok) return refuse('on', on.reason);
  return on.date >= how.today
    ? done(on.date)
    : refuse('on', 'That day has passed. If it has come already, count the stock instead.');
};

const priceRead = (typed: string, { currency }: Measures): Outcome<number | null> => {
  const price = moneyTyped(typed, currency);
  return price.ok ? done(price.value) : refuse('price', price.reason);
};

const purchaseRead = (typed: PurchaseTyped, unit: string, measures: Measures, day: string): Outcome<Purchase> => {
  const quantity = quantityRead(typed.quantity, unit, measures);
  const on = dayRead(typed.on, { today: day, system: measures.system });
  const price = priceRead(typed.price, measures);
  if (quantity.ok && on.ok && price.ok) return done({ quantity: quantity.value, on: on.value, price: price.value });
  const faults: Fault[] = [quantity, on, price].flatMap((one) => (one.ok ? [] : one.faults));
  return { ok: false, faults };
};

/** What was typed for goods on their way stands beside their material: "2 lb" is seen again as "2 lb". */
export const incomingFigure = (material: string, id: number) =>
  ({ kind: 'material', id: material, figure: `incoming ${id}` }) as const;

const bought = async (tx: Tx, typed: PurchaseTyped, day: string): Promise<Outcome<{ name: string }>> => {
  const material = await materialById(tx, typed.material);
  if (!material) return refuse('material', 'Choose what was bought from the list.');
  const purchase = purchaseRead(typed, material.unit, await measuresOf(tx), day);
  if (!purchase.ok) return purchase;
  const id = await addIncoming(tx, { material: material.id, ...purchase.value, boughtOn: day });
  const kept = worthKeeping(typed.quantity.text);
  if (kept !== null) await setTyped(tx, incomingFigure(material.id, id), kept);
  return done({ name: material.name });
};

/** It is bought, and on its way until it arrives. */
export const buyMaterial = (
  context: UseCaseContext,
  typed: PurchaseTyped,
): Promise<Outcome<Changed<{ name: string }>>> =>
  changing(context, { kind: 'bought', words: ({ name }) => `${name} bought` }, (tx, yard) =>
    bought(tx, typed, today(yard.yard.timeZone, context.now)),
  );
