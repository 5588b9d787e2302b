import type { FC } from 'hono/jsx';
import { countText } from '../../shared/plural.ts';
import type { OwingModel } from '../../src/usecases/money/owing.ts';
import type { WhichOrders, WhichPast } from '../../src/usecases/orders/find-orders.ts';
import type { OrdersModel } from '../../src/usecases/orders/show-orders.ts';
import { Empty } from '../parts/answer.tsx';
import { dayHeading, dayText } from '../parts/day-text.ts';
import { searchQuery } from '../parts/find-form.tsx';
import { LongList } from '../parts/long-list.tsx';
import { moneyText } from '../parts/money-text.ts';
import type { OrderFacts } from './order-facts.ts';
import { OrderSentence } from './order-sentence.tsx';
import { spanOf, TrackKey } from './order-track.tsx';

/** A day has a handful of orders. */
const DAYS_AT_ONCE = 8;

/** The choices of a search, and how each goes on after "only those". */
export const WHICH_WORDS: Readonly<Record<WhichOrders, { text: string; only: string }>> = {
  all: { text: 'All', only: '' },
  late: { text: 'Late', only: 'that are late' },
  held: { text: 'Held', only: 'whose date is held' },
  promised: { text: 'Promised', only: 'that are promised' },
  wanted: { text: 'Wanted, not promised', only: 'that are wanted and not promised' },
  'no date': { text: 'No date given', only: 'without a date' },
  'this week': { text: 'Ready this week', only: 'that are ready this week' },
};

export const PAST_WORDS: Readonly<Record<WhichPast, { text: string; only: string }>> = {
  all: { text: 'All', only: '' },
  'handed over': { text: 'Handed over', only: 'that were handed over' },
  cancelled: { text: 'Cancelled', only: 'that were cancelled' },
  lapsed: { text: 'Hold ran out', only: 'whose hold ran out' },
};

/** The same search, from one day on. */
const addressFrom = (search: OrdersModel['search'], from: string): string => {
  const query = searchQuery(search);
  return `/orders${query}${query === '' ? '?' : '&'}from=${from}`;
};

interface OrdersFoundProps {
  model: Pick<OrdersModel, 'days' | 'shown' | 'from' | 'laterFrom' | 'search' | 'cannotBeMade' | 'today' | 'all'>;
  owing: OwingModel;
}

/** What is still to be paid for an order; '' where nothing is. */
const owingText = ({ id }: OrderFacts, { open, currency }: OwingModel): string => {
  const owing = open.get(id);
  return owing === undefined ? '' : `${moneyText(owing, currency)} owing`;
};

/** Orders by the day they can be handed over, those that can't be made first. */
export const OrdersFound: FC<OrdersFoundProps> = ({ model, owing }) => {
  const orders = model.days.flatMap((day) => day.orders);
  const span = spanOf(orders, model.today);
  const draw = (order: OrderFacts) => (
    <OrderSentence order={order} today={model.today} owing={owingText(order, owing)} span={span} />
  );
  return (
    <div class="order-days">
      {orders.length > 0 && <TrackKey />}
      {model.all > 0 && orders.length === 0 && model.cannotBeMade.length === 0 && <Empty>No order is like that.</Empty>}
      {model.from !== null && (
        <p class="way">
          <a href={`/orders${searchQuery(model.search)}`}>From the first day on</a>
        </p>
      )}
      {model.from === null && model.cannotBeMade.length > 0 && (
        <section class="order-day">
          <h2>Can't be made yet</h2>
          <ul>
            <LongList items={model.cannotBeMade} draw={draw} />
          </ul>
        </section>
      )}
      <LongList
        items={model.shown}
        atOnce={DAYS_AT_ONCE}
        draw={({ date, orders: ready }) => (
          <section class="order-day">
            <h2>{dayHeading(date, model.today)}</h2>
            <ul aria-label={`${countText(ready.length, 'order')} for ${dayText(date, model.today)}`}>
              <LongList items={ready} draw={draw} />
            </ul>
          </section>
        )}
      />
      {model.laterFrom !== null && (
        <p class="way">
          <a
            href={addressFrom(model.search, model.laterFrom)}
          >{`Later: from ${dayText(model.laterFrom, model.today)} on`}</a>
        </p>
      )}
    </div>
  );
};
