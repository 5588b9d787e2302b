import type { Child, FC } from 'hono/jsx';
import type { OrderMoneyModel } from '../../src/usecases/money/show-order-money.ts';
import { orderPath } from '../orders/order-facts.ts';
import { Answer } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { CopyMessage } from '../parts/copy-message.tsx';
import { fullDayText } from '../parts/day-text.ts';
import { EARTH_WORDS } from '../parts/earth-caution.tsx';
import { moneyText } from '../parts/money-text.ts';
import { quantityText } from '../parts/quantity-text.ts';
import { QuoteChanges } from './quote-changes.tsx';
import { billMessage, NO_TAX_INVOICE, nameOf, owingText, paymentText, quoteMessage, readyText } from './quote-text.ts';

interface PaperProps {
  model: OrderMoneyModel;
  what: 'Quote' | 'Bill';
  /** Below what is asked for: the deposit, or what was paid. */
  children?: Child;
}

/** What is ordered and what is asked for it: the lines come to the price. */
const Paper: FC<PaperProps> = ({ model, what, children }) => {
  const { asQuote, currency, price, today, id } = model;
  return (
    <section class="paper">
      <p>
        Order {id}, {fullDayText(today)}
      </p>
      <table class="cost-table">
        <caption class="unseen">{what}</caption>
        <tbody>
          {(asQuote?.lines ?? []).map((line) => (
            <tr>
              <th scope="row">
                {quantityText(line.quantity, line.unit)} {line.name}
              </th>
              <td class="number">{moneyText(line.price, currency)}</td>
            </tr>
          ))}
          <tr class="cost-total">
            <th scope="row">In all</th>
            <td class="number">{moneyText(price ?? 0, currency)}</td>
          </tr>
        </tbody>
      </table>
      {children}
      <p>{NO_TAX_INVOICE}</p>
    </section>
  );
};

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
  <p class="no-print">
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
      <Paper model={model} what="Quote">
        {deposit !== null && <p>To be paid beforehand: {moneyText(deposit, currency)}.</p>}
        {ready && <p>{ready}</p>}
        {model.hasKits && <p>{EARTH_WORDS}</p>}
      </Paper>
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
  const { price, currency, payments, owing, id } = model;
  if (price === null) return <NoPrice model={model} what="bill" />;
  return (
    <>
      <Answer>Bill for {nameOf(model)}</Answer>
      <Paper model={model} what="Bill">
        {payments.map((payment) => (
          <p>{paymentText(payment, currency)}</p>
        ))}
        <p class="owing">{owingText(owing ?? 0, currency)}</p>
      </Paper>
      <CopyMessage id={`bill-of-${id}`} text={billMessage(model)} name={nameOf(model)} />
      <Back model={model} />
    </>
  );
};
