import type { FC } from 'hono/jsx';
import { daysText } from '../../shared/days-text.ts';
import { plural } from '../../shared/plural.ts';
import { dayNumber } from '../../shared/time.ts';
import type { ShownChange } from '../../src/usecases/changes/show-change.ts';
import { CopyMessage } from './copy-message.tsx';
import { dayText } from './day-text.ts';
import { LongList } from './long-list.tsx';
import { countWord } from './quantity-text.ts';

/** An order whose date by plan moved. `from` or `to` is null when it could not, or cannot now, be made. */
export type MovedPromise = ShownChange['moved'][number];

const nameOf = (moved: MovedPromise) => moved.customer ?? `Order ${moved.order}`;

/** "7 days later", "2 days sooner", "can't be made now", "can be made again". */
export const moveText = (from: string | null, to: string | null): string => {
  if (to === null) return "can't be made now";
  if (from === null) return 'can be made again';
  const days = dayNumber(to) - dayNumber(from);
  return `${daysText(Math.abs(days))} ${days > 0 ? 'later' : 'sooner'}`;
};

/** What to write to the customer. It never promises more than "by today's plan". */
export const moveMessage = (moved: MovedPromise, today: string): string => {
  const hello = moved.customer ? `Hello ${moved.customer}. ` : '';
  const told = moved.promisedOn ? `We had said ${dayText(moved.promisedOn, today)}. ` : '';
  if (moved.to === null)
    return `${hello}${told}By today's plan we can't give a date for your order ${moved.order} just now. We will write as soon as we can.`;
  const ready = `By today's plan your order ${moved.order} will be ready ${dayText(moved.to, today)}`;
  const before = moved.from && !moved.promisedOn ? `, ${moveText(moved.from, moved.to)} than the plan was before` : '';
  return `${hello}${told}${ready}${before}.`;
};

/** How it stands to the date given, or else asked for, where that is worth a word. */
export const standingText = ({
  daysLate,
  isWanted,
  kind,
}: Pick<MovedPromise, 'daysLate' | 'isWanted' | 'kind'>): string => {
  if (daysLate) return `; ${daysText(daysLate)} after the date ${isWanted ? 'wanted' : 'given'}`;
  return kind === 'spare' ? '; no day left to spare' : '';
};

/** Whether there is something to write to the customer: a day by plan that moves within the date promised is not his. */
const isNews = ({ kind, promisedOn }: MovedPromise): boolean =>
  kind !== 'spare' && !(kind === 'planned' && promisedOn !== null);

interface MoveProps {
  today: string;
  /** Nothing is to be written to anybody: it has not happened yet. */
  ahead?: boolean;
}

const Move: FC<{ moved: MovedPromise } & MoveProps> = ({ moved, today, ahead }) => {
  const late = moved.to === null || (moved.daysLate ?? 0) > 0;
  return (
    <li class={late ? 'move late' : 'move'}>
      <p>
        <strong>{nameOf(moved)}</strong>: {moved.from ? dayText(moved.from, today) : 'no date'} to{' '}
        {moved.to ? dayText(moved.to, today) : 'no date'}, {moveText(moved.from, moved.to)}
        {standingText(moved)}.{moved.reason && ` ${moved.reason}`}
      </p>
      {isNews(moved) && !ahead && (
        <CopyMessage id={`message-${moved.order}`} text={moveMessage(moved, today)} name={nameOf(moved)} />
      )}
    </li>
  );
};

/** "one order", "three orders" */
export const ordersText = (count: number): string => `${countWord(count).toLowerCase()} ${plural(count, 'order')}`;

/** "The day by plan of three orders moved, and no date given did.": for what is not worth interrupting anybody. */
const quietText = (planned: number, given: number, ahead = false): string => {
  const orders = ordersText(planned);
  if (ahead) return `The day by plan of ${orders} would move as well.`;
  return given === 0
    ? `The day by plan of ${orders} moved, and no date given did.`
    : `The day by plan of ${orders} moved as well.`;
};

const MoveList: FC<{ moved: readonly MovedPromise[] } & MoveProps> = ({ moved, ...props }) => (
  <ul class="moves">
    <LongList items={moved} draw={(one) => <Move moved={one} {...props} />} />
  </ul>
);

/** Dates given that moved, each with a message. All other days are only counted, and can be opened. */
export const Moves: FC<{ moved: readonly MovedPromise[] } & MoveProps> = ({ moved, ...props }) => {
  const given = moved.filter(({ kind }) => kind !== 'planned');
  const planned = moved.filter(({ kind }) => kind === 'planned');
  if (moved.length === 0) return <p class="quiet">No date moved.</p>;
  return (
    <>
      {given.length > 0 && <MoveList moved={given} {...props} />}
      {planned.length > 0 && props.ahead && given.length === 0 && <MoveList moved={planned} {...props} />}
      {planned.length > 0 && !(props.ahead && given.length === 0) && (
        <details class="message">
          <summary>{quietText(planned.length, given.length, props.ahead)}</summary>
          <MoveList moved={planned} {...props} />
        </details>
      )}
    </>
  );
};
