import type { Cut } from '../../../shared/material.ts';
import type { Order } from '../../../shared/order.ts';
import type { Ground } from './ground.ts';

/** What an order asks for in all. */
export interface Wants {
  pieces: Map<string, number>;
  parts: Map<string, number>;
  cuts: Cut[];
  packMinutes: number;
}

const add = (sums: Map<string, number>, name: string, quantity: number): void => {
  sums.set(name, (sums.get(name) ?? 0) + quantity);
};

/**
 * Pieces by casting, parts by material, cuts and minutes of packing of all lines of an order.
 *
 * Example: two kits of 2 panels and 10 minutes, and one panel by itself: 5 panels, 20 minutes.
 */
export const wantsOf = ({ kits }: Pick<Ground, 'kits'>, order: Order): Wants => {
  const wants: Wants = { pieces: new Map(), parts: new Map(), cuts: [], packMinutes: 0 };
  for (const line of order.lines) {
    if (line.casting !== undefined) add(wants.pieces, line.casting, line.quantity);
    if (line.material !== undefined) add(wants.parts, line.material, line.quantity);
    const kit = line.kit === undefined ? undefined : kits.get(line.kit)!;
    if (!kit) continue;
    for (const x of kit.pieces) add(wants.pieces, x.casting, x.count * line.quantity);
    for (const x of kit.parts) add(wants.parts, x.material, x.quantity * line.quantity);
    for (const x of kit.cuts) wants.cuts.push({ ...x, count: x.count * line.quantity });
    wants.packMinutes += kit.packMinutes * line.quantity;
  }
  return wants;
};
