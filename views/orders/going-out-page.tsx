import type { FC } from 'hono/jsx';
import { countText, plural } from '../../shared/plural.ts';
import type { OrderOut } from '../../src/usecases/orders/going-out.ts';
import type { GoingOutModel } from '../../src/usecases/orders/show-going-out.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Caution } from '../parts/caution.tsx';
import { dayText, onDayText } from '../parts/day-text.ts';
import { TextField } from '../parts/field.tsx';
import { quantityText } from '../parts/quantity-text.ts';
import { liftingText } from '../words/lifting-text.ts';
import { loadsAnswer, loadText } from '../words/loads-text.ts';
import { contentsText } from '../words/order-text.ts';
import { orderPath } from './order-facts.ts';

/** What has to be loaded, day by day. */
export const GOING_OUT = '/going-out';

const BY_HAND: Readonly<Record<OrderOut['pieces'][number]['lifting'], string>> = {
  one: 'one person',
  'one with care': 'two for many of them',
  two: 'two people',
  more: 'a trolley or more people',
};

const partText = ({ name, quantity, unit, length }: OrderOut['parts'][number]): string =>
  length === null ? `${quantityText(quantity, unit)} ${name}` : `${quantity} × ${length} of ${name}`;

const Order: FC<{ order: OrderOut; today: string }> = ({ order, today }) => (
  <section class="order-out">
    <h2>
      <a href={orderPath(order.id)}>{order.customer ?? `Order ${order.id}`}</a>
    </h2>
    <p>
      {contentsText(order.contents)}
      {order.promisedOn && `, promised for ${dayText(order.promisedOn, today)}`}
      {order.phone && `. ${order.phone}`}
    </p>
    {order.address && (
      <p>
        <strong>Goes to:</strong> {order.address}
      </p>
    )}
    {[order.customerNote, order.note].filter(Boolean).map((note) => (
      <p>{note}</p>
    ))}
    <table class="facts-table">
      <thead>
        <tr>
          <th scope="col">Loaded</th>
          <th scope="col">What</th>
          <th scope="col">Each</th>
          <th scope="col">By hand</th>
        </tr>
      </thead>
      <tbody>
        {order.pieces.map(({ name, count, mass, lifting }) => (
          <tr>
            <td class="tick" />
            <td>
              {count} × {name}
            </td>
            <td>{mass}</td>
            <td>{BY_HAND[lifting]}</td>
          </tr>
        ))}
        {order.parts.map((part) => (
          <tr>
            <td class="tick" />
            <td colspan={3}>{partText(part)}</td>
          </tr>
        ))}
      </tbody>
    </table>
    {order.mass && <p class="quiet">{order.mass} of pieces.</p>}
    {order.canGoInParts && (
      <p class="no-print way">
        <a href={`${orderPath(order.id)}#part`}>Only some of it goes out</a>
      </p>
    )}
  </section>
);

interface LoadProps extends Pick<GoingOutModel, 'on' | 'payload' | 'payloadFault'> {
  load: NonNullable<GoingOutModel['load']>;
}

const Load: FC<LoadProps> = ({ load, on, payload, payloadFault }) => (
  <section>
    <h2>Lifting and carrying</h2>
    <form class="form" method="get" action={GOING_OUT}>
      <input type="hidden" name="on" value={on ?? ''} />
      <TextField
        name="payload"
        label="A car or trailer carries"
        hint="What its papers say, less driver and fuel: 400 kg (880 lb)."
        width="short"
        value={payload}
        errors={payloadFault === null ? {} : { payload: payloadFault }}
      />
      <div class="buttons">
        <Button>Count the loads</Button>
      </div>
    </form>
    <ul class="sentences">
      <li>{liftingText(load.heaviest)}</li>
      {load.carried && <li>{loadsAnswer(load.carried)}</li>}
      {load.carried?.loads.map((one) => (
        <li>{loadText(one)}</li>
      ))}
    </ul>
    <p class="quiet">
      The filters are those of HSE INDG143: they say when to look closer and are no legal limits. Pieces are taken to be
      as heavy as when they were poured. Your local rules come first, and what the axle and the tow bar may carry.
    </p>
    <Caution kinds={['lifting', 'standing', 'pins']} />
  </section>
);

const OtherDays: FC<{ model: GoingOutModel }> = ({ model: { days, on, today } }) =>
  days.filter(({ date }) => date !== on).length === 0 ? null : (
    <section class="no-print">
      <h2>Other days</h2>
      <ul class="sentences">
        {days
          .filter(({ date }) => date !== on)
          .map(({ date, count }) => (
            <li>
              <a href={`${GOING_OUT}?on=${date}`}>{dayText(date, today)}</a>: {countText(count, 'order')}
            </li>
          ))}
      </ul>
    </section>
  );

const answerText = ({ orders, load, on, today }: GoingOutModel): string => {
  if (on === null) return 'Nothing goes out yet.';
  if (orders.length === 0) return `Nothing goes out ${onDayText(on, today)}.`;
  const mass = load ? `, ${load.mass}` : '';
  const count = countText(orders.length, 'order');
  return `${count} ${plural(orders.length, 'goes', 'go')} out ${onDayText(on, today)}${mass}.`;
};

/** What goes out on a day: to load by, on a phone or on paper. */
export const GoingOutPage: FC<{ model: GoingOutModel }> = ({ model }) => (
  <>
    <Answer note="By today's plan, each on the day it was promised for, or else as soon as it is ready.">
      {answerText(model)}
    </Answer>
    {model.on === null && <Empty>An order stands here once the plan has a day for it.</Empty>}
    {model.orders.map((order) => (
      <Order order={order} today={model.today} />
    ))}
    {model.load && <Load load={model.load} on={model.on} payload={model.payload} payloadFault={model.payloadFault} />}
    <OtherDays model={model} />
    <div class="buttons">
      <ButtonLink href="/orders">Orders</ButtonLink>
    </div>
  </>
);
