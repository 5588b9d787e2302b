import type { Material } from '../../../shared/material.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { AHEAD_DAYS } from '../../../shared/supplier.ts';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { sessionsOf, type YardHours } from '../calendar/sessions.ts';
import {
  type BoughtGoods,
  type BuyingFigures,
  type BuyingGround,
  boughtGoods,
  type TripLine,
  type TripSupplier,
  tripLine,
} from './bought-goods.ts';
import { type ChosenTrips, chooseTrips } from './choose-trips.ts';
import type { MaterialUse } from './material-flow.ts';
import { packsNeeded } from './packs-needed.ts';
import type { SupplierDays } from './supplier-days.ts';

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
  yard: YardHours & Pick<YardFile, 'materials' | 'suppliers' | 'incoming'>;
  plan: Pick<PlanFile, 'buys'>;
  /** By material. */
  uses: ReadonlyMap<string, readonly MaterialUse[]>;
  /** By name. One that is not there is always there, and brings or sells without a limit. */
  suppliers: ReadonlyMap<string, TripSupplier>;
  /** By material. */
  figures: ReadonlyMap<string, BuyingFigures>;
  /** The present day of the yard. */
  today: string;
  /**
   * What money that is bound up costs in a year, of a hundred. That it is weighed against ways to order is of Wagner and Whitin,
   * "Dynamic Version of the Economic Lot Size Model", Management Science 5 (1958) 1.
   */
  holdingPercent: number;
  /** Days on which the yard works or the supplier is there, that things are to be there before they are needed. */
  floatDays: number;
}

const YEAR_DAYS = 365;

/** Days are looked up so far before today and after the last need. */
const LOOKED_AROUND_DAYS = 60;

/** A supplier of whom nothing is known: it is fetched what is there the same day, and brought what is not. */
const unknownSupplier = (materials: readonly Material[]): TripSupplier => ({
  ...{ opens: null, delivers: null, closed: [], minimumOrder: 0, deliveryPrice: 0, carriesKg: null },
  fetched: materials.every(({ leadDays }) => leadDays === 0),
  aheadDays: AHEAD_DAYS,
});

const ALWAYS_THERE: SupplierDays = { opens: null, delivers: null, closed: [] };

/** The goods of a supplier with their days, and whether any day of it is known. */
interface SupplierGoods {
  bought: BoughtGoods[];
  isThere: boolean;
}

const goodsOfSupplier = (
  materials: readonly Material[],
  supplier: TripSupplier,
  asked: TripsAsked,
  ground: Omit<BuyingGround, 'span'>,
): SupplierGoods => {
  const needed = materials.map((one) => packsNeeded(one, asked, asked.uses.get(one.id) ?? []));
  const lastDay = Math.max(ground.today, ...needed.flat().map(({ neededOn }) => neededOn));
  const span = [ground.today - LOOKED_AROUND_DAYS, lastDay + LOOKED_AROUND_DAYS] as const;
  const on = (days: SupplierDays) =>
    materials.map((material, i) =>
      boughtGoods(
        material,
        needed[i]!,
        { ...supplier, days },
        {
          ground: { ...ground, span },
          figures: asked.figures.get(material.id),
        },
      ),
    );
  const known = on(supplier);
  const isThere = known.every((one) => one !== null);
  return { bought: (isThere ? known : on(ALWAYS_THERE)) as BoughtGoods[], isThere };
};

/** The trips that were chosen, with what each brings. */
const tripsChosen = (
  name: string | null,
  supplier: TripSupplier,
  { bought, isThere }: SupplierGoods,
  { chosen, minimumOrder }: { chosen: ChosenTrips; minimumOrder: number },
): Trip[] => {
  const { fetched, deliveryPrice, carriesKg } = supplier;
  const taken = bought.map(() => 0);
  return chosen.trips.map(({ day, packs }): Trip => {
    const lines = bought.flatMap((one, m) => (packs[m] === 0 ? [] : [tripLine(one, day, taken[m]!, packs[m]!)]));
    for (const [m, count] of packs.entries()) taken[m]! += count;
    const goods = lines.reduce((sum, { price }) => sum + (price ?? 0), 0);
    const kg = lines.reduce((sum, line) => sum + (line.kg ?? 0), 0);
    return {
      ...{ supplier: name, fetched, day: dateOfDay(day), lines, kg, deliveryPrice },
      price: goods + deliveryPrice,
      shortOfMinimum: Math.max(0, minimumOrder - goods),
      tooHeavy: carriesKg !== null && kg > carriesKg,
      neverThere: !isThere,
      proven: chosen.proven,
    };
  });
};

/** All there is to buy of one supplier, as trips. */
const tripsTo = (
  name: string | null,
  materials: readonly Material[],
  asked: TripsAsked,
  ground: Omit<BuyingGround, 'span'>,
): Trip[] => {
  const supplier = (name === null ? null : asked.suppliers.get(name)) ?? unknownSupplier(materials);
  const of = goodsOfSupplier(materials, supplier, asked, ground);
  const isPriced = of.bought.every(({ material, packs }) => packs.length === 0 || material.unitPrice !== undefined);
  const minimumOrder = isPriced ? supplier.minimumOrder : 0;
  const { deliveryPrice, carriesKg } = supplier;
  const terms = {
    minimumOrder,
    deliveryPrice,
    carriesKg,
    tripWorth: null,
    boundPerDay: asked.holdingPercent / 100 / YEAR_DAYS,
  };
  const chosen = chooseTrips(
    of.bought.map(({ goods }) => goods),
    terms,
  );
  return tripsChosen(name, supplier, of, { chosen, minimumOrder });
};

const groundOf = ({ yard, floatDays, today }: TripsAsked): Omit<BuyingGround, 'span'> => {
  const days = new Set(sessionsOf(yard, calendarOf(yard.yard.timeZone)).map(({ day }) => day));
  const { deliveryDaysInHand } = yard.yard;
  return { today: dayNumber(today), isWorked: (day) => days.has(day), floatDays, deliveryDaysInHand };
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
  const { yard, plan } = asked;
  if (plan.buys.length === 0) return [];
  const bought = new Set(plan.buys.map(({ material }) => material));
  const materials = yard.materials.filter(({ id }) => bought.has(id));
  const ground = groundOf(asked);
  const last = '\uffff';
  return [...new Set(materials.map(({ supplier }) => supplier ?? null))]
    .flatMap((name) =>
      tripsTo(
        name,
        materials.filter(({ supplier }) => (supplier ?? null) === name),
        asked,
        ground,
      ),
    )
    .sort((a, b) => a.day.localeCompare(b.day) || (a.supplier ?? last).localeCompare(b.supplier ?? last));
};
