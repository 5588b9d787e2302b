import type { FC } from 'hono/jsx';
import { dayNumber } from '../../shared/time.ts';
import type { ShownChange } from '../../src/usecases/show-change.ts';
import { CopyMessage } from './copy-message.tsx';
import { countText, dayText } from './day-text.ts';

/** An order whose date by plan moved. `from` or `to` is null when it could not, or cannot now, be made. */
export type MovedPromise = ShownChange['moved'][number];

const nameOf = (moved: MovedPromise) => moved.customer ?? `Order ${moved.order}`;

/** "7 days later", "2 days sooner", "can't be made now", "can be made again". */
export const moveText = (from: string | null, to: string | null): string => {
  if (to === null) return "can't be made now";
  if (from === null) return 'can be made again';
  const days = dayNumber(to) - dayNumber(from);
  return `${countText(Math.abs(days), 'day')} ${days > 0 ? 'later' : 'sooner'}`;
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

const Move: FC<{ moved: MovedPromise; today: string }> = ({ moved, today }) => {
  const late = moved.to === null || (moved.daysLate ?? 0) > 0;
  return (
    <li class={late ? 'move late' : 'move'}>
      <p>
        <strong>{nameOf(moved)}</strong>: {moved.from ? dayText(moved.from, today) : 'no date'} to{' '}
        {moved.to ? dayText(moved.to, today) : 'no date'}, {moveText(moved.from, moved.to)}
        {moved.daysLate ? `; ${countText(moved.daysLate, 'day')} after the date given` : ''}.
        {moved.reason && ` ${moved.reason}`}
      </p>
      <CopyMessage id={`message-${moved.order}`} text={moveMessage(moved, today)} name={nameOf(moved)} />
    </li>
  );
};

export const Moves: FC<{ moved: readonly MovedPromise[]; today: string }> = ({ moved, today }) =>
  moved.length === 0 ? (
    <p class="quiet">No date moved.</p>
  ) : (
    <ul class="moves">
      {moved.map((one) => (
        <Move moved={one} today={today} />
      ))}
    </ul>
  );
