import type { Order } from '../../../shared/order.ts';
import { dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { goodsOfLines, linesLeft, packMinutesLeft, packMinutesOf } from '../book/goods.ts';
import type { Calendar } from '../calendar/calendar.ts';
import { begunIn } from './begun.ts';
import { holdsByDay } from './holds.ts';
import { isEverInSpells } from './in-one-go.ts';
import { cutsOf, indexOf } from './indices.ts';
import { type CompiledOrder, NEVER, NONE, type PackingHours, type Problem } from './problem.ts';
import { LEAST_SPELL } from './spells.ts';

const dayOr = (date: string | undefined): number => (date === undefined ? NEVER : dayNumber(date));

/** More spells than the packing of an order can be in (R11); 0 where it is never packed but in one go. */
const mostSpells = (order: Order, isGoingOn: boolean, yard: YardFile, hours: PackingHours): number => {
  const minutes = packMinutesOf(order, yard);
  const isBroken = isGoingOn || order.packedMinutes !== undefined || isEverInSpells(hours, minutes);
  return isBroken ? Math.ceil(minutes / LEAST_SPELL) + 2 : 0;
};

/** What an order takes: pieces by casting, parts by material, cuts, and the minutes of packing its kits. */
export const compileOrder = (yard: YardFile, order: Order, calendar: Calendar, hours: PackingHours): CompiledOrder => {
  const [castings, materials] = [indexOf(yard.castings), indexOf(yard.materials)];
  // With the first spell of its packing it has all that it is made of.
  const isGoingOn = begunIn(yard).packs.some((pack) => pack.part === true && pack.order === order.id);
  const { pieces, parts, cuts } = goodsOfLines(isGoingOn ? [] : linesLeft(order), yard);
  const result: CompiledOrder = {
    weight: order.weight,
    dueDay: dayOr(order.due),
    wantedDay: dayOr(order.wanted),
    aimDay: dayOr(order.due ?? order.wanted),
    from: order.notBefore === undefined ? NONE : calendar.midnightOf(dayNumber(order.notBefore)),
    packMinutes: packMinutesLeft(order, yard),
    mostSpells: mostSpells(order, isGoingOn, yard, hours),
    pieces: [],
    pieceCount: 0,
    parts: [],
    cuts: cutsOf(cuts, materials).filter((x) => x.count > 0),
  };
  for (const [id, count] of pieces) if (count > 0) result.pieces.push({ casting: castings.get(id)!, count });
  for (const piece of result.pieces) result.pieceCount += piece.count;
  for (const [id, quantity] of parts) if (quantity > 0) result.parts.push({ material: materials.get(id)!, quantity });
  return result;
};

/** What a problem has of its orders as a whole. */
export const ordersTogether = (
  orders: CompiledOrder[],
  { calendar, shifts, now }: Pick<Problem, 'calendar' | 'shifts' | 'now'>,
): Pick<Problem, 'orders' | 'aimMinutes' | 'holds' | 'isAnyFrom'> => ({
  orders,
  aimMinutes: Int32Array.from(orders, ({ aimDay }) => (aimDay >= NEVER ? NEVER : calendar.midnightOf(aimDay + 1))),
  holds: holdsByDay(orders, shifts, now),
  isAnyFrom: orders.some(({ from }) => from !== NONE),
});
