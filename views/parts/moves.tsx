import type { FC } from 'hono/jsx';
import { type MovedPromise, moveMessage, moveText, ordersText, standingText } from '../words/moved-text.ts';
import { CopyMessage } from './copy-message.tsx';
import { dayText } from './day-text.ts';
import { LongList } from './long-list.tsx';

const nameOf = (moved: MovedPromise) => moved.customer ?? `Order ${moved.order}`;

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
