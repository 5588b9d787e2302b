import type { FC } from 'hono/jsx';
import { Answer } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { dayText } from '../parts/day-text.ts';
import { type OrderFacts, orderName, orderPath } from './order-facts.ts';
import { agreedText, contentsText } from './order-text.ts';

const endText = ({ status, handedOverOn }: OrderFacts, today: string): string => {
  if (status === 'handed over') return handedOverOn ? `handed over ${dayText(handedOverOn, today)}` : 'handed over';
  return status === 'cancelled' ? 'cancelled' : 'the hold ran out';
};

export const PastOrdersPage: FC<{ today: string; orders: readonly OrderFacts[] }> = ({ today, orders }) => (
  <>
    <Answer>
      {orders.length === 0 ? 'No order is past yet.' : 'Orders handed over, cancelled or lapsed, the newest first.'}
    </Answer>
    <ul class="sentences">
      {orders.map((order) => (
        <li class="order-sentence">
          <p>
            <a href={orderPath(order.id)}>{orderName(order)}</a>, {endText(order, today)}; {agreedText(order, today)}.
          </p>
          <p class="quiet">
            {order.customer && <>{order.id} · </>}
            {contentsText(order.contents)}
          </p>
        </li>
      ))}
    </ul>
    <p>
      <ButtonLink href="/orders">Open orders</ButtonLink>
    </p>
  </>
);
