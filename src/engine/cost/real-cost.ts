import type { BatchRecord } from '../../../shared/batch-record.ts';
import type { OrderLine } from '../../../shared/order.ts';
import { markKey } from '../../../shared/piece-mark.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import { goodsOfLines } from '../book/goods.ts';
import { chargeBookedOrder } from './charge-booked.ts';
import { Charges } from './charges.ts';
import { type Cost, CostSum } from './cost.ts';
import { batchesByPiece, paidAt, type RecordedGround, type RecordedPiece, recordedPieces } from './recorded-pieces.ts';

/** What an order really cost, as far as that is on record. */
export interface RealCost {
  cost: Cost;
  /** Pieces that went into it; of so many the batch is on record, the others count as estimated. */
  pieces: number;
  onRecord: number;
  /** Pieces poured for it that came out as scrap, and batches for it that were thrown away. */
  scrapped: number;
  thrownAway: number;
  /** Tasks on its pieces, and how many of them were measured by taps at both ends. */
  tasks: number;
  measured: number;
  /** Batches of its pieces that are on record, and goes at packing it, and of how many of these the stock book has what they took. */
  takings: number;
  booked: number;
}

type Packed = Extract<WorkRecord, { kind: 'packed' }>;

const packedOf = (records: readonly WorkRecord[], orders: ReadonlySet<string>): Packed[] => {
  const packed = new Map<string, Packed>();
  for (const record of records) {
    if (record.kind === 'packed' && orders.has(record.order)) packed.set(record.order, record);
    if (record.kind === 'unpacked') packed.delete(record.order);
  }
  return [...packed.values()];
};

type BatchOfPiece = ReturnType<typeof batchesByPiece>;

/** Finds what a recorded piece cost; each batch is reckoned once. */
const pieceFinder = (batches: BatchOfPiece, ground: RecordedGround): ((mark: string) => RecordedPiece | null) => {
  const known = new Map<BatchRecord, Map<string, RecordedPiece> | null>();
  return (mark) => {
    const batch = batches.get(mark);
    if (!batch) return null;
    if (!known.has(batch)) known.set(batch, recordedPieces(batch, ground));
    return known.get(batch)?.get(mark) ?? null;
  };
};

/** What was packed with the pieces of an order: goods by the book where that has them, else by the yard's figures; which, null where it takes none. */
const addPacking = (
  sum: CostSum,
  { at, order, lines }: { at: string; order: string; lines: readonly OrderLine[] },
  ground: RecordedGround,
): 'book' | 'figures' | null => {
  const booked = ground.booked({ order });
  for (const line of lines) sum.addCost(ground.estimates[booked.length > 0 ? 'ofPackingWork' : 'ofPacking'](line));
  if (booked.length === 0) {
    const { parts, cuts } = goodsOfLines(lines, ground.yard);
    return parts.size > 0 || cuts.length > 0 ? 'figures' : null;
  }
  const charges = new Charges();
  chargeBookedOrder(charges, paidAt({ at }, booked, ground), booked, { owner: order, lines, yard: ground.yard });
  sum.addCost(charges.of(order).cost);
  return 'book';
};

/** Marks of pieces that were poured for an order and came out as scrap, then or after mending. */
const scrapFor = ({ records }: RecordedGround, orders: ReadonlySet<string>): string[] => {
  const scrap = new Set(
    records.flatMap((one) =>
      (one.kind === 'stripped' || one.kind === 'after mending') && one.cameOut === 'scrap' ? [markKey(one)] : [],
    ),
  );
  const poured = records.flatMap((one) => (one.kind === 'poured' ? one.pours : []));
  return poured.flatMap((pour) =>
    pour.order !== undefined && orders.has(pour.order) && scrap.has(markKey(pour)) ? [markKey(pour)] : [],
  );
};

const thrownFor = ({ records }: RecordedGround, orders: ReadonlySet<string>) =>
  records.flatMap((record) => {
    if (record.kind !== 'thrown away') return [];
    const own = record.pours.filter(({ order }) => order !== undefined && orders.has(order));
    return own.length === 0 ? [] : [{ record, own }];
  });

const addLost = (sum: CostSum, lost: RecordedPiece | null | undefined): void => {
  if (!lost) return;
  sum.add('rejects', lost.cost.total);
  for (const figure of lost.cost.missing) sum.lacks(figure);
};

/**
 * What an order cost by the record of what was done: its pieces by the batches they came out of, those that were poured
 * for it and came out as scrap, batches for it that were thrown away; parts and pins by the stock book, the work of packing by the
 * yard's figures. `lines` are by order: its number, and those of the parts of it that went out before. Null while no piece of it is on
 * record as packed.
 */
export const realCost = (lines: ReadonlyMap<string, readonly OrderLine[]>, ground: RecordedGround): RealCost | null => {
  const orders = new Set(lines.keys());
  const packed = packedOf(ground.records, orders);
  if (packed.length === 0) return null;
  const batchOf = batchesByPiece(ground.records);
  const find = pieceFinder(batchOf, ground);
  const sum = new CostSum();
  const marked = packed.flatMap(({ pieces }) => pieces);
  const found = marked.map((piece) => ({ ...piece, recorded: find(markKey(piece)) }));
  for (const { casting, recorded } of found) sum.addCost(recorded?.cost ?? ground.estimates.ofCasting(casting));
  const others = packed.flatMap((one) => one.others);
  for (const { casting, count } of others) sum.addCost(ground.estimates.ofCasting(casting), count);
  const packedAt = new Map(packed.map(({ order, at }) => [order, at]));
  const packings = [...lines].map(([order, own]) =>
    addPacking(sum, { at: packedAt.get(order) ?? packed.at(-1)!.at, order, lines: own }, ground),
  );
  const scrap = scrapFor(ground, orders);
  for (const mark of scrap) addLost(sum, find(mark));
  const thrown = thrownFor(ground, orders);
  for (const { record, own } of thrown) {
    const pieces = recordedPieces(record, ground);
    for (const pour of own) addLost(sum, pieces?.get(markKey(pour)));
  }
  const batches = [...new Set(marked.flatMap((piece) => batchOf.get(markKey(piece)) ?? []))];
  const work = found.flatMap(({ recorded }) => recorded?.work ?? []);
  return {
    cost: sum.cost,
    pieces: marked.length + others.reduce((all, { count }) => all + count, 0),
    onRecord: found.filter(({ recorded }) => recorded !== null).length,
    ...{ scrapped: scrap.length, thrownAway: thrown.length },
    takings: batches.length + packings.filter((one) => one !== null).length,
    booked:
      batches.filter((one) => ground.booked(one).length > 0).length + packings.filter((one) => one === 'book').length,
    ...{ tasks: work.length, measured: work.filter(({ measured }) => measured).length },
  };
};
