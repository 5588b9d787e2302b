import type { YardFile } from '../../../shared/yard-file.ts';
import type { Entry } from './entry.ts';

interface Placed {
  place: number;
  count: number;
  readyAt: string | undefined;
  order: string | undefined;
}

/** Those for nobody before those set aside, and what is fit to go out before what still cures. */
const firstMissing = (a: Placed, b: Placed): number =>
  Number(a.order !== undefined) - Number(b.order !== undefined) || (a.readyAt ?? '').localeCompare(b.readyAt ?? '');

/** From the last place to the first, so that no place moves before it is its turn. */
const taken = (lots: readonly Placed[], missing: number): Entry[] => {
  const entries: (Entry & { kind: 'pieces out' })[] = [];
  let left = missing;
  for (const { place, count } of [...lots].sort(firstMissing)) {
    const out = Math.min(count, left);
    if (out > 0) entries.push({ kind: 'pieces out', place, count: out });
    left -= out;
  }
  return entries.sort((a, b) => b.place - a.place);
};

/**
 * Finished pieces of a casting were counted, `counted` of them in all. More than the book has come in fit to go out and for
 * nobody; of those it has too many, the ones for nobody are taken off first, and the ones that are fit to go out before
 * those that cure.
 *
 * Example: of two lots of 2 and 3 for nobody, 4 are counted: one is taken off the lot that is fit first.
 */
export const countPieces = ({ finished }: Pick<YardFile, 'finished'>, casting: string, counted: number): Entry[] => {
  const lots = finished.flatMap((lot, place): Placed[] =>
    lot.casting === casting ? [{ place, count: lot.count, readyAt: lot.readyAt, order: lot.order }] : [],
  );
  const more = counted - lots.reduce((sum, { count }) => sum + count, 0);
  if (more > 0) return [{ kind: 'pieces in', lot: { casting, readyAt: null, order: null }, count: more }];
  return taken(lots, -more);
};
