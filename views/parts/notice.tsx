import type { FC } from 'hono/jsx';
import { fullDayWords } from '../../shared/day-words.ts';
import type { ShownChange } from '../../src/usecases/changes/show-change.ts';
import type { DateOrder } from '../../src/usecases/typed/date-typed.ts';
import { Button } from './button.tsx';
import { Dropped } from './dropped.tsx';
import { Moves } from './moves.tsx';
import { quantityText } from './quantity-text.ts';

export type DoneNotice = ShownChange & {
  /** Days that could have been read otherwise. */
  daysRead?: readonly { typed: string; date: string; order: DateOrder }[];
};

/** "5/6 was read as Sat 5 Jun 2027, with the day first." */
export const dayReadText = ({ typed, date, order }: NonNullable<DoneNotice['daysRead']>[number]): string =>
  `${typed} was read as ${fullDayWords(date)}, with the ${order.replace(' first', '')} first.`;

/** The day that was given hangs on it, and tomorrow is too late. */
const BuyToday: FC<{ goods: DoneNotice['buyToday'] }> = ({ goods }) =>
  goods.length === 0 ? null : (
    <p class="buy-today">
      <strong>To be ordered today</strong>, or the days shift:{' '}
      {goods.map(({ name, unit, quantity }) => `${quantityText(quantity, unit)} ${name}`).join('; ')}.{' '}
      <a href="/buying">Buying</a>
    </p>
  );

interface NoticeProps {
  notice: DoneNotice;
  today: string;
  /** Where to come back to after "Undo": this page's path. */
  back: string;
}

/**
 * What was done came to, for dates and for buying. While a better plan is looked for this part alone is shown again: the
 * notice around it keeps the focus, and how days were read stays said.
 */
export const NoticeEffect: FC<{ notice: DoneNotice; today: string }> = ({ notice, today }) => (
  <div class="notice-effect">
    <BuyToday goods={notice.buyToday} />
    <Dropped dropped={notice.dropped} today={today} />
    <Moves moved={notice.moved} today={today} />
    {notice.improving && (
      <p
        class="quiet"
        data-hx-get={`/changes/${notice.change}/notice`}
        data-hx-trigger="load delay:1500ms"
        data-hx-target="closest .notice-effect"
        data-hx-swap="outerHTML"
      >
        A better plan is being looked for: dates that moved may move back.
      </p>
    )}
  </div>
);

/** Says what was just done and which promises moved by it, with a message to copy for each, and takes it back. */
export const Notice: FC<NoticeProps> = ({ notice, today, back }) => (
  <section class="notice" role="status" aria-label="Just done" tabindex={-1}>
    <div class="notice-head">
      <p class="notice-words">{notice.words.replace(/\.?$/, '.')}</p>
      {notice.undone ? (
        <p class="quiet">This was taken back.</p>
      ) : (
        <form method="post" action="/undo" data-hx-post="/undo" data-hx-target="#page">
          <input type="hidden" name="change" value={String(notice.change)} />
          <input type="hidden" name="back" value={back} />
          <Button label={`Undo: ${notice.words}`}>Undo</Button>
        </form>
      )}
    </div>
    {notice.daysRead?.map((day) => (
      <p>{dayReadText(day)}</p>
    ))}
    <NoticeEffect notice={notice} today={today} />
  </section>
);
