import type { PlanFile } from '../../shared/plan.ts';
import { minuteOf } from '../../shared/time.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { cutFromFor } from '../../src/engine/book/sheets-cut.ts';
import type { WorkDone } from '../../src/engine/book/work-done.ts';
import { calendarOf } from '../../src/engine/calendar/calendar.ts';
import type { TaskDone } from './work-by-plan.ts';

/** What is cut from sticks for a task, by its id in the plan; null where it is no batch and no packing. */
export const cutForOf = ({ what }: TaskDone): string | null =>
  what.kind === 'poured' ? what.batch : what.kind === 'packed' ? what.order : null;

/** What is recorded of a task; each mould of a batch so many minutes later than planned. */
export const workOf = ({ what, end }: TaskDone, plan: PlanFile, yard: YardFile, lateMinutes = 0): WorkDone => {
  const text = calendarOf(yard.yard.timeZone).instantText;
  const doneAt = text(end);
  if (what.kind === 'set up' || what.kind === 'coated') return { ...what, doneAt };
  if (what.kind === 'stripped') return { ...what, cameOut: 'good', reason: '', doneAt };
  if (what.kind === 'packed') {
    const lines = yard.orders.find(({ id }) => id === what.order)?.lines ?? [];
    const planned = plan.orders.find(({ id }) => id === what.order)?.fromFinished ?? [];
    return { ...what, lines, planned, evenShort: false, doneAt, cutFrom: cutFromFor(plan, what.order) };
  }
  const batch = plan.batches.find(({ id }) => id === what.batch);
  const pours = plan.pours
    .filter((pour) => pour.batch === what.batch)
    .map(({ mould, casting, order, fillEnd }) => ({
      ...{ mould, casting, order: order ?? null, coated: false },
      filledAt: text(minuteOf(fillEnd) + lateMinutes),
    }));
  return { kind: 'poured', bags: batch?.bags ?? null, pours, cutFrom: cutFromFor(plan, what.batch) };
};
