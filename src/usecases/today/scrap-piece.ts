import { writeEntries } from '../../../db/stores/book-store.ts';
import { pieceToMendById } from '../../../db/stores/piece-to-mend-store.ts';
import { addWorkRecords } from '../../../db/stores/work-record-store.ts';
import { scrap } from '../../engine/book/mend.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { afterMending, NOT_WAITING, pieceFrom } from './mend-piece.ts';

/** A piece that was to be mended is lost after all. The plan did not count on it and goes on as it was. */
export const scrapPiece = (context: UseCaseContext, id: number): Promise<Outcome<Changed<{ what: string }>>> =>
  changing(
    context,
    { kind: 'piece scrapped', words: ({ what }) => `${what} scrapped` },
    async (tx, yard) => {
      const piece = await pieceToMendById(tx, id);
      if (!piece) return refuse('piece', NOT_WAITING);
      await writeEntries(tx, scrap(piece));
      await addWorkRecords(tx, [afterMending(piece, 'scrap', yard.yard.now)], context.by);
      return done({ what: pieceFrom(yard, piece) });
    },
    { carryOn: (plan) => plan },
  );
