import type { PieceInMould } from '../../../shared/mould.ts';
import { thereIsNo } from '../../../shared/said-back.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { readyFrom } from './curing-times.ts';
import { type Booked, booked, type Entry, refused } from './entry.ts';
import { afterStrip } from './mould-state.ts';
import type { StripWork } from './work-done.ts';

/** A piece that is out of its mould: finished and curing on, kept aside to be mended, or gone. */
export const putPiece = (
  yard: YardFile,
  { mould, casting, filledAt, order }: PieceInMould,
  { cameOut, reason, doneAt }: Omit<StripWork, 'mould'>,
): Entry[] => {
  if (cameOut === 'good')
    return [
      {
        kind: 'pieces in',
        lot: { casting, readyAt: readyFrom(yard, { casting, filledAt }), order: order ?? null },
        count: 1,
        mark: { mould, filledAt },
      },
    ];
  if (cameOut === 'scrap') return [];
  return [{ kind: 'put aside', piece: { casting, mould, filledAt, strippedAt: doneAt, reason: reason || null } }];
};

/**
 * A piece is out of its mould, and the mould is to be cleaned. A good piece cures on until it is fit to go out by the
 * plan's temperatures (R8); it is fit at once when that is past by the yard's now. Refused at `mould` when it holds
 * none, at `at` when it was filled only later.
 */
export const strip = (yard: YardFile, { mould: id, ...work }: StripWork): Booked => {
  const mould = yard.moulds.find((one) => one.id === id);
  const piece = yard.inMould.find((one) => one.mould === id);
  if (!mould) return refused('mould', thereIsNo('mould', id));
  if (!piece) return refused('mould', `${id} has no piece in it by the stock book. Nothing was changed.`);
  if (minuteOf(work.doneAt) < minuteOf(piece.filledAt))
    return refused('at', `${id} was filled after that. Nothing was changed.`);
  return booked([
    { kind: 'emptied', mould: id },
    ...putPiece(yard, piece, work),
    { kind: 'mould', mould: id, patch: { ...afterStrip(mould, piece.casting), emptiedAt: work.doneAt } },
  ]);
};
