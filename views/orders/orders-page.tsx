import type { FC } from 'hono/jsx';
import { plural } from '../../shared/plural.ts';
import type { OwingModel } from '../../src/usecases/money/owing.ts';
import type { OrdersModel } from '../../src/usecases/orders/show-orders.ts';
import { PRICES } from '../money/money-text.ts';
import { OwingList } from '../money/owing.tsx';
import { Answer, Empty } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { dayText } from '../parts/day-text.ts';
import { AnswerPlace, choicesOf, FindForm, FoundAnswer, isSearching, searchQuery } from '../parts/find-form.tsx';
import { HeldNotices } from '../parts/held-notices.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { countWord } from '../parts/quantity-text.ts';
import { isLate } from '../words/order-text.ts';
import { GOING_OUT } from './going-out-page.tsx';
import { OrdersFound, WHICH_WORDS } from './orders-found.tsx';

/** "Eight orders by Sat 15 May, one of them late." */
const ordersAnswer = ({ days, cannotBeMade, today }: Pick<OrdersModel, 'days' | 'cannotBeMade' | 'today'>): string => {
  const orders = days.flatMap((day) => day.orders);
  const last = days.at(-1)?.date;
  if (!last) return cannotBeMade.length === 0 ? 'No order is open.' : 'None of the orders can be made yet.';
  const late = orders.filter(isLate).length;
  const lateText = late === 0 ? 'none of them late' : `${countWord(late).toLowerCase()} of them late`;
  const rest = cannotBeMade.length === 0 ? '' : ` ${countWord(cannotBeMade.length)} more can't be made yet.`;
  return `${countWord(orders.length)} ${plural(orders.length, 'order')} by ${dayText(last, today)}, ${lateText}.${rest}`;
};

const OrdersAnswer: FC<{ model: OrdersModel; beside?: boolean }> = ({ model, beside = false }) => {
  const { search, days, cannotBeMade } = model;
  const count = days.flatMap(({ orders }) => orders).length + cannotBeMade.length;
  return (
    <AnswerPlace beside={beside}>
      {isSearching(search) ? (
        <FoundAnswer
          search={search}
          count={count}
          all={model.all}
          what="order"
          path="/orders"
          which={WHICH_WORDS[search.which].only}
        >
          {' · '}
          <a href={`/orders/past${searchQuery({ ...search, which: 'all' })}`}>Look among past orders</a>
        </FoundAnswer>
      ) : (
        <Answer note={days.length > 0 ? "Each under the day it can be handed over by today's plan." : undefined}>
          {ordersAnswer(model)}
        </Answer>
      )}
    </AnswerPlace>
  );
};

/** What changes while something is looked for. */
export const OrdersPart: FC<{ model: OrdersModel; owing: OwingModel }> = ({ model, owing }) => (
  <>
    <OrdersAnswer model={model} beside />
    <OrdersFound model={model} owing={owing} />
  </>
);

interface OrdersPageProps {
  model: OrdersModel;
  owing: OwingModel;
  notice: DoneNotice | null;
}

export const OrdersPage: FC<OrdersPageProps> = ({ model, owing, notice }) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back={`/orders${searchQuery(model.search)}`} />}
    <HeldNotices notices={model.notices} back="/orders" />
    <OrdersAnswer model={model} />
    <div class="buttons">
      <ButtonLink href="/orders/new" kind="main">
        Take order
      </ButtonLink>
      <ButtonLink href={GOING_OUT}>Going out</ButtonLink>
      <ButtonLink href={PRICES}>Prices</ButtonLink>
      <ButtonLink href="/pieces">Pieces in the yard</ButtonLink>
      <ButtonLink href="/orders/past">Past orders</ButtonLink>
      <ButtonLink href="/kits/by-size">Kit by size</ButtonLink>
      <ButtonLink href="/changes">Changes</ButtonLink>
    </div>
    {model.all === 0 ? (
      <Empty>Take the first order here, or ask on the first page when something could be ready.</Empty>
    ) : (
      <FindForm
        path="/orders"
        label="Find an order"
        hint="A customer, a number, or what is in it."
        search={model.search}
        choices={choicesOf(WHICH_WORDS)}
      />
    )}
    <div id="found">
      <OrdersFound model={model} owing={owing} />
    </div>
    <OwingList owing={owing} today={model.today} />
  </>
);
