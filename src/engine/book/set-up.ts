import type { YardFile } from '../../../shared/yard-file.ts';
import { emptyMould } from './empty-mould.ts';
import { type Booked, booked, refused } from './entry.ts';
import { afterSetUp, makesPiece } from './mould-state.ts';
import type { SetUpWork } from './work-done.ts';

/**
 * A mould is clean, set up for a casting and, where it was due, coated: nothing is left to do before the pour. Refused at
 * `mould` when it is not there, full, out of use (and its day to be mended not come), or of other pieces.
 */
export const setUp = (yard: YardFile, { mould: id, casting, coated }: SetUpWork): Booked => {
  const found = emptyMould(yard, id);
  if (!found.ok) return found;
  const { mould, mended } = found;
  if (!makesPiece(mould, casting)) return refused('mould', `${id} does not make that piece. Nothing was changed.`);
  return booked([{ kind: 'mould', mould: id, patch: { ...afterSetUp(mould, casting, coated), ...mended } }]);
};
