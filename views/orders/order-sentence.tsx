import type { FC } from 'hono/jsx';
import { Mark } from '../parts/mark.tsx';
import { contentsText, isLate, packedLateText, standingText } from '../words/order-text.ts';
import { type OrderFacts, orderName, orderPath } from './order-facts.ts';
import { OrderTrack } from './order-track.tsx';

const waitingText = (order: OrderFacts, today: string): string => {
  const { packed, packedMinutes, inYard, status } = order;
  if (status !== 'open') return '';
  // Who was packed too late is said to be, a sentence before.
  if (packed) return packedLateText(order, today) ? '' : ' Packed.';
  if (packedMinutes !== null) return ' Packed in part.';
  return inYard ? ' All of it is in the yard.' : '';
};

interface OrderSentenceProps {
  order: OrderFacts;
  today: string;
  /** "€620.00 owing"; '' where nothing is. */
  owing?: string;
  /** The line that the orders of the list share; none is drawn without it. */
  span?: { first: number; last: number };
}

/** One order in one sentence, with what it is for underneath. A late one, or one that can't be made, is marked. */
export const OrderSentence: FC<OrderSentenceProps> = ({ order, today, owing = '', span }) => {
  const warns = isLate(order) || order.readyOn === null;
  return (
    <li class={warns ? 'order-sentence warns' : 'order-sentence'}>
      <p>
        {warns && <Mark shape="triangle" />}
        <a href={orderPath(order.id)}>{orderName(order)}</a>
        {order.readyOn === null ? ' ' : ', '}
        {standingText(order, today)}.{waitingText(order, today)}
      </p>
      <p class="quiet">
        {order.customer && <>{order.id} · </>}
        {contentsText(order.contents)}
        {owing !== '' && <> · {owing}</>}
      </p>
      {span && <OrderTrack order={order} span={span} today={today} />}
    </li>
  );
};
