import { writeEntries } from '../../../db/stores/book-store.ts';
import { type PieceToMend, pieceToMendById } from '../../../db/stores/piece-to-mend-store.ts';
import { addWorkRecords } from '../../../db/stores/work-record-store.ts';
import { dayWords } from '../../../shared/day-words.ts';
import { dayNumber } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { readyFrom } from '../../engine/book/curing-times.ts';
import { mend } from '../../engine/book/mend.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';

export const NOT_WAITING = 'That piece is not waiting to be mended any more. Nothing was changed.';

/** "Panel 900 from 900 no. 1" */
export const pieceFrom = (yard: YardFile, { casting, mould }: Pick<PieceToMend, 'casting' | 'mould'>): string =>
  `${yard.castings.find(({ id }) => id === casting)?.name ?? casting} from ${mould}`;

/** What became of a piece that was put aside, in the record of all that was done. */
export const afterMending = (
  { mould, casting, filledAt, reason }: PieceToMend,
  cameOut: 'good' | 'scrap',
  at: string,
): WorkRecord => ({
  ...{ kind: 'after mending', at, mould, casting, filledAt, cameOut },
  ...(reason === null ? {} : { reason }),
});

/** From when it may go out: by its cure, or from a later day where one is named. Refused where that day is too early. */
const fitFromOf = (yard: YardFile, piece: PieceToMend, now: string, named: string | null): Outcome<string | null> => {
  const cured = readyFrom(yard, piece);
  const earliest = cured?.slice(0, 10) ?? today(yard.yard.timeZone, now);
  if (named === null || named === earliest) return done(cured);
  if (named < earliest)
    return refuse(
      'fitFrom',
      cured
        ? `It has not cured before ${dayWords(earliest)}. Leave this empty for that day.`
        : 'That day has passed. Leave this empty: it has cured.',
    );
  const calendar = calendarOf(yard.yard.timeZone);
  return done(calendar.instantText(calendar.midnightOf(dayNumber(named))));
};

interface Mended {
  what: string;
  fitFrom: string | null;
}

/** A piece that was kept aside is mended: from now on it is a finished piece, for whichever order it helps most. */
export const mendPiece = (
  context: UseCaseContext,
  id: number,
  { fitFrom: named }: { fitFrom: string | null },
): Promise<Outcome<Changed<Mended>>> =>
  changing(
    context,
    {
      kind: 'piece mended',
      words: ({ what, fitFrom }) =>
        `${what} mended${fitFrom === null ? '' : `, fit to go out from ${dayWords(fitFrom.slice(0, 10))}`}`,
    },
    async (tx, yard) => {
      const piece = await pieceToMendById(tx, id);
      if (!piece) return refuse('piece', NOT_WAITING);
      const fitFrom = fitFromOf(yard, piece, context.now, named);
      if (!fitFrom.ok) return fitFrom;
      await writeEntries(tx, mend(piece, fitFrom.value));
      await addWorkRecords(tx, [afterMending(piece, 'good', yard.yard.now)], context.by);
      return done({ what: pieceFrom(yard, piece), fitFrom: fitFrom.value });
    },
  );
