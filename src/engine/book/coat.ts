import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { type Booked, booked, refused } from './entry.ts';
import { afterCoat, isMendedByDay, isOut } from './mould-state.ts';
import { todayIn } from './today-in.ts';
import type { CoatWork } from './work-done.ts';

/**
 * A mould is clean and has its sealing coat, which dries from then on: it is bare, set for what it was, and its turns count
 * from 0. Refused at `mould` when it is not there, full, out of use (and its day to be mended not come), or takes no coat.
 */
export const coat = (yard: YardFile, { mould: id, doneAt }: CoatWork): Booked => {
  const mould = yard.moulds.find((one) => one.id === id);
  if (!mould) return refused('mould', `There is no mould ${id}.`);
  if (yard.inMould.some((piece) => piece.mould === id))
    return refused('mould', `${id} has a piece in it. Strip it first. Nothing was changed.`);
  const isMended = isMendedByDay(mould, todayIn(yard));
  if (isOut(mould) && !isMended)
    return refused('mould', `${id} is out of use. Mark it mended first. Nothing was changed.`);
  if (mould.oilEveryTurns === undefined) return refused('mould', `${id} takes no sealing coat. Nothing was changed.`);
  const dryFrom = calendarOf(yard.yard.timeZone).instantText(minuteOf(doneAt) + mould.oilDryMinutes);
  const mended = isMended ? { repairedOn: null, damageNote: null } : {};
  return booked([{ kind: 'mould', mould: id, patch: { ...afterCoat(mould, dryFrom), ...mended } }]);
};
