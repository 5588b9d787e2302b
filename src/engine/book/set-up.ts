import type { YardFile } from '../../../shared/yard-file.ts';
import { type Booked, booked, refused } from './entry.ts';
import { afterSetUp, isMendedByDay, isOut, makesPiece } from './mould-state.ts';
import { todayIn } from './today-in.ts';
import type { SetUpWork } from './work-done.ts';

/** What is forgotten of a damage that is mended. */
const MENDED = { repairedOn: null, damageNote: null };

/**
 * A mould is clean, set up for a casting and, where it was due, coated: nothing is left to do before the pour. Refused at
 * `mould` when it is not there, full, out of use (and its day to be mended not come), or of other pieces.
 */
export const setUp = (yard: YardFile, { mould: id, casting, coated }: SetUpWork): Booked => {
  const mould = yard.moulds.find((one) => one.id === id);
  if (!mould) return refused('mould', `There is no mould ${id}.`);
  if (yard.inMould.some((piece) => piece.mould === id))
    return refused('mould', `${id} has a piece in it. Strip it first. Nothing was changed.`);
  const isMended = isMendedByDay(mould, todayIn(yard));
  if (isOut(mould) && !isMended)
    return refused('mould', `${id} is out of use. Mark it mended first. Nothing was changed.`);
  if (!makesPiece(mould, casting)) return refused('mould', `${id} does not make that piece. Nothing was changed.`);
  return booked([
    { kind: 'mould', mould: id, patch: { ...afterSetUp(mould, casting, coated), ...(isMended ? MENDED : {}) } },
  ]);
};
