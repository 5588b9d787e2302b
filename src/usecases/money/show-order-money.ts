import { moneyOfOrder, type StoredMoney } from '../../../db/stores/money-store.ts';
import { orderById } from '../../../db/stores/order-store.ts';
import type { OrderPaper, OrderQuote, PaperKind } from '../../../shared/money.ts';
import { marginOf } from '../../engine/cost/margin.ts';
import { fromMinor, toMinor } from '../../engine/cost/minor-units.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { type CostFacts, costFacts, type MissingFacts, missingFacts } from './cost-facts.ts';
import { type CostGround, costGround } from './cost-ground.ts';
import { type WholeOrder, wholeOrder } from './order-lines.ts';
import { owingOf } from './owing.ts';
import { lastPaper, nextPaper, papersOf } from './papers.ts';
import { changesSince, paidBy, type QuoteChange, quoteOf } from './quote.ts';
import { type RealFacts, realFacts } from './real-facts.ts';

/** A quote or a bill that was sent, and the day that was. */
export interface PaperSent extends OrderPaper {
  on: string;
  /** Of a bill what was still to be paid by it, in its money; below 0 it was to be paid back. */
  owing: number;
}

/** The last of its kind, and what is other by now. */
interface LastPaper extends PaperSent {
  changes: readonly QuoteChange[];
}

/** The money of an order. All amounts are in the yard's money. */
export interface OrderMoneyModel extends PageHead {
  id: string;
  customer: string | null;
  status: WholeOrder['order']['status'];
  handedOverOn: string | null;
  /** The day the customer was told. */
  promisedOn: string | null;
  currency: string;
  /** What the price list asks for it; null where a line has no price. */
  list: number | null;
  cost: CostFacts;
  missing: MissingFacts;
  isMore: boolean;
  price: number | null;
  deposit: number | null;
  /** What is left of the price once the cost is taken off, of 1; null without a price. */
  margin: number | null;
  payments: StoredMoney['payments'];
  paid: number;
  /** Below 0 it is to be paid back; null where no price is said. */
  owing: number | null;
  /** As it would be given today; null where no price is said. */
  asQuote: OrderQuote | null;
  /** Something of it is put together, and may hold earth. */
  hasKits: boolean;
  /** All that was sent, in that order. */
  papers: readonly PaperSent[];
  quote: LastPaper | null;
  bill: LastPaper | null;
  /** Null until it is packed, and where nothing of it is on record. */
  real: RealFacts | null;
}

const paidOf = ({ payments }: StoredMoney, currency: string): number =>
  payments.reduce((sum, { amount, back }) => sum + (back ? -1 : 1) * toMinor(amount, currency), 0);

const sentFacts = (paper: OrderPaper, timeZone: string): PaperSent => {
  const { at, price, currency } = paper;
  const owing = toMinor(price, currency) - toMinor(paidBy(paper), currency);
  return { ...paper, on: today(timeZone, at), owing: fromMinor(owing, currency) };
};

/** Of an order that is over no day is to come any more. */
const lastSent = (
  stored: StoredMoney,
  kind: PaperKind,
  now: OrderQuote | null,
  { timeZone, isOpen }: { timeZone: string; isOpen: boolean },
): LastPaper | null => {
  const last = lastPaper(stored, kind);
  if (!last) return null;
  const changes = now ? changesSince(last, nextPaper(stored, kind, now, stored.payments)) : [];
  const shown = changes.filter(({ what }) => isOpen || what !== 'ready');
  return { ...sentFacts(last, timeZone), changes: shown };
};

type Known = Omit<OrderMoneyModel, 'real'>;

const modelOf = (whole: WholeOrder, stored: StoredMoney, ground: CostGround, now: string): Known => {
  const { yard, money, plan } = ground;
  const { order, list, cost } = whole;
  const { currency } = money;
  const { price, deposit } = stored;
  const { timeZone } = yard.yard;
  const when = { timeZone, isOpen: order.status === 'open' };
  const inMoney = (minor: number | null) => (minor === null ? null : fromMinor(minor, currency));
  const priceMinor = price === null ? null : toMinor(price, currency);
  const paid = paidOf(stored, currency);
  const readyOn = order.promisedOn ?? plan.orders.find(({ id }) => id === order.id)?.completesOn ?? null;
  const asQuote = price === null ? null : quoteOf(whole, { price, deposit, readyOn, currency, now });
  return {
    ...{ yardName: yard.yard.name, today: today(yard.yard.timeZone, now), currency, price, deposit, asQuote },
    hasKits: [whole.order, ...whole.parts].some(({ lines }) => lines.some(({ kit }) => kit !== undefined)),
    ...{ id: order.id, customer: order.customer?.name ?? null, status: order.status, handedOverOn: order.handedOverOn },
    promisedOn: order.promisedOn,
    list: inMoney(list),
    cost: costFacts(cost, currency),
    missing: missingFacts([cost], yard),
    isMore: cost.missing.length > 0,
    margin: priceMinor === null ? null : marginOf(priceMinor, cost.total),
    payments: stored.payments,
    paid: fromMinor(paid, currency),
    owing: inMoney(owingOf(order.status, priceMinor, paid)),
    papers: papersOf(stored).map((one) => sentFacts(one, timeZone)),
    quote: lastSent(stored, 'quote', asQuote, when),
    bill: lastSent(stored, 'bill', asQuote, when),
  };
};

/** The money of an order; null where there is none of that number, and of a part of one: that is with the rest. */
export const showOrderMoney = async (context: UseCaseContext, id: string): Promise<OrderMoneyModel | null> => {
  const known = await context.database.read((tx) => orderById(tx, id));
  if (!known || known.partOf !== null) return null;
  const ground = await costGround(context);
  return context.database.read(async (tx) => {
    const whole = await wholeOrder(tx, id, ground);
    if (!whole) return null;
    const stored = await moneyOfOrder(tx, id);
    const real = await realFacts(tx, whole, stored.estimate, ground);
    return { ...modelOf(whole, stored, ground, context.now), real };
  });
};
