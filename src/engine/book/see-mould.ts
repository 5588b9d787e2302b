import { thereIsNo } from '../../../shared/said-back.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { apply } from './apply.ts';
import { type Booked, booked, refused } from './entry.ts';
import { type MouldMark, mark } from './mark.ts';
import { isOut } from './mould-state.ts';

/** How a mould is found on a walk round. */
export const MOULD_SEEN = ['clean', 'dirty', 'damaged', 'scrapped'] as const;
/** One of them. */
export type MouldSeen = (typeof MOULD_SEEN)[number];

const NO_DETAILS = { note: '', repairedOn: null, cameOut: null };

/** What has to be said of a mould, mark by mark, for the book to have it as it was seen; null for "it is dirty", which is no mark. */
const marksFor = (yard: YardFile, id: string, seen: MouldSeen): (MouldMark | null)[] => {
  const mould = yard.moulds.find((one) => one.id === id)!;
  const { condition } = mould;
  if (seen === 'damaged') return condition === 'damaged' ? [] : ['damaged'];
  if (seen === 'scrapped') return condition === 'retired' ? [] : ['scrapped'];
  const mended: MouldMark[] = isOut(mould) ? ['mended'] : [];
  if (seen === 'clean') return condition === 'dirty' ? ['cleaned'] : mended;
  return condition === 'dirty' ? [] : [...mended, null];
};

/** The marks that make the book say what was seen: as they were given, for the record of the mould. */
export const marksSeen = (yard: YardFile, id: string, seen: MouldSeen): MouldMark[] =>
  marksFor(yard, id, seen).flatMap((one) => one ?? []);

/**
 * A mould as it was found on a walk round; no entries where the book has it so. One with a piece in it is neither clean nor
 * dirty. Refused at `mark` where it is not there or has a piece in it, at `cameOut` where it goes out of use with one.
 *
 * Example: clean by the book and dirty by the eye: its set-up is gone, and it is to be cleaned.
 */
export const seeMould = (yard: YardFile, id: string, seen: MouldSeen): Booked => {
  if (!yard.moulds.some((one) => one.id === id)) return refused('mark', thereIsNo('mould', id));
  const isFull = yard.inMould.some(({ mould }) => mould === id);
  if (isFull && (seen === 'clean' || seen === 'dirty'))
    return refused('mark', `${id} has a piece in it by the book. If it has none, record its strip first.`);
  return marksFor(yard, id, seen).reduce<Booked>((before, one) => {
    if (!before.ok) return before;
    const next: Booked =
      one === null
        ? booked([{ kind: 'mould', mould: id, patch: { condition: 'dirty', prepped: false } }])
        : mark(apply(yard, before.entries), id, one, NO_DETAILS);
    return next.ok ? booked([...before.entries, ...next.entries]) : next;
  }, booked([]));
};
