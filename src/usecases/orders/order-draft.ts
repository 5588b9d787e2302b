import { asksOf } from '../../../shared/asked-for.ts';
import type { Fault } from '../../../shared/fault.ts';
import { type OrderLine, PIECES_IN_ALL } from '../../../shared/order.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { lastDay, tooFarText } from '../typed/last-day.ts';
import { changedMeanwhile } from '../typed/meanwhile.ts';
import type { DaysGiven, OrderDraft } from '../typed/order-form.ts';
import { whatOf } from '../typed/what-ordered.ts';
import { offersOf } from './order-contents.ts';

/** More pieces or kits than this are two orders: the plan of one line stays quick to make. */
const MOST_MADE = 200;
/** Parts and bags are bought, not made: only a slip of the hand asks for more. */
const MOST_OF_A_MATERIAL = 1_000_000;

/** The most that one line can ask for. `mostOfLine({ material: 'rod', quantity: 500 })` is 1000000. */
export const mostOfLine = ({ material }: OrderLine): number =>
  material === undefined ? MOST_MADE : MOST_OF_A_MATERIAL;

const quantityFault = (line: OrderLine): string | null => {
  const { material, quantity } = line;
  if (!(quantity > 0)) return 'Has to be more than 0.';
  if (quantity > mostOfLine(line))
    return `${mostOfLine(line).toLocaleString('en')} is the most one line can ask for. Split it into several.`;
  if (material === undefined && !Number.isInteger(quantity)) return 'Has to be a whole number.';
  return null;
};

/** The row with which all orders together ask for more than a plan is made for; none where they do not. */
const tooMuchInAll = (lines: OrderDraft['lines'], yard: YardFile): Fault[] => {
  const asks = asksOf(yard.kits);
  let sum = yard.orders.flatMap((order) => order.lines).reduce((all, line) => all + asks(line), 0);
  for (const { row, line } of lines) {
    sum += asks(line);
    if (sum > PIECES_IN_ALL) return [{ path: `quantity${row}`, message: 'That is more than can be planned here.' }];
  }
  return [];
};

/** What is wrong with the lines alone, by the row they were typed in. */
export const lineFaults = (lines: OrderDraft['lines'], yard: YardFile): Fault[] => {
  if (lines.length === 0) return [{ path: 'what0', message: 'Choose what is ordered, and how many.' }];
  const known = new Set(offersOf(yard, 'metric').map(({ what }) => what));
  const faults = lines.flatMap(({ row, line }): Fault[] => {
    if (!known.has(whatOf(line)))
      return [{ path: `what${row}`, message: 'That is no longer made here. Choose another.' }];
    const message = quantityFault(line);
    return message ? [{ path: `quantity${row}`, message }] : [];
  });
  return faults.length > 0 ? faults : tooMuchInAll(lines, yard);
};

/** Days of an order that stood before it is changed. */
type DaysBefore = Partial<Record<'wantedOn' | 'notBefore' | 'promisedOn' | 'heldUntil', string | null>>;

/** Everything that is wrong with a draft, given the yard without the order and what stood before. */
export const draftFaults = (draft: OrderDraft, yard: YardFile, before: DaysBefore = {}): Fault[] => {
  const linesUnread = draft.unread.some(({ path }) => /^(what|quantity)\d/.test(path));
  const lines = linesUnread && draft.lines.length === 0 ? [] : lineFaults(draft.lines, yard);
  return [...draft.unread, ...lines, ...dayFaults(draft, yard, before)];
};

type Days = Pick<OrderDraft, 'promisedOn' | 'heldUntil'> & Partial<Pick<OrderDraft, 'wantedOn' | 'notBefore'>>;

const tooFarOff = (days: Days, yard: YardFile, before: DaysBefore): Fault[] => {
  const last = lastDay(yard);
  return (['wantedOn', 'notBefore', 'promisedOn', 'heldUntil'] as const)
    .filter((field) => (days[field] ?? '') > last && days[field] !== before[field])
    .map((path) => ({
      path,
      message: tooFarText(last),
    }));
};

/** What somebody else made of the days of an order since its page was made. */
export const meanwhile = (
  { shown = {}, ...typed }: Pick<DaysGiven, 'shown' | 'promisedOn'>,
  { promisedOn, heldUntil }: Pick<Days, 'promisedOn' | 'heldUntil'>,
  yard: YardFile,
): Fault[] =>
  changedMeanwhile({ shown, now: { promisedOn, heldUntil }, typed: { promisedOn: typed.promisedOn } }, todayIn(yard));

/** What is wrong with the days of an order: none is beyond the plan, and a hold is of a date and until a day to come. */
export const dayFaults = (days: Days, yard: YardFile, before: DaysBefore = {}): Fault[] => {
  const { promisedOn, heldUntil } = days;
  const faults = tooFarOff(days, yard, before);
  if (heldUntil && !promisedOn) faults.push({ path: 'promisedOn', message: 'Say which date is held.' });
  if (heldUntil && heldUntil < todayIn(yard) && heldUntil !== before.heldUntil)
    faults.push({ path: 'heldUntil', message: 'That day has passed. A date is held until a day to come.' });
  return faults;
};
