import type { Material } from '../../../shared/material.ts';
import { dayNumber } from '../../../shared/time.ts';
import { datesOf } from '../calendar/recurrence.ts';
import type { Ground } from './ground.ts';

/** A day on which a material can come, and the last one on which it can be ordered for that. */
export interface CanCome {
  on: number;
  orderBy: number;
}

/** Which days of the plan a rule lets through; all of them where there is none. */
const allowedBy = (
  rule: { rule: string; from: string } | undefined,
  closed: readonly string[],
  [first, last]: readonly [number, number],
): ReadonlySet<number> => {
  const every = Array.from({ length: last - first + 1 }, (_, i) => first + i);
  const days = new Set(rule ? datesOf(rule, first, last) : every);
  for (const date of closed) days.delete(dayNumber(date));
  return days;
};

/**
 * R10: the days on which a material can come that is ordered from today on, by those of its supplier; null where nothing is
 * said of that, and it can come every day.
 *
 * Example: ordered on weekdays and brought on Tuesdays and Thursdays, one day to come, today Saturday: Tuesday, ordered by Monday.
 */
export const canCome = ({ yard, today }: Ground, material: Material): CanCome[] | null => {
  const supplier = (yard.suppliers ?? []).find(({ name }) => name === material.supplier);
  const { leadDays } = material;
  if (!supplier || leadDays === undefined) return null;
  const plan = [today, today + yard.yard.horizonDays] as const;
  const open = allowedBy(supplier.opens, supplier.closed, plan);
  const brought = supplier.fetched ? open : allowedBy(supplier.delivers ?? supplier.opens, supplier.closed, plan);
  const days: CanCome[] = [];
  for (let on = today + leadDays, orderBy = -1, day = today; on <= plan[1]; on++) {
    for (; day <= on - leadDays; day++) if (open.has(day)) orderBy = day;
    if (!brought.has(on) || orderBy < 0 || days.at(-1)?.orderBy === orderBy) continue;
    days.push({ on, orderBy });
  }
  return days;
};
