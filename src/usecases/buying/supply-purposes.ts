import type { Minute } from '../../../shared/time.ts';
import type { MaterialUse } from './material-uses.ts';

/** A quantity that comes in. */
export interface Supply {
  at: Minute;
  quantity: number;
}

/** What a supply is for: the orders whose uses it covers (null for stock), or to have again what is always kept. */
export interface SupplyPurpose {
  orders: (string | null)[];
  keep: boolean;
}

const TOLERANCE = 1e-9;

/**
 * Whom each supply is for, in the order in which the supplies are given. Uses are met in order of time, first from what
 * is free in the yard (in the yard, less what is always kept), then from what comes in, the soonest first.
 * Free 5, uses of 3 (A), 4 (B) and 2 (C), supplies of 2 and 3: the first is for B, the second for C.
 */
export const supplyPurposes = (
  free: number,
  uses: readonly MaterialUse[],
  supplies: readonly Supply[],
): SupplyPurpose[] => {
  let used = 0;
  const stretches = uses.map(({ quantity, orders }) => {
    const from = used;
    used += quantity;
    return { from, to: used, orders };
  });
  const purposes = new Map<Supply, SupplyPurpose>();
  let from = free;
  let first = 0;
  for (const supply of [...supplies].sort((a, b) => a.at - b.at)) {
    const to = from + supply.quantity;
    // What one supply lies beyond, every later one lies beyond.
    while (first < stretches.length && stretches[first]!.to - TOLERANCE <= from) first += 1;
    const orders = new Set<string | null>();
    for (let at = first; at < stretches.length && stretches[at]!.from < to - TOLERANCE; at += 1)
      for (const order of stretches[at]!.orders) orders.add(order);
    purposes.set(supply, { orders: [...orders], keep: from < -TOLERANCE });
    from = to;
  }
  return supplies.map((supply) => purposes.get(supply) ?? { orders: [], keep: false });
};
