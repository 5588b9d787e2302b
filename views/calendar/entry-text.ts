import type { CalendarEntry, CountedThing, OrderEntry, SessionEntry } from '../../shared/calendar-entry.ts';
import { countText } from '../../shared/plural.ts';
import { dayText } from '../parts/day-text.ts';
import { amountText, quantityText } from '../parts/quantity-text.ts';

/** What a calendar says of an entry: a line, and what stands below it. */
export interface EntryText {
  summary: string;
  lines: string[];
}

const BY_PLAN = 'By the plan of when this was read.';

const orderedText = ({ quantity, unit, name }: CountedThing): string => `${quantityText(quantity, unit)} ${name}`;

/** "12 bags of cement"; what is counted by the piece: "3 mesh sheets" stands as "3 × mesh sheets". */
const boughtText = ({ quantity, unit, name }: CountedThing): string =>
  unit === '' || unit === 'each'
    ? `${quantityText(quantity, unit)} ${name}`
    : `${amountText(quantity, unit)} of ${name}`;

const sessionText = ({ pours, strips }: SessionEntry): EntryText => {
  const cast = pours.length > 0 ? [`cast ${countText(pours.length, 'piece')}`] : [];
  const out = strips > 0 ? [`strip ${strips}`] : [];
  const work = [...cast, ...out].join(', ');
  return {
    summary: work.charAt(0).toUpperCase() + work.slice(1),
    lines: [...pours.map(({ mould, piece, customer }) => `${mould}: ${piece}, for ${customer ?? 'stock'}`), BY_PLAN],
  };
};

const orderText = ({ order, customer, contents, heldUntil, readyOn, on }: OrderEntry): EntryText => ({
  summary: `${heldUntil === null ? 'Promised' : 'Held'}: ${customer ?? `order ${order}`}`,
  lines: [
    ...contents.map(orderedText),
    ...(heldUntil === null ? [] : [`Held until ${dayText(heldUntil, on)}.`]),
    readyOn === null ? 'By plan it cannot be made.' : `By plan ready ${dayText(readyOn, on)}.`,
  ],
});

/** What a calendar says of an entry, in a maker's words. */
export const entryText = (entry: CalendarEntry): EntryText => {
  if (entry.kind === 'session') return sessionText(entry);
  if (entry.kind === 'order') return orderText(entry);
  return {
    summary: `Last day to order ${countText(entry.things.length, 'material')}`,
    lines: [...entry.things.map(boughtText), BY_PLAN],
  };
};
