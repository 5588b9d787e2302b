import type { Material } from '../../../shared/material.ts';
import type { PlanBuy } from '../../../shared/plan.ts';
import { type DayNumber, dateOfDay, type Minute, minuteOf } from '../../../shared/time.ts';
import type { Calendar } from '../calendar/calendar.ts';
import { type ComingDays, comingEveryDay } from './coming-days.ts';
import { type Gap, gapsOf, isInGap } from './coming-gaps.ts';
import { type DatedLot, keepsDays, lastDayOf, lotsOnHand, takeFromLots, usableOn, useByOf } from './dated-lots.ts';
import type { Deliveries, MaterialArrival, MaterialUse } from './material-flow.ts';
import { type Coming, lastDayFor, thereAt } from './there-at.ts';

/** A material that goes past its date: what decides when and how much of it is bought. */
export type DatedMaterial = Pick<
  Material,
  'id' | 'onHand' | 'pack' | 'leadDays' | 'minimum' | 'shelfLifeDays' | 'lots' | 'opensBy' | 'openedDays'
>;

/** Comes in (a quantity above 0) or is used (under 0) on a day; what comes by `buyOn` is there for it. */
interface Event {
  at: Minute;
  day: DayNumber;
  buyOn: DayNumber;
  quantity: number;
}

/** The same figure as for what keeps (`buysOf`). */
const TOLERANCE = 1e-6;

const eventsOf = (
  uses: readonly MaterialUse[],
  incoming: readonly MaterialArrival[],
  { coming, minimumFrom, now }: { coming: Coming; minimumFrom: Minute; now: Minute },
  calendar: Calendar,
): Event[] => {
  const event = (at: Minute, quantity: number): Event => ({
    ...{ at, quantity, day: calendar.dayOf(at), buyOn: lastDayFor(at, coming, calendar) },
  });
  const due = incoming.filter(({ day }) => day >= calendar.dayOf(now));
  return [
    ...uses.map(({ at, quantity }) => event(at, -quantity)),
    ...due.map(({ day, quantity }) => event(Math.max(now, thereAt(day, coming, calendar)), quantity)),
    event(minimumFrom, 0),
  ].sort((a, b) => a.at - b.at || b.quantity - a.quantity);
};

interface Level {
  lots: DatedLot[];
  /** How much is missing at the first instant at which some is. */
  missing: number;
}

/** From when on something bought can be there, and the times at which nothing can all the same. */
interface ToBeHad {
  from: Minute;
  gaps: readonly Gap[];
}

/** Lots once some things have come and some were used, as far as nothing is missing that could be had. */
const levelAfter = (
  material: DatedMaterial,
  lots: readonly DatedLot[],
  events: readonly Event[],
  { from, gaps }: ToBeHad,
): Level => {
  let level: Level = { lots: [...lots], missing: 0 };
  let short = 0;
  for (const [i, { at, day, quantity }] of events.entries()) {
    if (quantity > 0) level.lots.push({ quantity, useBy: useByOf(day, material), openedOn: null });
    else {
      const taken = takeFromLots(level.lots, -quantity, day, material);
      level = { ...level, lots: taken.lots };
      if (!isInGap(gaps, at)) short += taken.short;
    }
    if (at < from || events[i + 1]?.at === at || isInGap(gaps, at)) continue;
    const missing = short + material.minimum - usableOn(level.lots, day, material);
    if (missing > TOLERANCE) return { ...level, missing };
  }
  return level;
};

/** What comes on one day for all that is missing until the next day on which something else can come. */
interface Stretch {
  arrivesOn: DayNumber;
  events: Event[];
}

/** What is used on the first day on which something bought can be there, and on as many after it as are kept in hand; then day by day. */
const stretchesOf = (events: readonly Event[], { countingBy }: ComingDays, inHand: number): Stretch[] => {
  const stretches: Stretch[] = [];
  for (const event of events) {
    const arrivesOn = countingBy(event.buyOn, inHand);
    const last = stretches.at(-1);
    if (last?.arrivesOn === arrivesOn) last.events.push(event);
    else stretches.push({ arrivesOn, events: [event] });
  }
  return stretches;
};

/**
 * Packs that come for a stretch so that nothing is missing in it, with one less something would be; and what is there after
 * it. What is opened of two lots may be more than of one, so that fewer can do where a few more did not.
 */
const packsFor = (
  material: DatedMaterial,
  before: readonly DatedLot[],
  { arrivesOn, events }: Stretch,
  toBeHad: ToBeHad,
): { packs: number; lots: DatedLot[] } => {
  const levelWith = (packs: number): Level => {
    const bought = { quantity: packs * material.pack, useBy: useByOf(arrivesOn, material), openedOn: null };
    return levelAfter(material, packs > 0 ? [...before, bought] : before, events, toBeHad);
  };
  let packs = 0;
  let level = levelWith(packs);
  while (level.missing > 0) {
    packs += Math.ceil((level.missing - TOLERANCE) / material.pack);
    level = levelWith(packs);
  }
  for (let less = packs - 1; less > 0; less--) {
    const fewer = levelWith(less);
    if (fewer.missing > 0) break;
    [packs, level] = [less, fewer];
  }
  return { packs, lots: level.lots };
};

/**
 * What to buy of a material that goes past its date, just in time (rule R10): as `buysOf`, with what is past its date counting for
 * nothing. What is kept in hand for deliveries is no more than it keeps.
 *
 * Example: bags that keep two days once opened, half a bag used on each of four Saturdays, none there: a bag for each of them.
 */
export const datedBuysOf = (
  material: DatedMaterial,
  uses: readonly MaterialUse[],
  incoming: readonly MaterialArrival[],
  nowMinute: Minute,
  calendar: Calendar,
  { daysInHand = 0, deliveredBy = '00:00', days: comingOn }: Deliveries = {},
): PlanBuy[] => {
  const { leadDays } = material;
  if (leadDays === undefined) return [];
  const days =
    comingOn === undefined ? comingEveryDay(calendar.dayOf(nowMinute), leadDays, keepsDays(material)) : comingOn;
  if (days === null) return [];
  const coming = { leadDays, deliveredBy };
  const minimumFrom = Math.max(nowMinute, thereAt(days.soonest, coming, calendar));
  const toBeHad = { from: minimumFrom, gaps: gapsOf(days, coming, calendar) };
  const events = eventsOf(uses, incoming, { coming, minimumFrom, now: nowMinute }, calendar);
  let lots = lotsOnHand(material, (instant) => calendar.dayOf(minuteOf(instant)));
  // Before anything bought can be here, nothing can be done about what is missing.
  ({ lots } = levelAfter(
    material,
    lots,
    events.filter(({ at }) => at < minimumFrom),
    { from: Number.POSITIVE_INFINITY, gaps: [] },
  ));
  const buys: PlanBuy[] = [];
  const later = events.filter(({ at }) => at >= minimumFrom);
  for (const stretch of stretchesOf(later, days, leadDays > 0 ? daysInHand : 0)) {
    const { arrivesOn } = stretch;
    const needed = packsFor(material, lots, stretch, toBeHad);
    lots = needed.lots.filter((lot) => lastDayOf(lot, material) >= stretch.events.at(-1)!.day);
    if (needed.packs === 0) continue;
    const quantity = needed.packs * material.pack;
    const orderBy = dateOfDay(days.orderedFor(arrivesOn));
    buys.push({ material: material.id, quantity, orderBy, arrivesOn: dateOfDay(arrivesOn) });
  }
  return buys;
};
