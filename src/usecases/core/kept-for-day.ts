import type { PlanFile } from '../../../shared/plan.ts';
import { dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';

/** The beginning of a day in a yard, an instant. Of one day there is one answer, whenever it is asked for. */
export const beginningOf = (day: string, { timeZone }: Pick<YardFile['yard'], 'timeZone'>): string => {
  const calendar = calendarOf(timeZone);
  return calendar.instantText(calendar.midnightOf(dayNumber(day)));
};

interface Asked {
  plan: PlanFile;
  /** As it was last read: whatever is stored, prices and wages too, data are read anew. */
  yard: Pick<YardFile, 'materials'>;
  day: string;
  /** Which answer of several of that day; the last one is kept. */
  which?: string;
}

/** Keeps what is worked out for a plan, the data as they were last read, and a day. Who asks meanwhile waits for the same. */
export const keptForDay = <T>(): ((asked: Asked, work: () => Promise<T>) => Promise<T>) => {
  const known = new WeakMap<
    YardFile['materials'],
    { plan: PlanFile; day: string; which: string; answer: Promise<T> }
  >();
  return ({ plan, yard: { materials }, day, which = '' }, work) => {
    const before = known.get(materials);
    if (before?.plan === plan && before.day === day && before.which === which) return before.answer;
    const entry = { plan, day, which, answer: work() };
    known.set(materials, entry);
    entry.answer.catch(() => known.get(materials) === entry && known.delete(materials));
    return entry.answer;
  };
};
