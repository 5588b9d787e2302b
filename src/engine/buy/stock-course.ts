import type { Material } from '../../../shared/material.ts';
import { type DayNumber, type Minute, minuteOf } from '../../../shared/time.ts';
import type { Calendar } from '../calendar/calendar.ts';
import { countedOnHand } from '../cut/offcuts.ts';
import { type DatedLot, lastDayOf, lotsOnHand, takeFromLots, usableOn, useByOf } from './dated-lots.ts';
import type { MaterialArrival, MaterialUse } from './material-flow.ts';
import { thereAt } from './there-at.ts';

/** A use with the orders it is for; null stands for stock. */
export interface UseFor extends MaterialUse {
  orders: readonly (string | null)[];
}

/** What becomes of a material at one step: something takes of it, more comes, or some of it goes past its date. */
export interface CourseStep {
  kind: 'used' | 'comes' | 'past its date';
  day: DayNumber;
  /** In the material's unit, above zero. */
  quantity: number;
  /** For whom it is used; none where it is not. */
  orders: readonly (string | null)[];
  /** The dates on the bags it is taken from, or that go past theirs; null for no known date. */
  bagDates: readonly (DayNumber | null)[];
  /** What may still be used after it. */
  left: number;
  /** So much of it is not there. */
  short: number;
}

/** When and where a course is worked out, and by which time of day a delivery is there. */
export interface StockClock {
  now: Minute;
  calendar: Calendar;
  deliveredBy?: string;
}

type Event = ({ kind: 'used' } & UseFor) | { kind: 'comes'; at: number; quantity: number };

const EPSILON = 1e-9;

const onceEach = <T>(items: readonly T[]): T[] => [...new Set(items)];

/** Lots whose last day is over before a day, each a step on the day after its last one. */
const lapsed = (lots: readonly DatedLot[], day: DayNumber, material: Material): CourseStep[] => {
  const days = onceEach(lots.map((lot) => lastDayOf(lot, material)))
    .filter((last) => last < day)
    .sort((a, b) => a - b);
  return days.map((last) => {
    const own = lots.filter((lot) => lastDayOf(lot, material) === last);
    return {
      ...{ kind: 'past its date', day: last + 1, orders: [], short: 0 },
      quantity: own.reduce((sum, { quantity }) => sum + quantity, 0),
      bagDates: onceEach(own.map(({ useBy }) => useBy)),
      left: usableOn(lots, last + 1, material),
    };
  });
};

/**
 * How a material goes on from now, step by step, with what is in the yard and on its way and nothing bought beside: the plan's
 * uses take of the bags that planning takes (`takeFromLots`), and no more than there is. Bags already past their date
 * are no step. `uses` and `arrivals` in any order; what was to come before now comes now.
 *
 * Example: 3 bags, 2 used on day 10, 2 come on day 12, 4 used on day 15: left 1, 3 and 0, short of 1 on day 15.
 */
export const stockCourse = (
  material: Material,
  uses: readonly UseFor[],
  arrivals: readonly MaterialArrival[],
  { now, calendar, deliveredBy = '00:00' }: StockClock,
): CourseStep[] => {
  const { dayOf } = calendar;
  const coming = { leadDays: material.leadDays, deliveredBy };
  const today = dayOf(now);
  const counted = { ...material, onHand: countedOnHand(material) };
  let lots = lotsOnHand(counted, (instant) => dayOf(minuteOf(instant))).filter(
    (lot) => lastDayOf(lot, material) >= today,
  );
  const events: Event[] = [
    ...arrivals.map(({ day, quantity }) => ({
      kind: 'comes' as const,
      at: Math.max(now, thereAt(day, coming, calendar)),
      quantity,
    })),
    ...uses.map((use) => ({ kind: 'used' as const, ...use })),
  ].sort((a, b) => a.at - b.at);
  return events.flatMap((event): CourseStep[] => {
    const day = dayOf(event.at);
    const gone = lapsed(lots, day, material);
    lots = lots.filter((lot) => lastDayOf(lot, material) >= day);
    if (event.kind === 'comes') {
      const { quantity } = event;
      lots = [...lots, { quantity, useBy: useByOf(day, material), openedOn: null }];
      const left = usableOn(lots, day, material);
      return [
        ...gone,
        { ...{ kind: 'comes', day, quantity, orders: [], short: 0, left }, bagDates: [useByOf(day, material)] },
      ];
    }
    const { lots: after, taken, short } = takeFromLots(lots, event.quantity, day, material);
    lots = after;
    const bagDates = onceEach(taken.map(({ lot }) => lot.useBy));
    const left = usableOn(lots, day, material);
    return [
      ...gone,
      {
        kind: 'used',
        day,
        quantity: event.quantity,
        orders: event.orders,
        bagDates,
        left,
        short: short > EPSILON ? short : 0,
      },
    ];
  });
};
