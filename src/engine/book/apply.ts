import type { Mould } from '../../../shared/mould.ts';
import type { Order } from '../../../shared/order.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Entry, MouldPatch } from './entry.ts';
import { changePieces } from './lots.ts';
import { withOffcuts } from './offcuts.ts';
import { withRests } from './rests.ts';
import { withBags } from './stock-lots.ts';

/** A mould after a patch; what only the store knows of it is not in a yard file. */
const patched = (
  mould: Mould,
  { repairedOn, dryFrom, damageNote: _note, emptiedAt: _emptied, ...state }: MouldPatch,
): Mould => {
  const { repairedOn: dayBefore, dryFrom: dryBefore, ...rest } = mould;
  const day = repairedOn === undefined ? dayBefore : (repairedOn ?? undefined);
  const dry = dryFrom === undefined ? dryBefore : (dryFrom ?? undefined);
  return {
    ...{ ...rest, ...state },
    ...(day === undefined ? {} : { repairedOn: day }),
    ...(dry === undefined ? {} : { dryFrom: dry }),
  };
};

const free = <T extends { order?: string | undefined }>(piece: T, order: string): T => {
  if (piece.order !== order) return piece;
  const { order: _order, ...rest } = piece;
  return rest as T;
};

const withOrder = (yard: YardFile, id: string, change: (order: Order) => Order): YardFile => ({
  ...yard,
  orders: yard.orders.map((order) => (order.id === id ? change(order) : order)),
});

/** A yard file after one entry of the book. */
const applyOne = (yard: YardFile, entry: Entry): YardFile => {
  switch (entry.kind) {
    case 'mould':
      return {
        ...yard,
        moulds: yard.moulds.map((mould) => (mould.id === entry.mould ? patched(mould, entry.patch) : mould)),
      };
    case 'filled':
      return { ...yard, inMould: [...yard.inMould, entry.piece] };
    case 'emptied':
      return { ...yard, inMould: yard.inMould.filter(({ mould }) => mould !== entry.mould) };
    case 'stock':
      return {
        ...yard,
        materials: yard.materials.map((one) =>
          one.id === entry.material ? withBags(one, { ...entry.bags, quantity: entry.quantity }) : one,
        ),
      };
    case 'offcuts':
      return {
        ...yard,
        materials: yard.materials.map((one) =>
          one.id === entry.material ? withOffcuts(one, entry.lengthMm, entry.count) : one,
        ),
      };
    case 'rests':
      return {
        ...yard,
        materials: yard.materials.map((one) => (one.id === entry.material ? withRests(one, entry, entry.count) : one)),
      };
    case 'pieces in':
    case 'pieces out':
      return { ...yard, finished: changePieces(yard.finished, entry, (pieces) => pieces) };
    case 'freed':
      return {
        ...yard,
        finished: changePieces(yard.finished, entry, (pieces) => pieces),
        inMould: yard.inMould.map((piece) => free(piece, entry.order)),
      };
    case 'packed':
    case 'unpacked': {
      const lines = entry.kind === 'packed' ? [] : [...entry.lines];
      return withOrder(yard, entry.order, ({ packedMinutes: _minutes, ...order }) => ({ ...order, lines }));
    }
    case 'packed in part':
      return withOrder(yard, entry.order, (order) => ({ ...order, packedMinutes: entry.minutes }));
    case 'handed over':
      return { ...yard, orders: yard.orders.filter(({ id }) => id !== entry.order) };
    default:
      // Pieces to mend stand in the store only.
      return yard;
  }
};

/**
 * A yard file as it stands after entries of the book, one after another: the same that loading it gives once the store has
 * written them. An order that is packed asks for nothing more, so it has no lines.
 */
export const apply = (yard: YardFile, entries: readonly Entry[]): YardFile => entries.reduce(applyOne, yard);
