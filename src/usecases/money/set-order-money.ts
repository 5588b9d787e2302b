import type { Tx } from '../../../db/open.ts';
import { habitsOfYard } from '../../../db/stores/habits-store.ts';
import { addPayment, moneyOfOrder, removePayment, setMoneyOfOrder } from '../../../db/stores/money-store.ts';
import { orderById, type StoredOrder } from '../../../db/stores/order-store.ts';
import type { PaperKind } from '../../../shared/money.ts';
import { thereIsNo } from '../../../shared/said-back.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { orderName } from '../orders/open-order.ts';
import { type Changed, changing, type DoChange } from '../plan/changing.ts';
import { dateReading } from '../plan/date-reading.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { paymentTyped, priceTyped } from '../typed/order-money-form.ts';
import { costGround } from './cost-ground.ts';
import { wholeOrder } from './order-lines.ts';
import { nextPaper } from './papers.ts';
import { keptEstimateOf, quoteOf } from './quote.ts';

interface Priced {
  name: string;
}

/** Money moves no date: the plan goes on as it was. */
const changingMoney = (
  context: UseCaseContext,
  kind: string,
  words: (name: string) => string,
  work: DoChange<Priced>,
): Promise<Outcome<Changed<Priced>>> =>
  changing(context, { kind, words: ({ name }) => words(name) }, work, { carryOn: (plan) => plan });

/** The order that has the money: a part that went out before the rest has none of its own. */
const orderWithMoney = async (tx: Tx, id: string): Promise<Outcome<StoredOrder>> => {
  const order = await orderById(tx, id);
  if (!order) return refuse('order', thereIsNo('order', id));
  if (order.partOf !== null)
    return refuse('order', `Order ${id} is part of ${order.partOf}: its money stands there. Nothing was changed.`);
  return done(order);
};

/** What is asked for an order, and what of it beforehand; what it is reckoned to cost is kept with it, as long as it is open. */
export const priceOrder = async (context: UseCaseContext, id: string, fields: FormFields) => {
  const ground = await costGround(context);
  return changingMoney(
    context,
    'order priced',
    (name) => `Price for ${name} changed`,
    async (tx) => {
      const found = await orderWithMoney(tx, id);
      if (!found.ok) return found;
      const { currency } = await habitsOfYard(tx);
      const read = priceTyped(fields, currency);
      if (!read.ok) return read;
      const whole = await wholeOrder(tx, id, ground);
      const isOpen = found.value.status === 'open' && read.value.price !== null;
      const kept = whole && isOpen ? { estimate: keptEstimateOf(whole.cost, currency, context.now) } : {};
      await setMoneyOfOrder(tx, id, { ...read.value, ...kept });
      return done({ name: orderName(found.value) });
    },
  );
};

/** A payment that came, or went back. */
export const payOrder = async (context: UseCaseContext, id: string, fields: FormFields) => {
  const how = await dateReading(context);
  return changingMoney(
    context,
    'payment recorded',
    (name) => `Payment of ${name} recorded`,
    async (tx) => {
      const found = await orderWithMoney(tx, id);
      if (!found.ok) return found;
      const read = paymentTyped(fields, (await habitsOfYard(tx)).currency, how);
      if (!read.ok) return read;
      await addPayment(tx, id, read.value);
      return done({ name: orderName(found.value) });
    },
  );
};

/** A payment was put down by mistake. */
export const unpayOrder = (context: UseCaseContext, id: string, { payment = '' }: FormFields) =>
  changingMoney(
    context,
    'payment removed',
    (name) => `Payment of ${name} removed`,
    async (tx) => {
      const found = await orderWithMoney(tx, id);
      if (!found.ok) return found;
      const own = (await moneyOfOrder(tx, id)).payments.find((one) => String(one.id) === payment);
      if (!own) return refuse('order', 'That payment is not there any more. Nothing was changed.');
      await removePayment(tx, own.id);
      return done({ name: orderName(found.value) });
    },
  );

const SENT = {
  quote: { kind: 'quote given', words: (name: string) => `Quote for ${name} kept` },
  bill: { kind: 'bill sent', words: (name: string) => `Bill for ${name} kept` },
} as const;

/** A quote or a bill as it stands is sent to the customer: kept as it was, so that what changes after it can be told. */
export const sendPaper = async (context: UseCaseContext, id: string, kind: PaperKind) => {
  const ground = await costGround(context);
  return changingMoney(context, SENT[kind].kind, SENT[kind].words, async (tx) => {
    const found = await orderWithMoney(tx, id);
    if (!found.ok) return found;
    const [whole, money] = [await wholeOrder(tx, id, ground), await moneyOfOrder(tx, id)];
    if (!whole || money.price === null) return refuse('price', 'Say the price first.');
    const { currency } = ground.money;
    const asked = { price: money.price, deposit: money.deposit, currency, now: context.now };
    const readyOn = ground.plan.orders.find((one) => one.id === id)?.completesOn ?? null;
    const said = quoteOf(whole, { ...asked, readyOn: found.value.promisedOn ?? readyOn });
    await setMoneyOfOrder(tx, id, {
      papers: [...(money.papers ?? []), nextPaper(money, kind, said, money.payments)],
      ...(kind === 'quote' ? { estimate: keptEstimateOf(whole.cost, currency, context.now) } : {}),
    });
    return done({ name: orderName(found.value) });
  });
};
