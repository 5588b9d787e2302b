import { daysText } from '../../shared/days-text.ts';
import { listText } from '../../shared/list-text.ts';
import { plural } from '../../shared/plural.ts';
import { dayNumber } from '../../shared/time.ts';
import type { ShownChange } from '../../src/usecases/changes/show-change.ts';
import type { PromiseMove } from '../../src/usecases/plan/promises-moved.ts';
import { dayText } from '../parts/day-text.ts';
import { countWord } from '../parts/quantity-text.ts';

/** An order whose date by plan moved. `from` or `to` is null when it could not, or cannot now, be made. */
export type MovedPromise = ShownChange['moved'][number];

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

/** "one order", "three orders" */
export const ordersText = (count: number): string => `${countWord(count).toLowerCase()} ${plural(count, 'order')}`;

const counted = (count: number, one: string, many: string): string[] =>
  count === 0 ? [] : [`${countWord(count).toLowerCase()} ${count === 1 ? one : many}`];

/** "This moves two promises.", "… one promise and one date wanted.", "… the day by plan of one order, and no date given." */
export const effectText = (moved: readonly Pick<MovedPromise, 'kind' | 'isWanted'>[]): string => {
  const spoken = moved.filter(({ kind }) => kind !== 'planned');
  if (spoken.length === 0) return `This moves the day by plan of ${ordersText(moved.length)}, and no date given.`;
  const wanted = spoken.filter(({ isWanted }) => isWanted).length;
  const each = [
    ...counted(spoken.length - wanted, 'promise', 'promises'),
    ...counted(wanted, 'date wanted', 'dates wanted'),
  ];
  return `This moves ${listText(each)}.`;
};

const dateText = (date: string | null, today: string): string => (date === null ? 'no date' : dayText(date, today));

/** "School garden: Sat 8 May to Sat 15 May, 7 days later; 7 days after the date given." */
export const movedText = (move: PromiseMove, today: string): string => {
  const name = move.customer ?? `Order ${move.order}`;
  const reason = move.reason ? ` ${move.reason.replace(/\.?$/, '.')}` : '';
  const days = `${dateText(move.from, today)} to ${dateText(move.to, today)}, ${moveText(move.from, move.to)}`;
  return `${name}: ${days}${standingText(move)}.${reason}`;
};
