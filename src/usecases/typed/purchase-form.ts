import type { StoredMaterial } from '../../../db/stores/material-store.ts';
import type { Fault } from '../../../shared/fault.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import { type AmountTyped, amountIn, amountTyped } from './amount-typed.ts';
import { type BagsCounted, bagsCounted } from './bags-counted.ts';
import { type DateReading, readDate } from './date-typed.ts';
import { type FormFields, wholeTyped } from './form-fields.ts';
import { tooFarText } from './last-day.ts';
import type { Measures } from './measures.ts';
import { moneyTyped } from './money-typed.ts';

/** A purchase as it was typed. */
export interface PurchaseTyped {
  material: string;
  quantity: AmountTyped;
  /** The day it is expected. */
  on: string;
  /** What all of it costs; empty when nobody wrote it down. */
  price: string;
}

/** The form of a purchase, to be read once its material, and so its unit, is known. */
export const purchaseTyped = (fields: FormFields): Outcome<PurchaseTyped> => {
  const { material = '', on = '', price = '' } = fields;
  return done({ material, quantity: amountIn(fields, 'quantity'), on, price });
};

interface Purchase {
  quantity: number;
  on: string;
  price: number | null;
}

/** What a purchase is of: its unit, and whether it comes in lengths, of which a share counts for nothing. */
type Bought = Pick<StoredMaterial, 'unit' | 'stickMm'>;

/** Why so much of a material cannot have been bought, or come; null where it can. */
export const shareOfStick = ({ stickMm }: Pick<Bought, 'stickMm'>, quantity: number): string | null =>
  stickMm === null || Number.isInteger(quantity) ? null : 'It comes in whole ones. Write a whole number.';

const quantityRead = (typed: AmountTyped, material: Bought, { system }: Measures): Outcome<number> => {
  const quantity = amountTyped(typed, material.unit, system);
  if (!quantity.ok) return refuse('quantity', quantity.reason);
  if (quantity.value === null) return refuse('quantity', 'How much was bought? Write a number.');
  const share = shareOfStick(material, quantity.value);
  if (share !== null) return refuse('quantity', share);
  return quantity.value > 0 ? done(quantity.value) : refuse('quantity', 'How much was bought? Write a number above 0.');
};

/** What the day of a delivery is read by; nobody waits for longer than is planned. */
export interface DeliveryReading extends DateReading {
  last: string;
}

const dayRead = (typed: string, how: DeliveryReading): Outcome<string> => {
  if (typed === '') return refuse('on', 'When is it expected? Write a day.');
  const on = readDate(typed, how);
  if (!on.ok) return refuse('on', on.reason);
  if (on.date > how.last) return refuse('on', tooFarText(how.last));
  return on.date >= how.today
    ? done(on.date)
    : refuse('on', 'That day has passed. If it has come already, count the stock instead.');
};

/** What was paid for all of some goods; null where the field is empty. */
export const priceRead = (typed: string, { currency }: Pick<Measures, 'currency'>): Outcome<number | null> => {
  const price = moneyTyped(typed, currency);
  return price.ok ? done(price.value) : refuse('price', price.reason);
};

/** How much of it, for which day and at what price; or everything that could not be read. */
export const purchaseRead = (
  typed: PurchaseTyped,
  material: Bought,
  measures: Measures,
  days: Omit<DeliveryReading, 'system' | 'english'>,
): Outcome<Purchase> => {
  const quantity = quantityRead(typed.quantity, material, measures);
  const on = dayRead(typed.on, { ...days, system: measures.system, english: measures.english });
  const price = priceRead(typed.price, measures);
  if (quantity.ok && on.ok && price.ok) return done({ quantity: quantity.value, on: on.value, price: price.value });
  const faults: Fault[] = [quantity, on, price].flatMap((one) => (one.ok ? [] : one.faults));
  return { ok: false, faults };
};

/** Which goods on their way; 0 stands for none of them. */
export const goodsTyped = ({ goods }: FormFields): Outcome<number> => done(wholeTyped(goods) ?? 0);

/** The day on which goods on their way are expected now. */
export const expectedTyped = ({ on = '' }: FormFields, how: DeliveryReading): Outcome<string> => dayRead(on, how);

/**
 * How much came, what of it was asked about already and is meant, the date on the bags (no field: as it keeps), and what was paid
 * for what came (`price`; no field, or as the page had it, `priceWas`: as it was bought).
 */
export interface CameTyped extends AmountTyped {
  sure?: string | undefined;
  useBy?: string | undefined;
  price?: string | undefined;
}

/** Goods that came, and how much of them, to be read once their unit is known. */
export const arrivedTyped = (fields: FormFields): Outcome<{ goods: number; came: CameTyped }> =>
  done({
    goods: wholeTyped(fields.goods) ?? 0,
    came: {
      ...{ ...amountIn(fields, 'came'), sure: fields.sure, useBy: fields.useBy },
      price: fields.price === fields.priceWas ? undefined : fields.price,
    },
  });

/** A material that was counted: how much there is, and what is left of opened ones; null where there was no field for it. */
export interface CountTyped {
  counted: AmountTyped;
  offcuts: string | null;
  /** Bags of one date, where they were counted one by one. */
  bags: readonly BagsCounted[];
  /** What the stock book had of it when the form was shown; null where the form does not say. */
  bookWas: string | null;
}

/** A count as it was typed, to be read once the material is known. */
export const countTyped = (fields: FormFields): Outcome<CountTyped & { material: string }> =>
  done({
    material: fields.material ?? '',
    counted: amountIn(fields, 'counted'),
    offcuts: fields.offcuts ?? null,
    bags: bagsCounted(fields, 'counted'),
    bookWas: fields.bookWas ?? null,
  });
