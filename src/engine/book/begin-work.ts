import type { Begun } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { referenceFaults } from '../../../shared/yard-references.ts';
import { apply } from './apply.ts';
import { asOf } from './as-of.ts';
import { enter } from './enter.ts';
import type { Entry } from './entry.ts';
import { changePieces } from './lots.ts';
import { takesStock } from './throw-away.ts';
import type { FromFinished, WorkDone } from './work-done.ts';

/** A task of a plan that has begun: what will be recorded of it, when it is over, and how the plan has it. */
export interface TaskBegun {
  work: WorkDone;
  /** An instant after the yard's now. */
  end: string;
  as: Partial<Begun>;
}

const at = (yard: YardFile, now: string): YardFile => ({ ...yard, yard: { ...yard.yard, now } });

const joined = (begun: Begun | undefined, more: Partial<Begun>): Begun => ({
  batches: [...(begun?.batches ?? []), ...(more.batches ?? [])],
  pours: [...(begun?.pours ?? []), ...(more.pours ?? [])],
  strips: [...(begun?.strips ?? []), ...(more.strips ?? [])],
  packs: [...(begun?.packs ?? []), ...(more.packs ?? [])],
  preps: [...(begun?.preps ?? []), ...(more.preps ?? [])],
  coats: [...(begun?.coats ?? []), ...(more.coats ?? [])],
});

/** The finished pieces that entries take, by their places before. */
const piecesGone = (finished: YardFile['finished'], entries: readonly Entry[]): FromFinished[] => {
  let left = finished.map((pieces, place) => ({ ...pieces, place }));
  for (const entry of entries) left = changePieces(left, entry, (fresh) => ({ ...fresh, place: -1 }));
  const counts = new Map(left.map(({ place, count }) => [place, count]));
  return finished.flatMap(({ count }, place) => {
    const gone = count - (counts.get(place) ?? 0);
    return gone > 0 ? [{ finished: place, count: gone }] : [];
  });
};

/** A plan made on other figures may have what cannot be under way together. */
const isSound = (yard: YardFile): boolean => !referenceFaults(yard).some(({ path }) => path.startsWith('begun'));

/**
 * A yard in which a task is under way (R14): what it takes is out of the stock, moulds and pieces are as they were. Null
 * where it cannot have begun: what it is done to is not there, or is out of use.
 */
export const begin = (yard: YardFile, { work, end, as }: TaskBegun): YardFile | null => {
  const done = enter(at(yard, end), work);
  if (!done.ok) return null;
  // Whose the pieces are by the book, and not by the plan, says which of them are packed.
  const fromFinished = piecesGone(yard.finished, done.entries);
  const part = done.entries.some(({ kind }) => kind === 'packed in part') ? { part: true } : {};
  const more = as.packs ? { ...as, packs: as.packs.map((pack) => ({ ...pack, fromFinished, ...part })) } : as;
  // A bag that is opened for it is open as of now: no yard file has one opened later.
  const taken = asOf(apply(yard, done.entries.filter(takesStock)), yard.yard.now);
  const after = { ...taken, begun: joined(yard.begun, more) };
  return isSound(after) ? after : null;
};
