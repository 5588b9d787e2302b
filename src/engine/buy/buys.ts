import type { Material } from '../../../shared/material.ts';
import type { PlanBuy } from '../../../shared/plan.ts';
import { type DayNumber, dateOfDay, type Minute } from '../../../shared/time.ts';
import type { Calendar } from '../calendar/calendar.ts';
import { countedOnHand } from '../cut/offcuts.ts';
import { type ComingDays, comingEveryDay } from './coming-days.ts';
import { type DatedMaterial, datedBuysOf } from './dated-buys.ts';
import { isDated } from './dated-lots.ts';
import type { Deliveries, MaterialArrival, MaterialUse } from './material-flow.ts';
import { type Coming, lastDayFor, thereAt } from './there-at.ts';

/** What decides when and how much of a material is bought. */
export type BoughtMaterial = Pick<Material, 'stickMm' | 'inSheets'> & DatedMaterial;

interface Change {
  at: Minute;
  quantity: number;
}

/** So many packs, there from the beginning of a day. */
interface Packs {
  day: DayNumber;
  packs: number;
}

/** Less than this is not missing: sums of fractions are not exact. Rules are checked with the same figure. */
const TOLERANCE = 1e-6;

const changesOf = (
  uses: MaterialUse[],
  incoming: MaterialArrival[],
  coming: Coming,
  now: Minute,
  calendar: Calendar,
): Change[] => [
  ...uses.map((x) => ({ at: x.at, quantity: -x.quantity })),
  ...incoming
    .filter(({ day }) => day >= calendar.dayOf(now))
    .map((x) => ({ at: Math.max(now, thereAt(x.day, coming, calendar)), quantity: x.quantity })),
];

/** By time, what comes in before what is taken at the same instant. */
const inOrder = (changes: Change[]): Change[] => changes.sort((a, b) => a.at - b.at || b.quantity - a.quantity);

/**
 * The most that is missing on each date, in order of date, given that what was missing before has been bought in whole
 * packs: `level` runs on from date to date.
 */
const packsByDay = (
  material: BoughtMaterial,
  changes: Change[],
  { soonest }: ComingDays,
  coming: Coming,
  nowMinute: Minute,
  calendar: Calendar,
): Packs[] => {
  // What was to come by now counts as here before anything more is bought for today.
  const minimumFrom = Math.max(nowMinute, thereAt(soonest, coming, calendar));
  const events = inOrder([...changes, { at: minimumFrom, quantity: 0 }]);
  const bought: Packs[] = [];
  let level = countedOnHand(material);
  events.forEach((event, i) => {
    level += event.quantity;
    // Before anything bought can be here, nothing can be done about what is missing.
    if (event.at < minimumFrom || events[i + 1]?.at === event.at) return;
    const packs = Math.ceil((material.minimum - level - TOLERANCE) / material.pack);
    if (packs <= 0) return;
    level += packs * material.pack;
    const day = Math.max(soonest, lastDayFor(event.at, coming, calendar));
    const last = bought.at(-1);
    if (last?.day === day) last.packs += packs;
    else bought.push({ day, packs });
  });
  return bought;
};

/** So many days sooner, on a day on which it can come: all that would have to be there before the soonest comes on that. */
const comingEarlier = (needed: readonly Packs[], { countingBy }: ComingDays, daysInHand: number): Packs[] => {
  const sooner: Packs[] = [];
  for (const { day, packs } of needed) {
    const on = countingBy(day, daysInHand);
    const last = sooner.at(-1);
    if (last?.day === on) last.packs += packs;
    else sooner.push({ day: on, packs });
  }
  return sooner;
};

/**
 * What to buy of a material, just in time: for every date on which its level would fall short of `minimum`, the fewest
 * packs that keep it, there from the time of that date by which the yard is brought things and ordered `leadDays` before (R10). So no buy is idle (a pack
 * less would not do) and none is early (a day later would not do). Quantities in the material's unit.
 *
 * Uses before anything bought can be here draw on what is there and on its way; whether that is enough is for placement
 * to see to. A material without `leadDays` cannot be bought: nothing is.
 *
 * What goes past its date, or keeps only some days once it is opened, is bought so that what is past its date counts for nothing (`datedBuysOf`).
 *
 * With days in hand each comes so many days sooner, but no sooner than what is ordered today: a delivery may then be late. What is there the same day is fetched, and is not.
 * Where the supplier is not there every day, it comes on the last of its days that will do.
 *
 * Example: 9 bags there, none to be kept, packs of 5, two days to come; 8 bags taken on 6 April, 4 on the 10th, 3 on the
 * 12th, today the 5th: one pack ordered on the 8th for the 10th, one on the 10th for the 12th. With two days in hand: today, for the 8th, the latter for the 10th.
 */
export const buysOf = (
  material: BoughtMaterial,
  uses: MaterialUse[],
  incoming: MaterialArrival[],
  nowMinute: Minute,
  calendar: Calendar,
  deliveries: Deliveries = {},
): PlanBuy[] => {
  const { leadDays } = material;
  if (leadDays === undefined) return [];
  if (isDated(material)) return datedBuysOf(material, uses, incoming, nowMinute, calendar, deliveries);
  const {
    daysInHand = 0,
    deliveredBy = '00:00',
    days = comingEveryDay(calendar.dayOf(nowMinute), leadDays, null),
  } = deliveries;
  if (days === null) return [];
  const coming = { leadDays, deliveredBy };
  const changes = changesOf(uses, incoming, coming, nowMinute, calendar);
  const needed = packsByDay(material, changes, days, coming, nowMinute, calendar);
  return comingEarlier(needed, days, leadDays > 0 ? daysInHand : 0).map(({ day, packs }) => ({
    material: material.id,
    quantity: packs * material.pack,
    orderBy: dateOfDay(days.orderedFor(day)),
    arrivesOn: dateOfDay(day),
  }));
};
