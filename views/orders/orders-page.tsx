import type { FC } from 'hono/jsx';
import type { showOrders } from '../../src/usecases/show-orders.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { countText, dayHeading, dayText } from '../parts/day-text.ts';
import { HeldNotices } from '../parts/held-notices.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { countWord } from '../parts/quantity-text.ts';
import { OrderSentence } from './order-sentence.tsx';
import { isLate } from './order-text.ts';

export type OrdersModel = Awaited<ReturnType<typeof showOrders>>;

/** "Eight orders by Sat 15 May, one of them late." */
export const ordersAnswer = ({ days, cannotBeMade, today }: OrdersModel): string => {
  const orders = days.flatMap((day) => day.orders);
  const last = days.at(-1)?.date;
  if (!last) return cannotBeMade.length === 0 ? 'No order is open.' : 'None of the orders can be made yet.';
  const late = orders.filter(isLate).length;
  const lateText = late === 0 ? 'none of them late' : `${countWord(late).toLowerCase()} of them late`;
  const rest = cannotBeMade.length === 0 ? '' : ` ${countWord(cannotBeMade.length)} more can't be made yet.`;
  return `${countWord(orders.length)} ${orders.length === 1 ? 'order' : 'orders'} by ${dayText(last, today)}, ${lateText}.${rest}`;
};

export const OrdersPage: FC<{ model: OrdersModel; notice: DoneNotice | null }> = ({ model, notice }) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back="/orders" />}
    <HeldNotices notices={model.notices} back="/orders" />
    <Answer note="Each under the day it can be handed over by today's plan.">{ordersAnswer(model)}</Answer>
    <div class="buttons">
      <ButtonLink href="/orders/new" kind="main">
        Take order
      </ButtonLink>
      <ButtonLink href="/orders/past">Past orders</ButtonLink>
      <ButtonLink href="/kits/by-size">Kit by size</ButtonLink>
      <ButtonLink href="/changes">Changes</ButtonLink>
    </div>
    {model.days.length === 0 && model.cannotBeMade.length === 0 && (
      <Empty>Take the first order here, or ask on the first page when something could be ready.</Empty>
    )}
    <div class="order-days">
      {model.cannotBeMade.length > 0 && (
        <section class="order-day">
          <h2>Can't be made yet</h2>
          <ul>
            {model.cannotBeMade.map((order) => (
              <OrderSentence order={order} today={model.today} />
            ))}
          </ul>
        </section>
      )}
      {model.days.map(({ date, orders }) => (
        <section class="order-day">
          <h2>{dayHeading(date, model.today)}</h2>
          <ul aria-label={`${countText(orders.length, 'order')} for ${dayText(date, model.today)}`}>
            {orders.map((order) => (
              <OrderSentence order={order} today={model.today} />
            ))}
          </ul>
        </section>
      ))}
    </div>
  </>
);
