import type { FinishedPieces } from '../../../shared/mould.ts';
import type { Entry, Lot } from './entry.ts';

const piecesOf = ({ casting, readyAt, order }: Lot, count: number): FinishedPieces => ({
  ...{ casting, count },
  ...(readyAt === null ? {} : { readyAt }),
  ...(order === null ? {} : { order }),
});

const without = <P extends FinishedPieces>(pieces: readonly P[], place: number, count: number): P[] =>
  pieces.flatMap((one, at) => {
    if (at !== place) return [one];
    return one.count > count ? [{ ...one, count: one.count - count }] : [];
  });

const freed = <P extends FinishedPieces>(pieces: readonly P[], order: string): P[] =>
  pieces.map((one) => {
    if (one.order !== order) return one;
    const { order: _order, ...rest } = one;
    return rest as P;
  });

/**
 * The finished pieces after an entry, in their order: what comes in is last, what is used up is gone. `P` may carry more
 * than a yard file has, such as where the pieces stood before; `fresh` makes it of pieces that come in.
 */
export const changePieces = <P extends FinishedPieces>(
  pieces: readonly P[],
  entry: Entry,
  fresh: (pieces: FinishedPieces) => P,
): P[] => {
  if (entry.kind === 'pieces in') return [...pieces, fresh(piecesOf(entry.lot, entry.count))];
  if (entry.kind === 'pieces out') return without(pieces, entry.place, entry.count);
  return entry.kind === 'freed' ? freed(pieces, entry.order) : [...pieces];
};

/** By the place of finished pieces before some entries, their place after them; those that are gone have none. */
export type Places = ReadonlyMap<number, number>;

/** Where finished pieces stand once entries are applied one after another. */
export const placesAfter = (before: readonly FinishedPieces[], entries: readonly Entry[]): Places => {
  let marked = before.map((pieces, place) => ({ ...pieces, place }));
  for (const entry of entries) marked = changePieces(marked, entry, (pieces) => ({ ...pieces, place: -1 }));
  return new Map(marked.flatMap(({ place }, now): [number, number][] => (place < 0 ? [] : [[place, now]])));
};
