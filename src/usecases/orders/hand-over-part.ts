import { addOrder, nextOrderId, replaceLines, type StoredOrder } from '../../../db/stores/order-store.ts';
import type { OrderLine } from '../../../shared/order.ts';
import { countText } from '../../../shared/plural.ts';
import { handOverPart } from '../../engine/book/pack.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { recordPiecesTaken } from '../plan/pieces-recorded.ts';
import { plannedFor, writeBooked } from '../plan/recording-work.ts';
import { type FormFields, wholeTyped } from '../typed/form-fields.ts';
import { orderName, unpackedOrder } from './open-order.ts';

/** The name of the field that says how many of a line go out: "part0". */
const fieldOf = (place: number): string => `part${place}`;

const isBought = ({ material }: OrderLine): boolean => material !== undefined;

/** How many of each line go out, by its place. Refused at the field that says more than there is, or that is no number. */
const goingTyped = (lines: readonly OrderLine[], fields: FormFields): Outcome<number[]> => {
  const going: number[] = [];
  for (const [place, line] of lines.entries()) {
    const typed = fields[fieldOf(place)] ?? '';
    const count = isBought(line) || typed === '' ? 0 : wholeTyped(typed);
    if (count === null) return refuse(fieldOf(place), 'How many go out? Write a whole number.');
    if (count > line.quantity) return refuse(fieldOf(place), `There are only ${line.quantity} in the order.`);
    going.push(count);
  }
  return done(going);
};

const some = (lines: readonly OrderLine[], count: (line: OrderLine, place: number) => number): OrderLine[] =>
  lines.map((line, place) => ({ ...line, quantity: count(line, place) })).filter(({ quantity }) => quantity > 0);

/** The part that goes out, and the rest. */
const apart = ({ id, lines }: StoredOrder, fields: FormFields): Outcome<{ part: OrderLine[]; rest: OrderLine[] }> => {
  const going = goingTyped(lines, fields);
  if (!going.ok) return going;
  const part = some(lines, (_line, place) => going.value[place]!);
  const rest = some(lines, ({ quantity }, place) => quantity - going.value[place]!);
  if (part.length === 0) return refuse('part', 'Nothing was chosen to go out. Nothing was changed.');
  if (rest.length === 0) return refuse('part', `That is all of order ${id}: mark it handed over. Nothing was changed.`);
  return done({ part, rest });
};

const factsOf = (order: StoredOrder) => {
  const { customer: _customer, lines: _lines, status: _status, handedOverOn: _on, partOf: _of, ...facts } = order;
  const { packedAt: _at, packedMinutes: _minutes, ...unpacked } = facts;
  return unpacked;
};

/**
 * Some kits or pieces of an order go out before the rest: they are an order of their own from then on, handed over today, with
 * the same customer and dates. The rest keeps its number and its date. Parts that are bought stay with the rest. Short in the
 * book, it is refused as handing over all of it is.
 */
export const handOverPartOf = (
  context: UseCaseContext,
  id: string,
  fields: FormFields,
): Promise<Outcome<Changed<{ name: string; part: string; pieces: number }>>> =>
  changing(
    context,
    {
      kind: 'order handed over in part',
      words: ({ name, part, pieces }) => `${countText(pieces, 'part')} of order ${id} handed over as ${part} (${name})`,
    },
    async (tx, yard, _change, plan) => {
      const found = await unpackedOrder(tx, id);
      if (!found.ok) return found;
      const parts = apart(found.value, fields);
      if (!parts.ok) return parts;
      const on = today(yard.yard.timeZone, context.now);
      const part = await nextOrderId(tx, on);
      await addOrder(tx, { ...factsOf(found.value), id: part, partOf: id, lines: parts.value.part });
      await replaceLines(tx, id, parts.value.rest);
      const work = { order: id, part, lines: parts.value.part, planned: plannedFor(plan, id), on, cutFrom: [] };
      const booked = handOverPart(yard, { ...work, evenShort: fields.evenShort === 'yes' });
      await recordPiecesTaken(tx, yard, booked, { order: part, lines: parts.value.part });
      const written = await writeBooked(tx, booked);
      if (!written.ok) return written;
      const pieces = parts.value.part.reduce((sum, { quantity }) => sum + quantity, 0);
      return done({ name: orderName(found.value), part, pieces });
    },
  );
