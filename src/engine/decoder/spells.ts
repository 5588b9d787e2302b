import type { DecoderState } from './decoder-state.ts';
import { NONE } from './problem.ts';

/** An order that is packed over several sessions is packed for so long at least in all of them but the last, in minutes (R11). */
export const LEAST_SPELL = 15;

/** Whether an order is packed in spells: no session is long enough for all of it, or it has been begun that way. */
export const isInSpells = ({ problem }: DecoderState, order: number): boolean => problem.orders[order]!.mostSpells > 0;

/** Minutes of packing an order that are not placed yet. */
export const packingLeft = ({ problem, orders }: DecoderState, order: number): number =>
  problem.orders[order]!.packMinutes - (orders.packed[order] ?? 0);

/** An order is packed for some time: the first spell is when its packing starts. */
export const addSpell = ({ orders }: DecoderState, order: number, start: number, minutes: number): void => {
  const nth = orders.spells[order]!;
  const place = orders.spellsFrom[order]! + nth;
  orders.spellStart[place] = start;
  orders.spellMinutes[place] = minutes;
  orders.spells[order] = nth + 1;
  orders.packed[order] = orders.packed[order]! + minutes;
  if (nth === 0) orders.packStart[order] = start;
};

/** The spells in which an order is packed so far, in order of time. */
export const spellsPlaced = ({ orders }: DecoderState, order: number): { start: number; minutes: number }[] =>
  Array.from({ length: orders.spells[order] ?? 0 }, (_, nth) => {
    const place = orders.spellsFrom[order]! + nth;
    return { start: orders.spellStart[place]!, minutes: orders.spellMinutes[place]! };
  });

/** When the last spell of an order so far is over; NONE before the first. */
export const lastSpellEnd = ({ orders }: DecoderState, order: number): number => {
  const nth = orders.spells[order]!;
  if (nth === 0) return NONE;
  const place = orders.spellsFrom[order]! + nth - 1;
  return orders.spellStart[place]! + orders.spellMinutes[place]!;
};

/** No order is packed yet. */
export const resetSpells = ({ orders }: DecoderState): void => {
  orders.packed.fill(0);
  orders.spells.fill(0);
  orders.spellStart.fill(0);
  orders.spellMinutes.fill(0);
};
