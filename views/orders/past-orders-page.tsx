import type { FC } from 'hono/jsx';
import type { PastOrdersModel } from '../../src/usecases/orders/show-orders.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { ButtonLink } from '../parts/button.tsx';
import { dayText } from '../parts/day-text.ts';
import { AnswerPlace, choicesOf, FindForm, FoundAnswer, isSearching } from '../parts/find-form.tsx';
import { countWord } from '../parts/quantity-text.ts';
import { SEASON } from '../season/season-text.ts';
import { agreedText, contentsText } from '../words/order-text.ts';
import { type OrderFacts, orderName, orderPath } from './order-facts.ts';
import { PAST_WORDS } from './orders-found.tsx';

const endText = ({ status, handedOverOn }: OrderFacts, today: string): string => {
  if (status === 'handed over') return handedOverOn ? `handed over ${dayText(handedOverOn, today)}` : 'handed over';
  return status === 'cancelled' ? 'cancelled' : 'the hold ran out';
};

const PATH = '/orders/past';

/** "One order is past.", "Two orders are past: handed over, cancelled, or held no longer." */
export const pastAnswer = (count: number): string => {
  if (count === 0) return 'No order is past yet.';
  return count === 1
    ? 'One order is past.'
    : `${countWord(count)} orders are past: handed over, cancelled, or held no longer.`;
};

const PastAnswer: FC<{ model: PastOrdersModel; beside?: boolean }> = ({ model, beside = false }) => (
  <AnswerPlace beside={beside}>
    {isSearching(model.search) ? (
      <FoundAnswer
        search={model.search}
        count={model.found}
        all={model.all}
        what="past order"
        path={PATH}
        which={PAST_WORDS[model.search.which].only}
      />
    ) : (
      <Answer note={model.all > 1 ? 'The newest first.' : undefined}>{pastAnswer(model.all)}</Answer>
    )}
  </AnswerPlace>
);

const PastFound: FC<{ model: PastOrdersModel }> = ({ model: { orders, found, today } }) => (
  <>
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
    {found > orders.length && (
      <p class="quiet">
        These are the newest {orders.length} of {found}. To see an older one, look for it.
      </p>
    )}
  </>
);

/** What changes while something is looked for. */
export const PastOrdersPart: FC<{ model: PastOrdersModel }> = ({ model }) => (
  <>
    <PastAnswer model={model} beside />
    <PastFound model={model} />
  </>
);

export const PastOrdersPage: FC<{ model: PastOrdersModel }> = ({ model }) => (
  <>
    <PastAnswer model={model} />
    {model.all === 0 ? (
      <Empty>An order stands here once it is handed over or cancelled, or its hold has run out.</Empty>
    ) : (
      <FindForm
        path={PATH}
        label="Find a past order"
        hint="A customer, a number, or what was in it."
        search={model.search}
        choices={choicesOf(PAST_WORDS)}
      />
    )}
    <div id="found">
      <PastFound model={model} />
    </div>
    <p>
      <ButtonLink href="/orders">Open orders</ButtonLink>
      <ButtonLink href={SEASON}>The season</ButtonLink>
    </p>
  </>
);
