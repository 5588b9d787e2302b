import type { FC } from 'hono/jsx';
import type { OwingModel } from '../../src/usecases/money/owing.ts';
import { orderPath } from '../orders/order-facts.ts';
import { dayText } from '../parts/day-text.ts';
import { moneyText } from '../parts/money-text.ts';

type Owing = OwingModel['now'][number];

/** "School garden owes €150.00, handed over Sat 3 Apr.", "€50.00 is to go back to Ann Moran: cancelled." */
const OwingLine: FC<{ order: Owing; currency: string; today: string }> = ({ order, currency, today }) => {
  const { id, customer, status, handedOverOn, owing } = order;
  const who = <a href={`${orderPath(id)}#money`}>{customer ?? `Order ${id}`}</a>;
  const what = status === 'lapsed' ? 'the hold ran out' : status;
  const when = handedOverOn ? `${what} ${dayText(handedOverOn, today)}` : what;
  return (
    <li>
      {who} {owing > 0 ? 'owes' : 'is to get back'} {moneyText(Math.abs(owing), currency)}
      {status === 'open' ? '.' : `: ${when}.`}
    </li>
  );
};

/** Who has got what was ordered and not paid for it, or is to get money back. */
export const OwingList: FC<{ owing: OwingModel; today: string }> = ({ owing, today }) =>
  owing.now.length === 0 ? null : (
    <section>
      <h2>Not paid yet</h2>
      <ul class="sentences">
        {owing.now.map((order) => (
          <OwingLine order={order} currency={owing.currency} today={today} />
        ))}
      </ul>
    </section>
  );
