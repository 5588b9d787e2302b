import type { Cut, SheetCut } from '../../../shared/material.ts';
import type { Order, OrderLine } from '../../../shared/order.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { bagsFor } from '../pack/bags.ts';

/** So much of a material, in its own unit. */
export interface Goods {
  material: string;
  quantity: number;
}

/**
 * What work takes from the stock: amounts of materials, and pieces that are cut from sticks. `sheets` are pieces of sheets; of
 * those a material that is not in sheets does not know.
 */
export interface Taken {
  goods: Goods[];
  cuts: Cut[];
  sheets?: readonly SheetCut[];
}

/**
 * Bags for the pieces of a batch (R4): their kg, rounded up to what can be mixed; none for pieces without weight. Pieces
 * that the yard does not know weigh nothing.
 */
export const bagsOfPieces = (
  mix: YardFile['mixes'][number],
  castings: readonly string[],
  book: Pick<YardFile, 'castings'>,
): number => {
  const kg = castings.reduce((sum, casting) => sum + (book.castings.find(({ id }) => id === casting)?.kg ?? 0), 0);
  return bagsFor(kg, mix.yieldKgPerBag, mix.bagStep);
};

type Quantity<M> = { material: M; quantity: number };
type CutOf<M> = { material: M; lengthMm: number; count: number };

/** What takes goods: a list of them so many times over, lengths to cut, and pieces of sheets. Lists are only read. */
export interface Taker<M, S> {
  add(goods: readonly Quantity<M>[], times?: number): void;
  addCuts(cuts: readonly CutOf<M>[]): void;
  addSheets(cuts: readonly S[]): void;
}

/**
 * All that one batch takes at its start (R10): its bags' materials, what goes into its pieces, and what is cut for them.
 * Materials and castings may be known by id or by number: the planner asks the same as the stock book.
 */
export const takeForBatch = <M, S, C extends PropertyKey>(
  taker: Taker<M, S>,
  mix: { perBag: readonly Quantity<M>[] },
  bags: number,
  castings: Readonly<
    Record<C, { perPiece: readonly Quantity<M>[]; cuts: readonly CutOf<M>[]; sheets?: readonly S[] | undefined }>
  >,
  pours: readonly { casting: C }[],
): void => {
  taker.add(mix.perBag, bags);
  for (const { casting } of pours) {
    const piece = castings[casting];
    if (!piece) continue;
    taker.add(piece.perPiece);
    taker.addCuts(piece.cuts);
    if (piece.sheets) taker.addSheets(piece.sheets);
  }
};

/** What a batch and the pieces poured from it take from the stock. */
export const goodsOfBatch = (
  mix: YardFile['mixes'][number],
  bags: number,
  castings: readonly string[],
  book: Pick<YardFile, 'castings'>,
): Taken => {
  const goods: Goods[] = [];
  const cuts: Cut[] = [];
  const sheets: SheetCut[] = [];
  const taker: Taker<string, SheetCut> = {
    add: (list, times = 1) => {
      for (const { material, quantity } of list) goods.push({ material, quantity: quantity * times });
    },
    addCuts: (list) => cuts.push(...list),
    addSheets: (list) => sheets.push(...list),
  };
  const pieces = Object.fromEntries(book.castings.map((casting) => [casting.id, casting]));
  takeForBatch(
    taker,
    mix,
    bags,
    pieces,
    castings.map((casting) => ({ casting })),
  );
  return { goods, cuts, ...(sheets.length > 0 ? { sheets } : {}) };
};

/** What has to be there to hand an order over: pieces by casting, parts by material, and lengths to cut. */
export interface OrderGoods {
  pieces: ReadonlyMap<string, number>;
  parts: ReadonlyMap<string, number>;
  cuts: Cut[];
}

const add = (sums: Map<string, number>, id: string, amount: number) => sums.set(id, (sums.get(id) ?? 0) + amount);

/** What lines of an order are made of, kits taken apart. */
export const goodsOfLines = (lines: readonly OrderLine[], { kits }: Pick<YardFile, 'kits'>): OrderGoods => {
  const pieces = new Map<string, number>();
  const parts = new Map<string, number>();
  const cuts: Cut[] = [];
  for (const line of lines) {
    if (line.casting !== undefined) add(pieces, line.casting, line.quantity);
    if (line.material !== undefined) add(parts, line.material, line.quantity);
    const kit = kits.find(({ id }) => id === line.kit);
    for (const { casting, count } of kit?.pieces ?? []) add(pieces, casting, count * line.quantity);
    for (const { material, quantity } of kit?.parts ?? []) add(parts, material, quantity * line.quantity);
    for (const cut of kit?.cuts ?? []) cuts.push({ ...cut, count: cut.count * line.quantity });
  }
  return { pieces, parts, cuts };
};

/** What an order still asks for: nothing once some of it is packed, for then it has all that it is made of. */
export const linesLeft = ({ lines, packedMinutes }: Pick<Order, 'lines' | 'packedMinutes'>): readonly OrderLine[] =>
  packedMinutes === undefined ? lines : [];

/** What a packing, or a spell of one, takes: the first spell of an order takes all that it is made of. */
export const linesToTake = (
  { order: id, lines }: { order: string; lines: readonly OrderLine[] },
  { orders }: Pick<YardFile, 'orders'>,
): readonly OrderLine[] =>
  linesLeft({ lines: [...lines], packedMinutes: orders.find((order) => order.id === id)?.packedMinutes });

/** Minutes that packing all of an order's kits takes. */
export const packMinutesOf = ({ lines }: Pick<Order, 'lines'>, { kits }: Pick<YardFile, 'kits'>): number =>
  lines.reduce((sum, { kit, quantity }) => {
    const own = kit === undefined ? undefined : kits.find(({ id }) => id === kit);
    return sum + (own?.packMinutes ?? 0) * quantity;
  }, 0);

/**
 * Minutes of packing an order that are left (R11).
 *
 * Example: three kits of 100 minutes of which 180 are packed: 120.
 */
export const packMinutesLeft = (order: Pick<Order, 'lines' | 'packedMinutes'>, book: Pick<YardFile, 'kits'>): number =>
  Math.max(0, packMinutesOf(order, book) - (order.packedMinutes ?? 0));

/** What an order takes from the stock when it is packed (R10), beside its pieces. */
export const goodsOfOrder = (lines: readonly OrderLine[], book: Pick<YardFile, 'kits'>): Taken => {
  const { parts, cuts } = goodsOfLines(lines, book);
  return { goods: [...parts].map(([material, quantity]) => ({ material, quantity })), cuts };
};
