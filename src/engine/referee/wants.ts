import type { Cut } from '../../../shared/material.ts';
import type { Order } from '../../../shared/order.ts';
import type { Ground } from './ground.ts';

/** What an order asks for in all. */
export interface Wants {
  pieces: Map<string, number>;
  parts: Map<string, number>;
  cuts: Cut[];
  /** What is left of packing it. */
  packMinutes: number;
  /** All of that, done already or not. */
  allPackMinutes: number;
}

const add = (sums: Map<string, number>, name: string, quantity: number): void => {
  sums.set(name, (sums.get(name) ?? 0) + quantity);
};

/** What all lines of an order come to, packed or not. */
const wantsInAll = ({ kits }: Pick<Ground, 'kits'>, order: Order): Wants => {
  const wants: Wants = { pieces: new Map(), parts: new Map(), cuts: [], packMinutes: 0, allPackMinutes: 0 };
  for (const line of order.lines) {
    if (line.casting !== undefined) add(wants.pieces, line.casting, line.quantity);
    if (line.material !== undefined) add(wants.parts, line.material, line.quantity);
    const kit = line.kit === undefined ? undefined : kits.get(line.kit)!;
    if (!kit) continue;
    for (const x of kit.pieces) add(wants.pieces, x.casting, x.count * line.quantity);
    for (const x of kit.parts) add(wants.parts, x.material, x.quantity * line.quantity);
    for (const x of kit.cuts) wants.cuts.push({ ...x, count: x.count * line.quantity });
    wants.allPackMinutes += kit.packMinutes * line.quantity;
  }
  wants.packMinutes = wants.allPackMinutes;
  return wants;
};

/**
 * Pieces by casting, parts by material, cuts and minutes of packing of all lines of an order. One of which some is packed
 * has got its goods, and asks for the rest of its packing only.
 *
 * Example: two kits of 2 panels and 10 minutes, and one panel by itself: 5 panels, 20 minutes.
 */
export const wantsOf = (ground: Pick<Ground, 'kits'>, order: Order): Wants => {
  const wants = wantsInAll(ground, order);
  if (order.packedMinutes === undefined) return wants;
  const packMinutes = Math.max(0, wants.allPackMinutes - order.packedMinutes);
  return { pieces: new Map(), parts: new Map(), cuts: [], packMinutes, allPackMinutes: wants.allPackMinutes };
};
