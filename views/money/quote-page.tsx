import type { Child, FC } from 'hono/jsx';
import { fullDayWords } from '../../shared/day-words.ts';
import type { OrderMoneyModel, PaperSent } from '../../src/usecases/money/show-order-money.ts';
import { orderPath } from '../orders/order-facts.ts';
import { Answer } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { CopyMessage } from '../parts/copy-message.tsx';
import { EARTH_WORDS } from '../parts/earth-caution.tsx';
import { moneyText } from '../parts/money-text.ts';
import { quantityText } from '../parts/quantity-text.ts';
import { QuoteChanges } from './quote-changes.tsx';
import {
  billMessage,
  NO_TAX_INVOICE,
  nameOf,
  owingText,
  paperName,
  paymentText,
  quoteMessage,
  readyText,
} from './quote-text.ts';

interface PaperProps {
  /** What stands at its top: which it is, and of what day. */
  head: string;
  lines: PaperSent['lines'];
  price: number;
  currency: string;
  what: string;
  /** Below what is asked for: the deposit, or what was paid. */
  children?: Child;
}

/** What is ordered and what is asked for it: the lines come to the price. */
const Paper: FC<PaperProps> = ({ head, lines, price, currency, what, children }) => (
  <div class="paper">
    <p>{head}</p>
    <table class="cost-table">
      <caption class="unseen">{what}</caption>
      <tbody>
        {lines.map((line) => (
          <tr>
            <th scope="row">
              {quantityText(line.quantity, line.unit)} {line.name}
            </th>
            <td class="number">{moneyText(line.price, currency)}</td>
          </tr>
        ))}
        <tr class="cost-total">
          <th scope="row">In all</th>
          <td class="number">{moneyText(price, currency)}</td>
        </tr>
      </tbody>
    </table>
    {children}
    <p>{NO_TAX_INVOICE}</p>
  </div>
);

/** As it would be sent today. */
const NowPaper: FC<{ model: OrderMoneyModel; what: string; children?: Child }> = ({ model, what, children }) => {
  const { asQuote, currency, price, today, id } = model;
  const head = `Order ${id}, ${fullDayWords(today)}`;
  return (
    <Paper head={head} lines={asQuote?.lines ?? []} price={price ?? 0} currency={currency} what={what}>
      {children}
    </Paper>
  );
};

const Deposit: FC<{ deposit: number | null; currency: string }> = ({ deposit, currency }) =>
  deposit === null ? null : <p>To be paid beforehand: {moneyText(deposit, currency)}.</p>;

const Paid: FC<{ payments: OrderMoneyModel['payments'] | PaperSent['payments']; owing: number; currency: string }> = ({
  payments,
  owing,
  currency,
}) => (
  <>
    {payments.map((payment) => (
      <p>{paymentText(payment, currency)}</p>
    ))}
    <p class="owing">{owingText(owing, currency)}</p>
  </>
);

const NoPrice: FC<{ model: OrderMoneyModel; what: string }> = ({ model, what }) => (
  <>
    <Answer>
      No {what} yet: no price is said for {nameOf(model)}.
    </Answer>
    <div class="buttons">
      <ButtonLink href={`${orderPath(model.id)}#money`} kind="main">
        Say the price
      </ButtonLink>
    </div>
  </>
);

const Back: FC<{ model: OrderMoneyModel }> = ({ model }) => (
  <p class="no-print way">
    <a href={`${orderPath(model.id)}#money`}>Back to the order</a>
  </p>
);

/** What is asked for an order, to print or to send. */
export const QuotePage: FC<{ model: OrderMoneyModel }> = ({ model }) => {
  const { price, deposit, currency, quote, id, today } = model;
  if (price === null) return <NoPrice model={model} what="quote" />;
  const ready = readyText(model);
  return (
    <>
      <Answer>Quote for {nameOf(model)}</Answer>
      <QuoteChanges quote={quote} currency={currency} today={today} />
      <NowPaper model={model} what="Quote">
        <Deposit deposit={deposit} currency={currency} />
        {ready && <p>{ready}</p>}
        {model.hasKits && <p>{EARTH_WORDS}</p>}
      </NowPaper>
      <CopyMessage id={`quote-of-${id}`} text={quoteMessage(model)} name={nameOf(model)} />
      <form class="order-action" method="post" action={`${orderPath(id)}/quote`}>
        <p class="hint">Kept as it stands now, so that you see what changes after it.</p>
        <Button kind="main">{quote ? 'Given again: keep this one' : 'Given: keep it'}</Button>
      </form>
      <Back model={model} />
    </>
  );
};

/** What is to be paid for an order, to print or to send. */
export const BillPage: FC<{ model: OrderMoneyModel }> = ({ model }) => {
  const { price, currency, payments, owing, id, bill, today } = model;
  if (price === null) return <NoPrice model={model} what="bill" />;
  return (
    <>
      <Answer>Bill for {nameOf(model)}</Answer>
      <QuoteChanges quote={bill} currency={currency} today={today} />
      <NowPaper model={model} what="Bill">
        <Paid payments={payments} owing={owing ?? 0} currency={currency} />
      </NowPaper>
      <CopyMessage id={`bill-of-${id}`} text={billMessage(model)} name={nameOf(model)} />
      <form class="order-action" method="post" action={`${orderPath(id)}/bill`}>
        <p class="hint">Kept as it stands now, with a number, so that you see what changes after it.</p>
        <Button kind="main">{bill ? 'Sent again: keep this one' : 'Sent: keep it'}</Button>
      </form>
      <Back model={model} />
    </>
  );
};

/** A quote or a bill as it was sent, whatever the order is now. */
export const SentPaperPage: FC<{ model: OrderMoneyModel; paper: PaperSent }> = ({ model, paper }) => {
  const { currency, price, lines, on, deposit = null, readyOn } = paper;
  const name = paperName(paper, model.id);
  return (
    <>
      <Answer note="As it was sent. What the order is now stands on its page.">
        {name} for {nameOf(model)}
      </Answer>
      <Paper head={`${name}, ${fullDayWords(on)}`} lines={lines} price={price} currency={currency} what={name}>
        <Deposit deposit={deposit} currency={currency} />
        {readyOn && <p>For {fullDayWords(readyOn)}.</p>}
        {paper.kind === 'bill' && <Paid payments={paper.payments} owing={paper.owing} currency={currency} />}
      </Paper>
      <Back model={model} />
    </>
  );
};
