import type { KeptEstimate, OrderPaper, OrderQuote } from '../../../shared/money.ts';
import type { Cost } from '../../engine/cost/cost.ts';
import { fromMinor, toMinor } from '../../engine/cost/minor-units.ts';
import { shareOut } from '../../engine/cost/share-out.ts';
import type { WholeOrder } from './order-lines.ts';

interface Asked {
  price: number;
  deposit: number | null;
  readyOn: string | null;
  currency: string;
  now: string;
}

/**
 * What is asked for an order as a quote says it: the price is shared by the lines as the price list has them (where it does not,
 * by nothing but their number), so that they come to it.
 */
export const quoteOf = ({ lines, list }: WholeOrder, { price, deposit, readyOn, currency, now }: Asked): OrderQuote => {
  const weights = lines.map((line) => (list === null ? line.quantity : (line.list ?? 0)));
  const shares = shareOut(toMinor(price, currency), weights);
  return {
    ...{ at: now, currency, price },
    lines: lines.map(({ name, quantity, unit }, place) => ({
      ...{ name, quantity, unit, price: fromMinor(shares[place]!, currency) },
    })),
    ...(deposit === null ? {} : { deposit }),
    ...(readyOn === null ? {} : { readyOn }),
  };
};

/** An estimate to be kept with an order, so that what it really cost can be set beside it. */
export const keptEstimateOf = ({ parts }: Cost, currency: string, at: string): KeptEstimate => ({
  at,
  parts: Object.fromEntries(
    Object.entries(parts).flatMap(([kind, minor]) => (minor === 0 ? [] : [[kind, fromMinor(minor, currency)]])),
  ),
});

/** What is other than a quote said. Money as it was and as it is; a day null where none is known. */
export type QuoteChange =
  | { what: 'more' | 'less'; name: string; unit: string; was: number; is: number }
  | { what: 'price' | 'deposit' | 'paid'; was: number | null; is: number | null }
  | { what: 'ready'; was: string | null; is: string | null };

const quantities = ({ lines }: Pick<OrderQuote, 'lines'>) =>
  new Map(lines.map(({ name, quantity, unit }) => [name, { quantity, unit }]));

/** What was paid less what went back, by a bill: in its money. */
export const paidBy = ({ payments, currency }: Pick<OrderPaper, 'payments' | 'currency'>): number =>
  fromMinor(
    payments.reduce((sum, { amount, back }) => sum + (back ? -1 : 1) * toMinor(amount, currency), 0),
    currency,
  );

/** What has changed since a quote or a bill was sent: how much of what, the price, the deposit, the day, and what was paid. */
export const changesSince = (before: OrderPaper, now: OrderPaper): QuoteChange[] => {
  const [was, is] = [quantities(before), quantities(now)];
  const lines = [...new Set([...was.keys(), ...is.keys()])].flatMap((name): QuoteChange[] => {
    const [old, fresh] = [was.get(name)?.quantity ?? 0, is.get(name)?.quantity ?? 0];
    if (old === fresh) return [];
    const unit = (is.get(name) ?? was.get(name))!.unit;
    return [{ what: fresh > old ? 'more' : 'less', name, unit, was: old, is: fresh }];
  });
  const money = (['price', 'deposit'] as const).flatMap((what): QuoteChange[] =>
    before[what] === now[what] ? [] : [{ what, was: before[what] ?? null, is: now[what] ?? null }],
  );
  const isLater = before.readyOn !== undefined && before.readyOn !== now.readyOn;
  const day: QuoteChange[] = isLater ? [{ what: 'ready', was: before.readyOn ?? null, is: now.readyOn ?? null }] : [];
  const [paidThen, paidNow] = [paidBy(before), paidBy(now)];
  const paid: QuoteChange[] = paidThen === paidNow ? [] : [{ what: 'paid', was: paidThen, is: paidNow }];
  return [...lines, ...money, ...day, ...paid];
};
