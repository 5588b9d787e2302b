import type { Fault } from './fault.ts';
import type { Kit } from './kit.ts';
import { type OrderLine, PIECES_IN_ALL } from './order.ts';

/**
 * What one line asks for: pieces, and cuts of sticks that its kits are packed with. A material counts as nothing, since
 * no quantity of it makes a plan longer.
 *
 * Example: `asksOf([])({ casting: 'panel', quantity: 3 })` is 3; three kits of 4 pieces and 2 pins each are 18.
 */
export const asksOf = (kits: readonly Kit[]): ((line: OrderLine) => number) => {
  const count = (of: readonly { count: number }[]) => of.reduce((sum, x) => sum + x.count, 0);
  const each = new Map(kits.map((kit) => [kit.id, count(kit.pieces) + count(kit.cuts)]));
  return ({ kit, casting, quantity }) => {
    if (kit !== undefined) return quantity * (each.get(kit) ?? 0);
    return casting === undefined ? 0 : quantity;
  };
};

/**
 * The line with which all orders together ask for more than a plan is made for (`PIECES_IN_ALL`), if there is one. Only
 * the first is a fault: what comes after it is no more wrong than that.
 */
export const askedFaults = (yard: { kits: Kit[]; orders: { lines: OrderLine[] }[] }): Fault[] => {
  const asks = asksOf(yard.kits);
  let sum = 0;
  for (const [i, order] of yard.orders.entries())
    for (const [k, line] of order.lines.entries()) {
      sum += asks(line);
      const message = `with this all orders ask for more than ${PIECES_IN_ALL.toLocaleString('en')} pieces and cuts`;
      if (sum > PIECES_IN_ALL) return [{ path: `orders[${i}].lines[${k}].quantity`, message }];
    }
  return [];
};
