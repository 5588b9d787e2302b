import type { FinishedPieces, Mould, PieceInMould } from '../../../shared/mould.ts';
import type { PlanOrder, PlanPour, PlanStrip } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { FixedMix } from './fixed-pours.ts';
import { type Goods, goodsOfOrder, goodsOfPour } from './goods-used.ts';
import type { PlannedPack } from './late-work.ts';
import { piecesOfOrder } from './pieces-of-order.ts';

/** A piece that late work takes out of its mould, as the plan speaks of it. */
export type LatePiece = PlanPour | PlanStrip;

/** A packed order, with what it takes from the yard and which late pieces. */
interface WrittenPack {
  order: PlannedPack;
  fromFinished: PlanOrder['fromFinished'];
  pieces: LatePiece[];
}

/** A yard's moulds, pieces and stock while late work is written into them, and what of it could be. */
export interface Book {
  yard: YardFile;
  moulds: Map<string, Mould>;
  inMould: Map<string, PieceInMould>;
  onHand: Map<string, number>;
  /** Those that are there first, at their own places. */
  finished: FinishedPieces[];
  packed: Set<string>;
  written: { mixes: FixedMix[]; strips: PlanStrip[]; packs: WrittenPack[]; preps: PlanPour[] };
  /** Late pours whose pieces are in moulds, by mould. */
  pours: Map<string, PlanPour>;
  /** Late pieces by their place among the finished. */
  pieces: Map<number, LatePiece>;
}

export const openBook = (yard: YardFile): Book => ({
  yard,
  moulds: new Map(yard.moulds.map((mould) => [mould.id, mould])),
  inMould: new Map(yard.inMould.map((piece) => [piece.mould, piece])),
  onHand: new Map(yard.materials.map(({ id, onHand }) => [id, onHand])),
  finished: [...yard.finished],
  packed: new Set(),
  written: { mixes: [], strips: [], packs: [], preps: [] },
  pours: new Map(),
  pieces: new Map(),
});

const take = ({ onHand }: Book, goods: readonly Goods[]): void => {
  for (const { material, quantity } of goods) onHand.set(material, Math.max(0, (onHand.get(material) ?? 0) - quantity));
};

const isOut = ({ condition }: Mould): boolean => condition === 'damaged' || condition === 'retired';

const canHold = ({ moulds, inMould }: Book, { mould: id, casting }: PlanPour): boolean => {
  const mould = moulds.get(id);
  const makes = mould?.makes.some((make) => make.casting === casting) ?? false;
  return makes && mould?.condition !== 'retired' && !inMould.has(id);
};

const fill = (book: Book, pour: PlanPour): void => {
  const { mould: id, casting, fillEnd, oiled } = pour;
  const mould = book.moulds.get(id)!;
  const due = mould.oilEveryTurns !== undefined && mould.turnsSinceOil >= mould.oilEveryTurns;
  book.moulds.set(id, {
    ...mould,
    condition: isOut(mould) ? mould.condition : 'ready',
    ...{ prepped: false, setFor: casting, turnsSinceOil: (oiled || due ? 0 : mould.turnsSinceOil) + 1 },
  });
  book.inMould.set(id, { mould: id, casting, filledAt: fillEnd });
  book.pours.set(id, pour);
};

/** A batch that can no longer have been poured as planned, such as one of which a mould is full already, is left out. */
export const writePour = (book: Book, mixed: FixedMix): void => {
  const { batch, pours } = mixed;
  const mix = book.yard.mixes.find(({ id }) => id === batch.mix);
  if (!mix || pours.length === 0 || !pours.every((pour) => canHold(book, pour))) return;
  for (const pour of pours) fill(book, pour);
  const castings = pours.map(({ casting }) => casting);
  take(book, goodsOfPour(mix, batch.bags, castings, book.yard));
  book.written.mixes.push(mixed);
};

