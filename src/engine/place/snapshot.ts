import type { Placing } from './placing.ts';
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

/** The arrays that change from shift to shift, in a fixed order. What has been placed is only ever added to. */
const changing = (at: Placing): Int32Array[] => {
  const { demand, orders, placed } = at;
  return [
    ...Object.values(at.moulds as unknown as Record<string, Int32Array>),
    demand.head,
    demand.left,
    demand.need,
    demand.prepped,
    orders.unpoured,
    orders.unstripped,
    orders.readyAt,
    orders.packStart,
    orders.completesAt,
    placed.firstStripStart,
    placed.firstReadyAt,
    placed.firstOrder,
    at.waited,
  ];
};

/** Takes a snapshot, into the arrays of an old one where there is one. */
export const takeSnapshot = (at: Placing, into?: Snapshot): Snapshot => {
  const arrays = changing(at);
  const ints = into?.ints ?? new Int32Array(arrays.reduce((n, x) => n + x.length, 0));
  let offset = 0;
  for (const array of arrays) {
    ints.set(array, offset);
    offset += array.length;
  }
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

export const restoreSnapshot = (at: Placing, from: Snapshot): void => {
  let offset = 0;
  for (const array of changing(at)) {
    array.set(from.ints.subarray(offset, offset + array.length));
    offset += array.length;
  }
  at.rack.restore(from.rack);
  at.stock.restore(from.stock);
  at.orders.waiting = [...from.waiting];
  at.orders.open = from.open;
  at.demand.total = from.left;
  at.placed.batches = from.batches;
  at.placed.pours = from.pours;
};
