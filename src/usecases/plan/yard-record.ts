import { standingOfKinds } from '../../../db/stores/change-store.ts';
import { deliveriesCame } from '../../../db/stores/material-store.ts';
import { workRecords } from '../../../db/stores/work-record-store.ts';
import type { Tx } from '../../../db/transaction.ts';
import { dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { YardRecord } from '../../../shared/yard-record.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { type CalledOff, yardRecordOf } from '../../engine/odds/yard-record.ts';
import { HOURS_OF } from './hours-changed.ts';
import { sessionsOfDay } from './hours-of-day.ts';

/** Days whose hours were changed and that have none now. */
const calledOffDays = async (tx: Tx, yard: YardFile): Promise<CalledOff[]> =>
  (await standingOfKinds(tx, HOURS_OF))
    .map(({ kind, at }) => ({ date: kind.slice(HOURS_OF.length), at }))
    .filter(({ date }) => sessionsOfDay(yard, dayNumber(date)).length === 0);

/** What went wrong in the yard so far, as far as it is on record. */
export const yardRecord = async (tx: Tx, yard: YardFile): Promise<YardRecord> => {
  const calledOff = await calledOffDays(tx, yard);
  const came = await deliveriesCame(tx);
  const { timeZone } = yard.yard;
  return yardRecordOf(await workRecords(tx), { calledOff, came }, { timeZone, today: todayIn(yard) });
};
