import type { Material } from '../../../shared/material.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { AHEAD_DAYS } from '../../../shared/supplier.ts';
import { type DayNumber, dateOfDay, dayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { sessionsOf } from '../calendar/sessions.ts';

import { type ChosenTrip, chooseTrips } from './choose-trips.ts';
import type { MaterialUse } from './material-flow.ts';
import { packsNeeded } from './packs-needed.ts';
import { daysOfSupplier, type SupplierDays } from './supplier-days.ts';
import { packsPrice, type TripGoods } from './trip-terms.ts';
import { type Buying, type PackDays, packDays, tripDays } from './trip-windows.ts';

/** Who sells things, and how. Money in the yard's currency. */
export interface TripSupplier extends SupplierDays {
  /** Things are fetched there; false: they are brought. */
  fetched: boolean;
  minimumOrder: number;
  deliveryPrice: number;
  /** What one trip or delivery carries; null: no limit. */
  carriesKg: number | null;
  /** A trip is for so many days ahead at most. */
  aheadDays: number;
}

/** What planning does not ask of a material, and buying does. */
interface BuyingFigures {
  kgPerUnit: number | null;
  /** From so much at once on, one unit costs so much; the least amount first. */
  breaks: readonly { from: number; unitPrice: number }[];
}

/** One material of a trip, in its unit; days are dates. */
interface TripLine {
  material: string;
  quantity: number;
  orderBy: string;
  comesOn: string;
  neededOn: string;
  /** The last day by which no date suffers; null where the supplier was not there since. */
  mustBy: string | null;
  /** It comes later than it is needed. */
  late: boolean;
  /** It comes in time, and with less in hand than the yard wants. */
  noneInHand: boolean;
  /** The day on which the plan would have it ordered, where the supplier is closed then. */
  closedOn: string | null;
  /** Null where nobody said. */
  price: number | null;
  kg: number | null;
}

/** One way to a shop, or one order of what is brought. */
export interface Trip {
  /** Null: of materials of which nobody said who sells them. */
  supplier: string | null;
  fetched: boolean;
  /** The day it is fetched, or else ordered: the last one. */
  day: string;
  lines: TripLine[];
  /** What of it is known, with the delivery. */
  price: number;
  deliveryPrice: number;
  /** So much is missing to the least order; 0 also where a price is not known. */
  shortOfMinimum: number;
  kg: number;
  /** It is more than is carried at once: a single pack. */
  tooHeavy: boolean;
  /** No day is known on which the supplier is there: days are as if it always were. */
  neverThere: boolean;
  /** No other trips to this supplier are fewer, or cost less. */
  proven: boolean;
}

/** What trips are worked out from. */
export interface TripsAsked {
  yard: YardFile;
  plan: PlanFile;
  /** By material. */
  uses: ReadonlyMap<string, readonly MaterialUse[]>;
  /** By name. One that is not there is always there, and brings or sells without a limit. */
  suppliers: ReadonlyMap<string, TripSupplier>;
  /** By material. */
  figures: ReadonlyMap<string, BuyingFigures>;
  /** Working days that things are to be there before they are needed. */
  floatDays: number;
}

/** What a day of money bound up costs of it, about 18 % a year with the room it takes: a rule of thumb, no source. */
const BOUND_PER_DAY = 0.0005;

/** Days are looked up so far before today and after the last need. */
const LOOKED_AROUND_DAYS = 60;

/** A supplier of whom nothing is known: it is fetched what is there the same day, and brought what is not. */
const unknownSupplier = (materials: readonly Material[]): TripSupplier => ({
  ...{ opens: null, delivers: null, closed: [], minimumOrder: 0, deliveryPrice: 0, carriesKg: null },
  fetched: materials.every(({ leadDays }) => leadDays === 0),
  aheadDays: AHEAD_DAYS,
});

/** One material of a supplier, with the packs to buy of it and their days. */
interface Bought {
  material: Material;
  buying: Buying;
  packs: PackDays[];
  /** When the plan would have each ordered. */
  orderDays: DayNumber[];
  goods: TripGoods;
  kgPerUnit: number | null;
}

/** The day on which things are to be there that are needed on another: so many working days before. */
const floatOf = (yard: YardFile, floatDays: number, today: DayNumber): Buying['inHandFor'] => {
  if (floatDays === 0) return (neededOn) => neededOn;
  const days = [...new Set(sessionsOf(yard, calendarOf(yard.yard.timeZone)).map(({ day }) => day))];
  const known = new Map<DayNumber, DayNumber>();
  return (neededOn) => {
    const day = known.get(neededOn) ?? days.filter((one) => one < neededOn && one >= today).at(-floatDays) ?? today;
    known.set(neededOn, day);
    return day;
  };
};

const goodsOf = (
  { pack, unitPrice }: Material,
  packs: readonly PackDays[],
  figures: BuyingFigures | undefined,
): TripGoods => ({
  packs: packs.map(({ from, until }) => ({ from, until })),
  packPrice: (unitPrice ?? 0) * pack,
  packKg: (figures?.kgPerUnit ?? 0) * pack,
  breaks: (figures?.breaks ?? []).map((one) => ({
    fromPacks: Math.ceil(one.from / pack - 1e-9),
    packPrice: one.unitPrice * pack,
  })),
});

const lineOf = (
  { material, buying, packs, orderDays, goods, kgPerUnit }: Bought,
  day: DayNumber,
  from: number,
  count: number,
): TripLine => {
  const first = packs[from]!;
  const { orderBy, comesOn } = tripDays(buying, day) ?? { orderBy: day, comesOn: day + buying.leadDays };
  const quantity = count * material.pack;
  const plannedOn = orderDays[from]!;
  const isClosed = plannedOn >= buying.today && buying.days.open.from(plannedOn) !== plannedOn;
  const isLate = comesOn > first.neededOn;
  return {
    ...{ material: material.id, quantity, orderBy: dateOfDay(orderBy), comesOn: dateOfDay(comesOn) },
    neededOn: dateOfDay(first.neededOn),
    mustBy: first.mustBy === null ? null : dateOfDay(first.mustBy),
    late: isLate,
    noneInHand: !isLate && comesOn > buying.inHandFor(first.neededOn),
    closedOn: isClosed ? dateOfDay(plannedOn) : null,
    price: material.unitPrice === undefined ? null : packsPrice(goods, count),
    kg: kgPerUnit === null ? null : kgPerUnit * quantity,
  };
};

/** All there is to buy of one supplier, as trips. */
const tripsOfSupplier = (
  name: string | null,
  materials: readonly Material[],
  asked: TripsAsked,
  inHandFor: Buying['inHandFor'],
): Trip[] => {
  const { yard, plan, uses, figures } = asked;
  const needed = materials.map((material) => packsNeeded(material, { yard, plan }, uses.get(material.id) ?? []));
  const lastDay = Math.max(0, ...needed.flat().map(({ neededOn }) => neededOn));
  if (lastDay === 0) return [];
  const supplier = (name === null ? null : asked.suppliers.get(name)) ?? unknownSupplier(materials);
  const today = calendarOf(yard.yard.timeZone).dayOf(minuteOf(yard.yard.now));
  const span = [today - LOOKED_AROUND_DAYS, lastDay + LOOKED_AROUND_DAYS] as const;
  const boughtBy = (days: SupplierDays): Bought[] | null => {
    const bought: Bought[] = [];
    for (const [i, material] of materials.entries()) {
      const buying: Buying = {
        ...{ today, inHandFor, fetched: supplier.fetched, aheadDays: supplier.aheadDays },
        days: daysOfSupplier(days, supplier.fetched, ...span),
        leadDays: material.leadDays ?? 0,
        shelfLifeDays: material.shelfLifeDays ?? null,
      };
      const packs = packDays(buying, needed[i]!);
      if (packs === null) return null;
      const orderDays = needed[i]!.map(({ comesBy }) => comesBy - buying.leadDays);
      const goods = goodsOf(material, packs, figures.get(material.id));
      bought.push({
        material,
        buying,
        packs,
        orderDays,
        goods,
        kgPerUnit: figures.get(material.id)?.kgPerUnit ?? null,
      });
    }
    return bought;
  };
  const known = boughtBy(supplier);
  const bought = known ?? boughtBy({ opens: null, delivers: null, closed: [] })!;
  const isPriced = bought.every(({ material, packs }) => packs.length === 0 || material.unitPrice !== undefined);
  const minimumOrder = isPriced ? supplier.minimumOrder : 0;
  const { deliveryPrice, carriesKg } = supplier;
  const terms = { minimumOrder, deliveryPrice, carriesKg, tripWorth: null, boundPerDay: BOUND_PER_DAY };
  const chosen = chooseTrips(
    bought.map(({ goods }) => goods),
    terms,
  );
  const taken = bought.map(() => 0);
  const tripOf = ({ day, packs }: ChosenTrip): Trip => {
    const lines = bought.flatMap((one, m) => (packs[m]! === 0 ? [] : [lineOf(one, day, taken[m]!, packs[m]!)]));
    packs.forEach((count, m) => {
      taken[m]! += count;
    });
    const goods = lines.reduce((sum, { price }) => sum + (price ?? 0), 0);
    const kg = lines.reduce((sum, line) => sum + (line.kg ?? 0), 0);
    return {
      ...{ supplier: name, fetched: supplier.fetched, day: dateOfDay(day), lines, kg, deliveryPrice },
      price: goods + deliveryPrice,
      shortOfMinimum: Math.max(0, minimumOrder - goods),
      tooHeavy: carriesKg !== null && kg > carriesKg,
      neverThere: known === null,
      proven: chosen.proven,
    };
  };
  return chosen.trips.map(tripOf);
};

/**
 * What a plan buys as trips and orders, by day: for each supplier as few as bring everything in its time, and of those the
 * cheapest (`chooseTrips`). Nothing is bought on a day on which the supplier is closed, and nothing so early that it is past its
 * shelf life before it is used; what is needed is there the yard's days in hand before, where that can still be.
 *
 * Example: a shop open Monday to Saturday, 2 bags needed on Sunday 4 April and 1 on Wednesday the 7th, no float: one trip on
 * Saturday the 3rd for all three.
 */
export const tripsOf = (asked: TripsAsked): Trip[] => {
  const { yard, plan, floatDays } = asked;
  if (plan.buys.length === 0) return [];
  const bought = new Set(plan.buys.map(({ material }) => material));
  const today = calendarOf(yard.yard.timeZone).dayOf(minuteOf(yard.yard.now));
  const inHandFor = floatOf(yard, floatDays, today);
  const materials = yard.materials.filter(({ id }) => bought.has(id));
  const names = [...new Set(materials.map(({ supplier }) => supplier ?? null))];
  return names
    .flatMap((name) =>
      tripsOfSupplier(
        name,
        materials.filter(({ supplier }) => (supplier ?? null) === name),
        asked,
        inHandFor,
      ),
    )
    .sort(
      (a, b) => dayNumber(a.day) - dayNumber(b.day) || (a.supplier ?? '\uffff').localeCompare(b.supplier ?? '\uffff'),
    );
};
