import { type DayNumber, dayNumber, minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import type { PiecesOut, YardRecord } from '../../../shared/yard-record.ts';
import { calendarOf } from '../calendar/calendar.ts';

/** Goods that came: the day that was said first, and the day they were there. */
export interface CameOn {
  supplier: string | null;
  saidFor: string;
  cameOn: string;
}

/** Work of a day that was called off by a change: which day, and when that was said. */
export interface CalledOff {
  date: string;
  at: string;
}

const piecesOut = (records: readonly WorkRecord[]): PiecesOut[] => {
  const byKind = new Map<string, PiecesOut>();
  for (const record of records) {
    if (record.kind !== 'stripped') continue;
    const { mould, casting, cameOut } = record;
    const key = JSON.stringify([mould, casting]);
    const known = byKind.get(key) ?? { mould, casting, of: 0, mend: 0, scrap: 0 };
    known.of++;
    if (cameOut !== 'good') known[cameOut]++;
    byKind.set(key, known);
  }
  return [...byKind.values()];
};

const NO_WORK = new Set<WorkRecord['kind']>(['mixing begun', 'mixed', 'unpacked', 'marked']);

/** Days on which work was recorded. */
const daysWorked = (records: readonly WorkRecord[], dayOf: (minute: number) => DayNumber): Set<DayNumber> =>
  new Set(records.flatMap((record) => (NO_WORK.has(record.kind) ? [] : [dayOf(minuteOf(record.at))])));

/** A day off that is known two days before was planned round; what is said later is a session lost. */
const KNOWN_DAYS_BEFORE = 2;

const brought = (came: readonly CameOn[]): YardRecord['deliveries'] => {
  const bySupplier = new Map<string | null, number[]>();
  for (const { supplier, saidFor, cameOn } of came)
    bySupplier.set(supplier, [
      ...(bySupplier.get(supplier) ?? []),
      Math.max(0, dayNumber(cameOn) - dayNumber(saidFor)),
    ]);
  return [...bySupplier].map(([supplier, days]) => ({
    ...{ supplier, of: days.length },
    daysLate: days.filter((late) => late > 0).sort((a, b) => a - b),
  }));
};

/**
 * What was recorded, counted. A day counts as lost where it was called off when it was at hand, nothing was done on it, and it
 * has gone by; `today` is the date of now in the yard's time zone.
 *
 * Example: of nothing recorded: no pieces, no deliveries, 0 of 0 sessions.
 */
export const yardRecordOf = (
  records: readonly WorkRecord[],
  { calledOff, came }: { calledOff: readonly CalledOff[]; came: readonly CameOn[] },
  { timeZone, today }: { timeZone: string; today: string },
): YardRecord => {
  const { dayOf } = calendarOf(timeZone);
  const worked = daysWorked(records, dayOf);
  const lost = new Set(
    calledOff.flatMap(({ date, at }) => {
      const day = dayNumber(date);
      const isLate = day - dayOf(minuteOf(at)) < KNOWN_DAYS_BEFORE;
      return isLate && date < today && !worked.has(day) ? [day] : [];
    }),
  );
  return {
    pieces: piecesOut(records),
    sessions: { bad: lost.size, of: lost.size + worked.size },
    deliveries: brought(came),
  };
};
