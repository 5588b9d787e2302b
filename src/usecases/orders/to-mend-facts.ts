import type { PieceToMend } from '../../../db/stores/piece-to-mend-store.ts';
import type { OrderLine } from '../../../shared/order.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { piecesOfOrder } from '../plan/pieces-of-order.ts';
import { settingOf } from '../plan/setting.ts';

/** Pieces that are kept aside to be mended, as a page speaks of them, in the order in which they were put there. */
export const toMendFacts = (pieces: readonly PieceToMend[], yard: YardFile) => {
  const { instantText } = calendarOf(yard.yard.timeZone);
  const setting = settingOf(yard);
  return pieces.map(({ id, casting, mould, filledAt, strippedAt, reason }) => ({
    id,
    piece: yard.castings.find((one) => one.id === casting)?.name ?? casting,
    mould,
    strippedAt: instantText(minuteOf(strippedAt)),
    reason,
    /** When it has cured by the plan's temperatures, counted from its pour. */
    curedAt: instantText(setting.curedAt(casting, minuteOf(filledAt))),
  }));
};
export type ToMendFacts = ReturnType<typeof toMendFacts>[number];

/** Of what some lines ask for, how many pieces of each kind are kept aside to be mended. */
export const toMendOfLines = (pieces: readonly PieceToMend[], lines: readonly OrderLine[], yard: YardFile) =>
  [...piecesOfOrder(lines, yard).pieces.keys()].flatMap((id) => {
    const count = pieces.filter(({ casting }) => casting === id).length;
    return count === 0 ? [] : [{ name: yard.castings.find((one) => one.id === id)?.name ?? id, count }];
  });
