import type { PieceToMend } from '../../../db/stores/piece-to-mend-store.ts';
import type { OrderLine } from '../../../shared/order.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { curingTimesOf } from '../../engine/book/curing-times.ts';
import { goodsOfLines } from '../../engine/book/goods.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import type { Counted } from '../core/page-parts.ts';

/** A piece that is kept aside to be mended, as a page speaks of it. */
export interface ToMendFacts {
  id: number;
  piece: string;
  /** The one it came out of. */
  mould: string;
  strippedAt: string;
  /** What is wrong with it; null where nobody wrote it down. */
  reason: string | null;
  /** When it has cured by the plan's temperatures, counted from its pour. */
  curedAt: string;
}

/** Those of a yard, in the order in which they were put there. */
export const toMendFacts = (pieces: readonly PieceToMend[], yard: YardFile): ToMendFacts[] => {
  const { instantText } = calendarOf(yard.yard.timeZone);
  const curing = curingTimesOf(yard);
  return pieces.map(({ id, casting, mould, filledAt, strippedAt, reason }) => ({
    id,
    piece: yard.castings.find((one) => one.id === casting)?.name ?? casting,
    mould,
    strippedAt: instantText(minuteOf(strippedAt)),
    reason,
    curedAt: instantText(curing.curedAt(casting, minuteOf(filledAt))),
  }));
};

/** Of what some lines ask for, how many pieces of each kind are kept aside to be mended. */
export const toMendOfLines = (pieces: readonly PieceToMend[], lines: readonly OrderLine[], yard: YardFile): Counted[] =>
  [...goodsOfLines(lines, yard).pieces.keys()].flatMap((id) => {
    const count = pieces.filter(({ casting }) => casting === id).length;
    return count === 0 ? [] : [{ name: yard.castings.find((one) => one.id === id)?.name ?? id, count }];
  });
