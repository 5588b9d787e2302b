import { customers } from '../../../db/stores/customer-store.ts';
import { orderById, type StoredOrder } from '../../../db/stores/order-store.ts';
import { type Slip, slipOfWeight } from '../../../shared/order.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { amountField } from '../typed/amount-typed.ts';
import { measuresOf, showMeasures } from '../typed/measures.ts';
import type { OrderReading } from '../typed/order-form.ts';
import { whatOf } from '../typed/what-ordered.ts';
import { type Offer, offersOf } from './order-contents.ts';

/** A line of an order in its fields: `was` says exactly what the quantity is, in the unit it is kept in. */
interface OrderFormLine {
  what: string;
  quantity: string;
  was: string;
}

/** How the fields of an order that is there stand; '' for what is not said. */
export interface OrderFormFields extends Record<'customer' | 'phone' | 'address' | 'note', string> {
  wantedOn: string;
  notBefore: string;
  promisedOn: string;
  heldUntil: string;
  slip: Slip;
  lines: readonly OrderFormLine[];
}

/** What the form for an order has to offer. */
export interface OrderFormModel extends PageHead {
  offers: readonly Offer[];
  /** Names offered while a customer is typed. */
  customers: readonly string[];
  /** Null for a new one. */
  order: OrderFormFields | null;
}

/** How the fields of an order stand. */
export const orderFormFields = (order: StoredOrder, offers: readonly Offer[], system: UnitSystem): OrderFormFields => {
  const keptIn = (what: string) => offers.find((offer) => offer.what === what)?.keptIn ?? '';
  return {
    customer: order.customer?.name ?? '',
    phone: order.customer?.phone ?? '',
    note: order.note ?? '',
    address: order.address ?? '',
    wantedOn: order.wantedOn ?? '',
    notBefore: order.notBefore ?? '',
    promisedOn: order.promisedOn ?? '',
    heldUntil: order.heldUntil ?? '',
    slip: slipOfWeight(order.weight),
    lines: order.lines.map((line) => ({
      what: whatOf(line),
      quantity: amountField(line.quantity, keptIn(whatOf(line)), system),
      was: String(line.quantity),
    })),
  };
};

/** What a form was filled in from, to be sent along with it: another text where the order was changed since. */
export const orderVersion = (fields: OrderFormFields): string => JSON.stringify(fields);

/** What the form for an order offers, and, for one that is there already, how its fields stand. Null when it is not. */
export const showOrderForm = async (context: UseCaseContext, id: string | null): Promise<OrderFormModel | null> => {
  const { yard } = await currentPlan(context);
  const { known, order, system } = await context.database.read(async (tx) => ({
    known: await customers(tx),
    order: id === null ? null : await orderById(tx, id),
    system: (await measuresOf(tx)).system,
  }));
  if (id !== null && order?.status !== 'open') return null;
  const offers = offersOf(yard, system);
  return {
    yardName: yard.yard.name,
    today: today(yard.yard.timeZone, context.now),
    offers,
    customers: [...new Set(known.map(({ name }) => name))],
    order: order && orderFormFields(order, offers, system),
  };
};

const isTexts = (value: unknown): value is Record<string, string> =>
  value !== null && typeof value === 'object' && Object.values(value).every((text) => typeof text === 'string');

const isFormFields = (value: unknown): value is OrderFormFields => {
  if (value === null || typeof value !== 'object' || !('lines' in value)) return false;
  const { lines, ...fields } = value;
  return Array.isArray(lines) && lines.every(isTexts) && isTexts(fields);
};

/** The fields that a version was made of; null where it is none. */
export const orderAtVersion = (version = ''): OrderFormFields | null => {
  try {
    const fields: unknown = JSON.parse(version);
    return isFormFields(fields) ? fields : null;
  } catch {
    return null;
  }
};

/** What an order that is typed in this yard is read by. */
export const orderReading = async (context: UseCaseContext): Promise<OrderReading> => {
  const { yard } = await currentPlan(context);
  const { system, english } = await showMeasures(context);
  const units = new Map(offersOf(yard, system).map(({ what, keptIn }) => [what, keptIn]));
  return { today: today(yard.yard.timeZone, context.now), system, english, keptIn: (what) => units.get(what) ?? '' };
};
