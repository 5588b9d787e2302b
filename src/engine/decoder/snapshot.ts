import type { Placing } from './decoder-state.ts';
import type { RackState } from './rack.ts';
import type { StockState } from './stock.ts';

/** What a decode has come to at the start of a shift: all that the shifts after it depend on. */
export interface Snapshot {
  ints: Int32Array;
  rack: RackState;
  stock: StockState;
  waiting: number[];
  open: number;
  left: number;
  batches: number;
  pours: number;
}

/** Takes a snapshot, into the arrays of an old one where there is one. */
export const takeSnapshot = (at: Placing, into?: Snapshot): Snapshot => {
  const ints = into?.ints ?? new Int32Array(at.state.length);
  ints.set(at.state);
  return {
    ints,
    rack: at.rack.save(),
    stock: at.stock.save(),
    waiting: [...at.orders.waiting],
    open: at.orders.open,
    left: at.demand.total,
    batches: at.placed.batches,
    pours: at.placed.pours,
  };
};

/**
 * Puts everything back to a snapshot of the same problem. The arrays of `at` are written over; the snapshot stays
 * good.
 */
export const restoreSnapshot = (at: Placing, from: Snapshot): void => {
  at.state.set(from.ints);
  at.rack.restore(from.rack);
  at.stock.restore(from.stock);
  at.orders.waiting = [...from.waiting];
  at.orders.open = from.open;
  at.demand.total = from.left;
  at.placed.batches = from.batches;
  at.placed.pours = from.pours;
};

const isSameList = (a: ArrayLike<number>, b: ArrayLike<number>): boolean => {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
};

/** True when two plans stand alike: whatever comes after is the same in both, but for what they are told to do. */
export const isSameState = (a: Snapshot, b: Snapshot): boolean =>
  a.pours === b.pours &&
  a.batches === b.batches &&
  a.open === b.open &&
  a.left === b.left &&
  isSameList(a.ints, b.ints) &&
  isSameList(a.waiting, b.waiting) &&
  isSameList(a.rack.readyAt, b.rack.readyAt) &&
  isSameList(a.rack.spaces, b.rack.spaces) &&
  isSameList(a.stock.used, b.stock.used) &&
  a.stock.offcuts.every((list, material) => isSameList(list, b.stock.offcuts[material]!));
