import type { Child, FC } from 'hono/jsx';
import { fullDayWords } from '../../shared/day-words.ts';
import type { OrderMoneyModel } from '../../src/usecases/money/show-order-money.ts';
import { orderPath } from '../orders/order-facts.ts';
import { AmountField } from '../parts/amount-field.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { DayField } from '../parts/day-field.tsx';
import { ChoiceField, type FieldErrors, TextField } from '../parts/field.tsx';
import { moneyField, moneyText } from '../parts/money-text.ts';
import { CostTable } from './cost-table.tsx';
import { MissingFigures } from './missing-figures.tsx';
import { percentText } from './money-text.ts';
import { QuoteChanges } from './quote-changes.tsx';
import { billPath, paperName, paperPath, paymentText, quotePath } from './quote-text.ts';
import { RealTable } from './real-table.tsx';

interface OrderMoneyProps {
  money: OrderMoneyModel;
  errors: FieldErrors;
  typed: Readonly<Record<string, string>>;
}

/** "€880.00 asked, €260.00 paid, €620.00 owing." */
const moneyAnswer = ({ price, paid, owing, currency, list }: OrderMoneyModel): string => {
  const text = (amount: number) => moneyText(amount, currency);
  const came = paid === 0 ? 'nothing paid' : `${text(paid)} paid`;
  if (owing !== null && owing < 0) return `${came}, ${text(-owing)} to be paid back.`;
  if (price === null) return `No price is said yet${list === null ? '' : `; the price list asks ${text(list)}`}.`;
  return `${text(price)} asked, ${owing === 0 ? 'all of it paid' : `${came}, ${text(owing ?? 0)} owing`}.`;
};

const depositText = ({ deposit, paid, status, currency }: OrderMoneyModel): string | null =>
  deposit === null || status !== 'open' || paid >= deposit
    ? null
    : `Of the deposit of ${moneyText(deposit, currency)} ${paid === 0 ? 'nothing' : moneyText(paid, currency)} is paid.`;

const MoneyForm: FC<{ id: string; to: string; children?: Child }> = ({ id, to, children }) => (
  <form class="order-action" method="post" action={`${orderPath(id)}/${to}`}>
    {children}
  </form>
);

const PriceForm: FC<OrderMoneyProps> = ({ money: { id, price, deposit, list, currency }, errors, typed }) => {
  const shown = (amount: number | null) => (amount === null ? '' : moneyField(amount, currency));
  const hint = list === null ? undefined : `The price list asks ${moneyText(list, currency)}.`;
  return (
    <MoneyForm id={id} to="price">
      <div class="field-row">
        <AmountField
          name="price"
          label={`Price (${currency})`}
          {...(hint ? { hint } : {})}
          value={typed.price ?? shown(price ?? list)}
          errors={errors}
        />
        <AmountField
          name="deposit"
          label={`Deposit (${currency})`}
          value={typed.deposit ?? shown(deposit)}
          errors={errors}
        />
        <Button>Save price</Button>
      </div>
    </MoneyForm>
  );
};

const WAYS = [
  { value: 'in', text: 'Paid' },
  { value: 'back', text: 'Paid back' },
];

const PaymentForm: FC<OrderMoneyProps> = ({ money: { id, currency, today, owing }, errors, typed }) => (
  <MoneyForm id={id} to="pay">
    <ChoiceField
      name="way"
      label="Payment"
      value={typed.way ?? (owing !== null && owing < 0 ? 'back' : 'in')}
      choices={WAYS}
    />
    <div class="field-row">
      <AmountField name="amount" label={`Amount (${currency})`} value={typed.amount ?? ''} errors={errors} />
      <DayField name="paidOn" label="Day" value={typed.paidOn ?? fullDayWords(today)} errors={errors} />
      <TextField name="payNote" label="How" hint="Cash, bank." value={typed.payNote ?? ''} errors={errors} />
      <Button>Record payment</Button>
    </div>
  </MoneyForm>
);

const Payments: FC<{ money: OrderMoneyModel }> = ({ money: { id, payments, currency } }) => (
  <ul class="payments">
    {payments.map((payment) => (
      <li>
        <span>{paymentText(payment, currency)}</span>
        <MoneyForm id={id} to="unpay">
          <input type="hidden" name="payment" value={payment.id} />
          <button type="submit" class="button quiet" aria-label={`Remove: ${paymentText(payment, currency)}`}>
            Remove
          </button>
        </MoneyForm>
      </li>
    ))}
  </ul>
);

/** Each quote and each bill as it was sent. */
const PapersSent: FC<{ money: OrderMoneyModel }> = ({ money: { id, papers } }) => (
  <ul class="sentences papers-sent">
    {papers.map((paper) => (
      <li>
        <a href={paperPath(paper, id)}>{paperName(paper, id)}</a>, {fullDayWords(paper.on)}:{' '}
        {moneyText(paper.price, paper.currency)}
      </li>
    ))}
  </ul>
);

const Costs: FC<{ money: OrderMoneyModel }> = ({ money }) => {
  const { cost, isMore, currency, margin, missing } = money;
  const left =
    margin === null ? '' : margin < 0 ? ', more than the price' : `, which leaves ${percentText(margin)} of the price`;
  return (
    <details class="message">
      <summary>
        By today’s figures it costs {isMore && 'more than '}
        {moneyText(cost.total, currency)}
        {left}
      </summary>
      <CostTable cost={cost} isMore={isMore} currency={currency} of="the order" />
      <MissingFigures missing={missing} />
    </details>
  );
};

/** The fields of its two forms: with one of them refused both are open. */
const MONEY_FIELDS = ['price', 'deposit', 'amount', 'paidOn', 'payNote'];

/** The money of an order: what is asked, what was paid, and what is owing. On no paper that goes to the yard. */
export const OrderMoney: FC<OrderMoneyProps> = (props) => {
  const { money } = props;
  const deposit = depositText(money);
  return (
    <section class="no-print order-money" id="money">
      <h2>Money</h2>
      <p>
        {moneyAnswer(money)} {deposit}
      </p>
      <QuoteChanges quote={money.quote} currency={money.currency} today={money.today} />
      <QuoteChanges quote={money.bill} currency={money.currency} today={money.today} />
      {money.papers.length > 0 && <PapersSent money={money} />}
      {money.payments.length > 0 && <Payments money={money} />}
      {money.price !== null && (
        <div class="buttons">
          <ButtonLink href={quotePath(money.id)}>Quote</ButtonLink>
          <ButtonLink href={billPath(money.id)}>Bill</ButtonLink>
        </div>
      )}
      {money.real === null && <Costs money={money} />}
      {money.real && <RealTable real={money.real} money={money} />}
      <details class="message" open={MONEY_FIELDS.some((name) => props.errors[name] ?? props.typed[name])}>
        <summary>Price and payments</summary>
        <PriceForm {...props} />
        <PaymentForm {...props} />
      </details>
    </section>
  );
};