/** A strip of a piece that is in its mould, or was poured late into it. */
export const writeStrip = (book: Book, strip: LatePiece, now: Minute): void => {
  const { mould: id, pieceReadyAt } = strip;
  const [mould, piece, pour] = [book.moulds.get(id), book.inMould.get(id), book.pours.get(id)];
  if (!mould || !piece || ('fillEnd' in strip ? pour !== strip : pour !== undefined)) return;
  // Its own piece is out already, and this is the next one.
  if (minuteOf(piece.filledAt) > minuteOf(strip.stripStart)) return;
  book.inMould.delete(id);
  book.pours.delete(id);
  book.moulds.set(id, { ...mould, condition: isOut(mould) ? mould.condition : 'dirty', prepped: false });
  book.pieces.set(book.finished.length, strip);
  book.finished.push({
    ...{ casting: piece.casting, count: 1 },
    ...(minuteOf(pieceReadyAt) > now ? { readyAt: pieceReadyAt } : {}),
    ...(piece.order === undefined ? {} : { order: piece.order }),
  });
  if (!('fillEnd' in strip)) book.written.strips.push(strip);
};

export const writePrep = (book: Book, pour: PlanPour): void => {
  const mould = book.moulds.get(pour.mould);
  if (!mould || isOut(mould) || mould.prepped || !canHold(book, pour)) return;
  const turnsSinceOil = pour.oiled ? 0 : mould.turnsSinceOil;
  book.moulds.set(mould.id, { ...mould, condition: 'ready', prepped: true, setFor: pour.casting, turnsSinceOil });
  book.written.preps.push(pour);
};

/** The places of pieces an order may take: its own first, then those the plan meant for it, then those of nobody. */
const placesFor = ({ finished, pieces }: Book, order: PlannedPack): number[] => {
  const at = minuteOf(order.packStart);
  const rank = (place: number): number => {
    const { order: own, readyAt } = finished[place]!;
    const planned = pieces.get(place)?.order;
    if (readyAt !== undefined && minuteOf(readyAt) > at) return Number.NaN;
    if (own === order.id) return 0;
    if (own !== undefined || (planned !== undefined && planned !== order.id)) return Number.NaN;
    return planned === order.id ? 1 : 2;
  };
  return finished
    .map((_, place) => place)
    .filter((place) => !Number.isNaN(rank(place)))
    .sort((a, b) => rank(a) - rank(b) || a - b);
};

/** How many pieces an order takes from which places; null when they are not all there. */
const takenFor = (book: Book, order: PlannedPack, wanted: ReadonlyMap<string, number>): Map<number, number> | null => {
  const taken = new Map<number, number>();
  const places = placesFor(book, order);
  for (const [casting, count] of wanted) {
    let left = count;
    for (const place of places.filter((one) => book.finished[one]!.casting === casting)) {
      const some = Math.min(left, book.finished[place]!.count);
      if (some > 0) taken.set(place, some);
      left -= some;
    }
    if (left > 0) return null;
  }
  return taken;
};

/** An order that is gone, packed already or short of pieces is left out. */
export const writePack = (book: Book, order: PlannedPack): void => {
  const lines = book.yard.orders.find(({ id }) => id === order.id)?.lines ?? [];
  const taken = lines.length === 0 ? null : takenFor(book, order, piecesOfOrder(lines, book.yard).pieces);
  if (!taken) return;
  for (const [place, count] of taken) {
    const stood = book.finished[place]!;
    book.finished[place] = { ...stood, count: stood.count - count };
  }
  take(book, goodsOfOrder(lines, book.yard));
  book.packed.add(order.id);
  const fromFinished = [...taken].flatMap(([finished, count]) =>
    book.pieces.has(finished) ? [] : [{ finished, count }],
  );
  const pieces = [...taken.keys()].flatMap((place) => book.pieces.get(place) ?? []);
  book.written.packs.push({ order, fromFinished, pieces });
};

/** The yard as the book has it. */
export const yardOf = ({ yard, ...book }: Book): YardFile => ({
  ...yard,
  moulds: yard.moulds.map((mould) => book.moulds.get(mould.id) ?? mould),
  materials: yard.materials.map((one) => ({ ...one, onHand: book.onHand.get(one.id) ?? one.onHand })),
  finished: book.finished,
  inMould: [...book.inMould.values()],
  orders: yard.orders.map((order) => (book.packed.has(order.id) ? { ...order, lines: [] } : order)),
});
