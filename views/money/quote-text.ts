import { fullDayWords } from '../../shared/day-words.ts';
import type { OrderMoneyModel, PaperSent } from '../../src/usecases/money/show-order-money.ts';
import { dayText } from '../parts/day-text.ts';
import { EARTH_WORDS } from '../parts/earth-caution.tsx';
import { moneyText } from '../parts/money-text.ts';
import { quantityText } from '../parts/quantity-text.ts';

export const quotePath = (id: string): string => `/orders/${encodeURIComponent(id)}/quote`;
export const billPath = (id: string): string => `/orders/${encodeURIComponent(id)}/bill`;

const KIND_WORDS = { quote: 'Quote', bill: 'Bill' } as const;

/** "Bill 27-014/2" */
export const paperName = ({ kind, number }: Pick<PaperSent, 'kind' | 'number'>, id: string): string =>
  `${KIND_WORDS[kind]} ${id}/${number}`;

/** Where a quote or a bill stands as it was sent. */
export const paperPath = ({ kind, number }: Pick<PaperSent, 'kind' | 'number'>, id: string): string =>
  `/orders/${encodeURIComponent(id)}/${kind}/${number}`;

/** What neither of them is. */
export const NO_TAX_INVOICE = 'This is not a tax invoice.';

export const nameOf = ({ customer, id }: Pick<OrderMoneyModel, 'customer' | 'id'>): string => customer ?? `order ${id}`;

type Change = NonNullable<OrderMoneyModel['quote']>['changes'][number];

const lineChange = (change: Extract<Change, { what: 'more' | 'less' }>): string => {
  const { name, unit, was, is } = change;
  if (was === 0) return `${quantityText(is, unit)} ${name} is new.`;
  if (is === 0) return `${quantityText(was, unit)} ${name} is in it no longer.`;
  return `${name}: ${quantityText(is, unit)} instead of ${quantityText(was, unit)}.`;
};

const MONEY_WORDS = { price: 'Price', deposit: 'Deposit', paid: 'Paid' } as const;

/** "Price €900.00 instead of €880.00." */
export const changeText = (change: Change, currency: string, today: string): string => {
  if (change.what === 'more' || change.what === 'less') return lineChange(change);
  if (change.what === 'ready') {
    const [was, is] = [change.was, change.is].map((day) => (day === null ? 'no day' : dayText(day, today)));
    return `Ready ${is} instead of ${was}.`;
  }
  const [was, is] = [change.was, change.is].map((amount) => (amount === null ? 'none' : moneyText(amount, currency)));
  return `${MONEY_WORDS[change.what]} ${is} instead of ${was}.`;
};

export const paymentText = (
  { amount, on, back, note }: Omit<OrderMoneyModel['payments'][number], 'id' | 'note'> & { note?: string | null },
  currency: string,
): string =>
  `${back ? 'Paid back' : 'Paid'} ${fullDayWords(on)}${note ? ` (${note})` : ''}: ${moneyText(amount, currency)}`;

/** What is left to be paid, as a line of a bill. */
export const owingText = (owing: number, currency: string): string => {
  if (owing === 0) return 'All of it is paid. Thank you.';
  return owing > 0 ? `Still to pay: ${moneyText(owing, currency)}` : `To be paid back: ${moneyText(-owing, currency)}`;
};

const headLines = (what: string, { id, yardName, today, ...model }: OrderMoneyModel): string[] => [
  `${what} for ${nameOf({ id, customer: model.customer })}, order ${id}`,
  `${yardName}, ${fullDayWords(today)}`,
  '',
];

const lineTexts = ({ asQuote, currency }: OrderMoneyModel): string[] =>
  (asQuote?.lines ?? []).map(
    ({ name, quantity, unit, price }) => `${quantityText(quantity, unit)} ${name}: ${moneyText(price, currency)}`,
  );

/** "For Sat 8 May 2027, the day we said.", "By today's plan it can be handed over Sat 8 May 2027." */
export const readyText = ({ asQuote, status, promisedOn }: OrderMoneyModel): string | null => {
  if (status !== 'open') return null;
  if (promisedOn) return `For ${fullDayWords(promisedOn)}, the day we said.`;
  return asQuote?.readyOn ? `By today's plan it can be handed over ${fullDayWords(asQuote.readyOn)}.` : null;
};

/** A quote to be sent as a message. */
export const quoteMessage = (model: OrderMoneyModel): string => {
  const { price, deposit, currency, hasKits } = model;
  return [
    ...headLines('Quote', model),
    ...lineTexts(model),
    '',
    `In all: ${moneyText(price ?? 0, currency)}`,
    ...(deposit === null ? [] : [`To be paid beforehand: ${moneyText(deposit, currency)}`]),
    ...[readyText(model) ?? []].flat(),
    ...(hasKits ? [EARTH_WORDS] : []),
    NO_TAX_INVOICE,
  ].join('\n');
};

/** A bill to be sent as a message. */
export const billMessage = (model: OrderMoneyModel): string => {
  const { price, payments, owing, currency } = model;
  return [
    ...headLines('Bill', model),
    ...lineTexts(model),
    '',
    `In all: ${moneyText(price ?? 0, currency)}`,
    ...payments.map((payment) => paymentText(payment, currency)),
    owingText(owing ?? 0, currency),
    NO_TAX_INVOICE,
  ].join('\n');
};
