import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { asDatedLot, lastDayOf } from '../buy/dated-lots.ts';
import { calendarOf } from '../calendar/calendar.ts';
import type { Entry } from './entry.ts';

/**
 * Whether work took bags past their date, which no plan uses: there was nothing else by the book. `yard` as it was before.
 *
 * Example: one bag of 2 May there, a batch mixed of it on 3 May: true.
 */
export const tookPastDate = (
  entries: readonly Entry[],
  { yard, materials }: Pick<YardFile, 'yard' | 'materials'>,
): boolean => {
  const { dayOf } = calendarOf(yard.timeZone);
  const day = (instant: string) => dayOf(minuteOf(instant));
  return entries.some((entry) => {
    if (entry.kind !== 'stock' || entry.quantity >= 0 || !entry.bags) return false;
    const lot = asDatedLot({ ...entry.bags, quantity: -entry.quantity }, day);
    return lastDayOf(lot, materials.find(({ id }) => id === entry.material) ?? {}) < day(entry.why.at);
  });
};
