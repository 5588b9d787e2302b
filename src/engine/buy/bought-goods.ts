import type { Material } from '../../../shared/material.ts';
import { type DayNumber, dateOfDay, dayNumber } from '../../../shared/time.ts';
import { type DaysOfSupplier, daysOfSupplier, type SupplierDays } from './supplier-days.ts';
import { packsPrice, type TripGoods } from './trip-terms.ts';
import { type Buying, type PackDays, type PackNeeded, packDays, tripDays } from './trip-windows.ts';

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
export interface BuyingFigures {
  /** Its own days to come, where it is not to be had before a day and the yard file has it take longer. */
  leadDays?: number;
  /** It is not to be had before. */
  notBefore?: string;
  kgPerUnit: number | null;
  /** From so much at once on, one unit costs so much; the least amount first. */
  breaks: readonly { from: number; unitPrice: number }[];
}

/** One material of a trip, in its unit; days are dates. */
export interface TripLine {
  material: string;
  quantity: number;
  orderBy: string;
  comesOn: string;
  /** When it comes if it is bought today, or on the first day on which it can be. */
  ifToday: string;
  neededOn: string;
  /** When it comes if it is not ordered by its day, but on the next one on which that can be done. */
  ifMissed: string;
  /** The last day by which no date suffers; null where the supplier was not there since. */
  mustBy: string | null;
  /** It comes later than it is needed. */
  late: boolean;
  /** It comes just in time, in a yard that wants days in hand. */
  noneInHand: boolean;
  /** The day on which the plan would have it ordered, where the supplier is closed then. */
  closedOn: string | null;
  /** Null where nobody said. */
  price: number | null;
  kg: number | null;
}

/** One material of a supplier, with the packs to buy of it and their days. */
export interface BoughtGoods {
  material: Material;
  buying: Buying;
  packs: PackDays[];
  /** When the plan would have each ordered. */
  orderDays: DayNumber[];
  goods: TripGoods;
  kgPerUnit: number | null;
  /** The yard wants a day in hand for it. */
  wantsInHand: boolean;
}

/** What the days of packs are worked out by. */
export interface BuyingGround {
  today: DayNumber;
  /** The first and the last day that days are looked up from and to. */
  span: readonly [DayNumber, DayNumber];
  /** Somebody works in the yard. */
  isWorked: (day: DayNumber) => boolean;
  /** Worked days in hand that the yard wants. */
  floatDays: number;
  /** Days in hand for what is delivered, which the plan has already. */
  deliveryDaysInHand: number;
}

/** A day is worked where the yard works or the supplier is there, who can still bring then what did not come. */
const floatOf = ({ floatDays, today, isWorked }: BuyingGround, { comes }: DaysOfSupplier): Buying['inHandFor'] => {
  const known = new Map<DayNumber, DayNumber>();
  const worked = (day: DayNumber) => isWorked(day) || comes.from(day) === day;
  return (neededOn) => {
    let day = known.get(neededOn) ?? neededOn;
    for (let left = known.has(neededOn) ? 0 : floatDays; left > 0 && day > today; ) {
      day -= 1;
      if (worked(day)) left -= 1;
    }
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

/**
 * A material with the days on which each of its packs may be bought; null where the supplier is never there, as far as is known.
 */
export const boughtGoods = (
  material: Material,
  needed: readonly PackNeeded[],
  supplier: Omit<TripSupplier, keyof SupplierDays> & { days: SupplierDays },
  { ground, figures }: { ground: BuyingGround; figures: BuyingFigures | undefined },
): BoughtGoods | null => {
  const days = daysOfSupplier(supplier.days, supplier.fetched, ...ground.span);
  const leadDays = figures?.leadDays ?? material.leadDays ?? 0;
  const buying: Buying = {
    ...{ days, leadDays, fetched: supplier.fetched, aheadDays: supplier.aheadDays },
    today: Math.max(ground.today, figures?.notBefore === undefined ? 0 : dayNumber(figures.notBefore)),
    inHandFor: floatOf(ground, days),
    shelfLifeDays: material.shelfLifeDays ?? null,
  };
  const packs = packDays(buying, needed);
  return (
    packs && {
      ...{ material, buying, packs, kgPerUnit: figures?.kgPerUnit ?? null },
      orderDays: needed.map(({ comesBy }) => comesBy - leadDays),
      goods: goodsOf(material, packs, figures),
      wantsInHand: ground.floatDays > 0 || (leadDays > 0 && ground.deliveryDaysInHand > 0),
    }
  );
};

/** When things come that are ordered on a day, or on the first one after it on which that can be done. */
const orderedOn = ({ days, fetched, leadDays }: Buying, day: DayNumber): DayNumber => {
  const soonest = (days.open.from(day) ?? day) + leadDays;
  return fetched && leadDays === 0 ? soonest : (days.comes.from(soonest) ?? soonest);
};

/** What a trip on a day brings of a material: so many packs from one on. */
export const tripLine = (
  { material, buying, packs, orderDays, goods, kgPerUnit, wantsInHand }: BoughtGoods,
  day: DayNumber,
  from: number,
  count: number,
): TripLine => {
  const first = packs[from]!;
  const { orderBy, comesOn } = tripDays(buying, day) ?? { orderBy: day, comesOn: day + buying.leadDays };
  const quantity = count * material.pack;
  const plannedOn = orderDays[from]!;
  const isClosed = plannedOn >= buying.today && buying.days.open.from(plannedOn) !== plannedOn;
  return {
    ...{ material: material.id, quantity, orderBy: dateOfDay(orderBy), comesOn: dateOfDay(comesOn) },
    ifToday: dateOfDay(orderedOn(buying, buying.today)),
    neededOn: dateOfDay(first.neededOn),
    ifMissed: dateOfDay(orderedOn(buying, orderBy + 1)),
    mustBy: first.mustBy === null ? null : dateOfDay(first.mustBy),
    late: comesOn > first.neededOn,
    noneInHand: wantsInHand && comesOn === first.neededOn,
    closedOn: isClosed ? dateOfDay(plannedOn) : null,
    price: material.unitPrice === undefined ? null : packsPrice(goods, count),
    kg: kgPerUnit === null ? null : kgPerUnit * quantity,
  };
};
