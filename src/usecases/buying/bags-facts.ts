import type { Material } from '../../../shared/material.ts';
import { dateOfDay, dayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { asDatedLot, lastDayOf, useByOf } from '../../engine/buy/dated-lots.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';

/** Bags in the yard that have a date, or are opened: how many, in the unit that is asked for. */
export interface BagsFacts {
  quantity: number;
  /** The date on them. */
  useBy: string | null;
  /** When they were opened, in the yard's zone. */
  openedAt: string | null;
  /** The last day on which they are used; null where they keep. */
  until: string | null;
  /** That day is over: no plan uses them. */
  isPast: boolean;
}

/** The date to which what comes on a day keeps; null where it does not go off. */
export const keepsUntil = (shelfLifeDays: number | null | undefined, day: string): string | null => {
  const last = useByOf(dayNumber(day), { shelfLifeDays: shelfLifeDays ?? undefined });
  return last === null ? null : dateOfDay(last);
};

/** The bags of a material that have a date or are opened, what is opened first; in the material's unit. */
export const bagsFacts = (material: Material, { yard }: Pick<YardFile, 'yard'>, today: string): BagsFacts[] => {
  const { dayOf, instantText } = calendarOf(yard.timeZone);
  return (material.lots ?? []).map((lot) => {
    const { quantity, useBy, openedAt } = lot;
    const last = lastDayOf(
      asDatedLot(lot, (instant) => dayOf(minuteOf(instant))),
      material,
    );
    return {
      ...{ quantity, useBy: useBy ?? null, openedAt: openedAt === undefined ? null : instantText(minuteOf(openedAt)) },
      until: Number.isFinite(last) ? dateOfDay(last) : null,
      isPast: last < dayNumber(today),
    };
  });
};

/** How much of a material is past its date, in its own unit: it is in the yard, and no plan uses it. */
export const pastDate = (bags: readonly BagsFacts[]): number =>
  bags.reduce((sum, { quantity, isPast }) => sum + (isPast ? quantity : 0), 0);
