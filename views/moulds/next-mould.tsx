import type { FC } from 'hono/jsx';
import { daysText } from '../../shared/days-text.ts';
import { listText } from '../../shared/list-text.ts';
import type { MouldToBuild, NextMoulds } from '../../src/usecases/moulds/next-moulds-to-build.ts';
import { MouldShape } from './mould-shape.tsx';

/** "One more 1100 mould would take 12 days off what is late: School garden 7 days and Pat Dunne 5 days." */
const nextMouldText = ({ kind, days, orders }: MouldToBuild): string => {
  const each = orders.map(({ customer, order, days: off }) => `${customer ?? `order ${order}`} ${daysText(off)}`);
  const mould = /mould$/i.test(kind) ? kind : `${kind} mould`;
  return `One more ${mould} would take ${daysText(days)} off what is late: ${listText(each)}.`;
};

interface NextProps {
  /** Null until it is asked for. */
  next: NextMoulds | null;
  /** Of the yard's moulds, in mm: what is drawn is drawn beside it. */
  longestMm: number;
}

const NextMouldList: FC<NextProps & { next: NextMoulds }> = ({ next: { moulds, lateOrders }, longestMm }) => {
  if (lateOrders === 0) return <p>Nothing is late by today's plan, so no mould is missing.</p>;
  if (moulds === null) return <p>That took too long to find out. Ask again in a while.</p>;
  if (moulds.length === 0) return <p>One more mould, of whatever kind, would take no day off what is late.</p>;
  return (
    <ul class="to-build">
      {moulds.map((mould) => (
        <li>
          <MouldShape
            fill="to-build"
            painted={mould.kind}
            mould={{ lengthMm: mould.lengthMm, turnsToSealing: null, turnsBetweenCoats: null }}
            longestMm={Math.max(longestMm, mould.lengthMm ?? 0)}
          />
          <span>{nextMouldText(mould)}</span>
        </li>
      ))}
    </ul>
  );
};

/** Which mould to build next, worked out when it is asked for. */
export const NextMould: FC<NextProps> = ({ next, longestMm }) => (
  <section id="next-mould" class={next === null ? 'no-print' : undefined}>
    <h2>Which mould to build next</h2>
    {next === null ? (
      <p class="way">
        <a
          class="button plain"
          href="/moulds?next=yes#next-mould"
          data-hx-get="/moulds/next"
          data-hx-target="#next-mould"
          data-hx-swap="outerHTML"
        >
          Find out
        </a>
      </p>
    ) : (
      <>
        <NextMouldList next={next} longestMm={longestMm} />
        {next.moulds && next.moulds.length > 0 && (
          <p class="quiet">
            Each counted by itself, built and sealed from today on. The one that helps most stands first: orders that
            must not slip count more.
          </p>
        )}
      </>
    )}
  </section>
);
