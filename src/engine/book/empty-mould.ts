import type { Mould } from '../../../shared/mould.ts';
import { thereIsNo } from '../../../shared/said-back.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Booked, type MouldPatch, refused } from './entry.ts';
import { isMendedByDay, isOut, MENDED } from './mould-state.ts';
import { todayIn } from './today-in.ts';

/** An empty mould that work can be done to. */
interface EmptyMould {
  ok: true;
  mould: Mould;
  /** What is forgotten of a damage that counts as mended by then. */
  mended: MouldPatch;
}

/**
 * A mould that is coated or set up. Refused at `mould` when it is not there, full, or out of use (and its day to be mended
 * not come).
 */
export const emptyMould = (yard: YardFile, id: string): EmptyMould | Extract<Booked, { ok: false }> => {
  const mould = yard.moulds.find((one) => one.id === id);
  if (!mould) return refused('mould', thereIsNo('mould', id));
  if (yard.inMould.some((piece) => piece.mould === id))
    return refused('mould', `${id} has a piece in it. Strip it first. Nothing was changed.`);
  const isMended = isMendedByDay(mould, todayIn(yard));
  if (isOut(mould) && !isMended)
    return refused('mould', `${id} is out of use. Mark it mended first. Nothing was changed.`);
  return { ok: true, mould, mended: isMended ? MENDED : {} };
};
