import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { emptyMould } from './empty-mould.ts';
import { type Booked, booked, refused } from './entry.ts';
import { afterCoat } from './mould-state.ts';
import type { CoatWork } from './work-done.ts';

/**
 * A mould is clean and has its sealing coat, which dries from then on: it is bare, set for what it was, and its turns count
 * from 0. Refused at `mould` when it is not there, full, out of use (and its day to be mended not come), or takes no coat.
 */
export const coat = (yard: YardFile, { mould: id, doneAt }: CoatWork): Booked => {
  const found = emptyMould(yard, id);
  if (!found.ok) return found;
  const { mould, mended } = found;
  if (mould.oilEveryTurns === undefined) return refused('mould', `${id} takes no sealing coat. Nothing was changed.`);
  const dryFrom = calendarOf(yard.yard.timeZone).instantText(minuteOf(doneAt) + mould.oilDryMinutes);
  return booked([{ kind: 'mould', mould: id, patch: { ...afterCoat(mould, dryFrom), ...mended } }]);
};
