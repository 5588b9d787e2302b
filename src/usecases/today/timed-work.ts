import type { Tx } from '../../../db/open.ts';
import { recentWorkRecords } from '../../../db/stores/work-record-store.ts';
import type { PlanOfWork } from '../../../shared/late-work.ts';
import { spellsOf } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { begunAtTap } from '../../engine/book/work-timed.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { sessionsOfDay } from '../plan/hours-of-day.ts';

/** What was done to a mould. */
export interface TaskOfMould {
  kind: 'prep' | 'strip';
  mould: string;
}

interface Beginning {
  of: string;
  at: string;
}

/** When each task begins that is not recorded yet, with what it is of. */
const beginnings = ({ pours, strips, coats = [], batches, orders }: PlanOfWork): Beginning[] => [
  ...pours
    .filter(({ prepStart, prepEnd }) => prepStart !== prepEnd)
    .map(({ mould, prepStart }) => ({ of: `prep ${mould}`, at: prepStart })),
  ...[...pours, ...strips].map(({ mould, stripStart }) => ({ of: `strip ${mould}`, at: stripStart })),
  ...coats.map(({ mould, start }) => ({ of: `coat ${mould}`, at: start })),
  ...batches.map(({ id, start }) => ({ of: `batch ${id}`, at: start })),
  ...orders.flatMap((order) => spellsOf(order).map(({ packStart }) => ({ of: `pack ${order.id}`, at: packStart }))),
];

const peopleAt = (yard: YardFile, minute: Minute): number =>
  sessionsOfDay(yard, calendarOf(yard.yard.timeZone).dayOf(minute))
    .flatMap(({ windows }) => windows)
    .reduce((sum, { start, end, crew }) => sum + (start <= minute && minute < end ? crew : 0), 0);

/** Of a task that was tapped just now: when that was, and when it was begun, as far as taps tell. */
export const timedWork = async (
  tx: Tx,
  yard: YardFile,
  toDo: PlanOfWork,
  { kind, mould }: TaskOfMould,
  tappedAt: string,
): Promise<{ tappedAt: string; workedFrom?: string }> => {
  const begins = beginnings(toDo).map(({ of, at }) => ({ isOwn: of === `${kind} ${mould}`, at: minuteOf(at) }));
  const minutes = (isOwn: boolean) => begins.filter((one) => one.isOwn === isOwn).map(({ at }) => at);
  const [own, ...later] = minutes(true).sort((a, b) => a - b);
  if (own === undefined) return { tappedAt };
  const others = minutes(false);
  const tapped = minuteOf(tappedAt);
  const task = { planned: own, tapped, others: [...others, ...later], people: peopleAt(yard, tapped) };
  const workedFrom = begunAtTap(await recentWorkRecords(tx), task);
  return { tappedAt, ...(workedFrom ? { workedFrom } : {}) };
};
