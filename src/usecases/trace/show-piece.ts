import { markKey } from '../../../shared/piece-mark.ts';
import { minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { type PhotoOf, photosByPiece } from './piece-photos.ts';
import { pieceFacts, seePieces, type TracedPieceFacts } from './pieces-seen.ts';

/** A piece by its mark: the minute its mould was full, counted since 1970, and what that was called then. */
export interface PieceKey {
  minute: number;
  mould: string;
}

/** A photo of a piece, with when it was taken up and by whom; null where no name was chosen on the device. */
interface PhotoFacts {
  photo: string;
  at: string;
  by: string | null;
}

/** One piece: what it is of, where it is, and how it looks. */
export interface PieceModel extends PageHead {
  key: PieceKey;
  piece: TracedPieceFacts;
  /** What it is by the book. */
  of: PhotoOf;
  photos: readonly PhotoFacts[];
  /** Photos can be kept here: the database is a file. */
  canKeep: boolean;
}

/** One piece, by its mark; null where none such was recorded. */
export const showPiece = async (context: UseCaseContext, key: PieceKey): Promise<PieceModel | null> => {
  const seen = await seePieces(context);
  const found = seen.ledger.find(({ mould, filledAt }) => mould === key.mould && minuteOf(filledAt) === key.minute);
  if (!found) return null;
  const { timeZone, name } = seen.yard.yard;
  const { instantText } = calendarOf(timeZone);
  const { mould, filledAt, casting } = found;
  return {
    ...{ yardName: name, today: today(timeZone, context.now), key },
    piece: pieceFacts(seen, found),
    of: { mould, filledAt, casting },
    photos: (photosByPiece(seen.records).get(markKey(found)) ?? []).map(({ photo, at, doneBy = null }) => ({
      ...{ photo, at: instantText(minuteOf(at)), by: doneBy },
    })),
    canKeep: context.photos !== undefined,
  };
};
