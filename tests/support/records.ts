import { dateOfDay, dayNumber } from '../../shared/time.ts';
import type { WorkRecord } from '../../shared/work-record.ts';

/** Pieces of one mould that came out on days before one, two a day, every so many of them scrap: a record long enough to promise by. */
export const stripsBefore = (
  date: string,
  { mould, casting, every, days = 100 }: { mould: string; casting: string; every: number; days?: number },
): WorkRecord[] =>
  Array.from({ length: days * 2 }, (_, n) => {
    const day = dateOfDay(dayNumber(date) - 1 - Math.floor(n / 2));
    const at = `${day}T09:${n % 2 === 0 ? '00' : '30'}:00Z`;
    return { kind: 'stripped', mould, casting, at, filledAt: at, cameOut: n % every === 0 ? 'scrap' : 'good' };
  });
