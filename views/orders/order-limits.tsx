import type { FC } from 'hono/jsx';
import { daysText } from '../../shared/days-text.ts';
import type { OrderLimit } from '../../src/usecases/orders/limits-of-order.ts';
import { dayText } from '../parts/day-text.ts';
import { orderPath } from './order-facts.ts';

/** "One more 1100 mould: Sat 8 May, 7 days sooner." */
const limitText = ({ change, earliestOn, daysSooner }: OrderLimit, today: string): string =>
  `${change}: ${dayText(earliestOn, today)}, ${daysText(daysSooner)} sooner.`;

/** What would bring an order forward; null while nobody has found out. */
export const LimitList: FC<{ limits: readonly OrderLimit[] | null; today: string }> = ({ limits, today }) => {
  if (limits === null) return <p>That took too long to find out. Ask again in a while.</p>;
  if (limits.length === 0) return <p>No single thing that could be changed here would bring it forward.</p>;
  return (
    <ul class="sentences">
      {limits.map((limit) => (
        <li>{limitText(limit, today)}</li>
      ))}
    </ul>
  );
};

/** On the page of a late order: what holds it, found out after the page is there; without script by a link. */
export const WhatHoldsIt: FC<{ id: string; limits: readonly OrderLimit[] | null | undefined; today: string }> = ({
  id,
  limits,
  today,
}) => (
  <section>
    <h2>Held up by</h2>
    {limits === undefined ? (
      <p class="way">
        <a
          href={`${orderPath(id)}?holds=yes`}
          data-hx-get={`${orderPath(id)}/limits`}
          data-hx-trigger="load delay:300ms, click"
          data-hx-target="closest p"
          data-hx-swap="outerHTML"
        >
          Find out what would bring it forward
        </a>
      </p>
    ) : (
      <LimitList limits={limits} today={today} />
    )}
  </section>
);
