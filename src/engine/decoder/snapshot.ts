import type { DecoderState } from './decoder-state.ts';
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
  deals: number;
}

/** Takes a snapshot, into the arrays of an old one where there is one. */
export const takeSnapshot = (state: DecoderState, into?: Snapshot): Snapshot => {
  const ints = into?.ints ?? new Int32Array(state.shiftBlock.length);
  ints.set(state.shiftBlock);
  return {
    ints,
    rack: state.rack.save(),
    stock: state.stock.save(state.timeline.to),
    waiting: [...state.orders.waiting],
    open: state.orders.open,
    left: state.demand.total,
    batches: state.placed.batches,
    pours: state.placed.pours,
    deals: state.placed.deals,
  };
};

/**
 * Puts everything back to a snapshot of the same problem. The arrays of `state` are written over; the snapshot stays
 * good.
 */
export const restoreSnapshot = (state: DecoderState, from: Snapshot): void => {
  state.shiftBlock.set(from.ints);
  state.rack.restore(from.rack);
  state.stock.restore(from.stock);
  state.orders.waiting = [...from.waiting];
  state.orders.open = from.open;
  state.demand.total = from.left;
  state.placed.batches = from.batches;
  state.placed.pours = from.pours;
  state.placed.deals = from.deals;
};

const isSameList = (a: ArrayLike<number>, b: ArrayLike<number>): boolean => {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
};

const isSameUses = (a: StockState['dated'][number], b: StockState['dated'][number]): boolean =>
  a.length === b.length && a.every(({ at, quantity }, i) => at === b[i]!.at && quantity === b[i]!.quantity);

/** True when two plans stand alike: whatever comes after is the same in both, but for what they are told to do. */
export const isSameState = (a: Snapshot, b: Snapshot): boolean =>
  a.pours === b.pours &&
  a.batches === b.batches &&
  a.deals === b.deals &&
  a.open === b.open &&
  a.left === b.left &&
  isSameList(a.ints, b.ints) &&
  isSameList(a.waiting, b.waiting) &&
  isSameList(a.rack.readyAt, b.rack.readyAt) &&
  isSameList(a.rack.spaces, b.rack.spaces) &&
  isSameList(a.stock.used, b.stock.used) &&
  a.stock.dated.every((uses, material) => isSameUses(uses, b.stock.dated[material]!)) &&
  a.stock.open.every(
    ({ left, from }, material) =>
      isSameList(left, b.stock.open[material]!.left) && isSameList(from, b.stock.open[material]!.from),
  );
