import type { PlanBuy, PlanFile } from '../../../shared/plan.ts';
import { isFetched, type MaterialBuying, type Supplier } from '../../../shared/supplier.ts';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { BuyingFigures, TripSupplier } from '../../engine/buy/bought-goods.ts';
import { type Trip, tripsOf } from '../../engine/buy/trips.ts';
import { countedOnHand } from '../../engine/cut/offcuts.ts';
import type { MaterialUse } from './material-uses.ts';

/** What is known of suppliers and of what buying asks of materials, and how many days in hand the yard wants. */
export interface BuyingKnown {
  suppliers: readonly Supplier[];
  buyings: ReadonlyMap<string, MaterialBuying>;
  /** By material, without what it takes longer while it is not to be had. */
  leadDays: ReadonlyMap<string, number | null>;
  floatDays: number;
}

interface Planned {
  yard: YardFile;
  plan: PlanFile;
  /** The present day of the yard. */
  today: string;
  uses: ReadonlyMap<string, readonly MaterialUse[]>;
}

/** What is nearly used up rides along with a trip within so many days, or is one by then. */
const RIDES_ALONG_DAYS = 7;

const supplierOf = (
  { opens, delivers, carriesKg, leadDays: _lead, ...facts }: Supplier,
  { materials }: YardFile,
  own: BuyingKnown['leadDays'],
): TripSupplier => ({
  ...facts,
  ...{ opens: opens ?? null, delivers: delivers ?? null, carriesKg: carriesKg ?? null },
  fetched: isFetched(
    facts,
    materials.map(({ id, supplier }) => ({ supplier, leadDays: own.get(id) })),
  ),
});

const figuresOf = ({ buyings, leadDays }: BuyingKnown): Map<string, BuyingFigures> =>
  new Map(
    [...buyings].map(([material, { kgPerUnit = null, breaks, notBefore }]) => {
      const own = leadDays.get(material) ?? null;
      return [
        material,
        {
          kgPerUnit,
          breaks,
          ...(notBefore === undefined ? {} : { notBefore, ...(own === null ? {} : { leadDays: own }) }),
        },
      ];
    }),
  );

/** What is down to what the maker said, and not on its way: as many packs as bring it above that. */
const lowBuys = ({ yard, today }: Planned, { buyings }: BuyingKnown): PlanBuy[] =>
  yard.materials.flatMap((material): PlanBuy[] => {
    const buyAt = buyings.get(material.id)?.buyAt;
    if (buyAt === undefined) return [];
    const coming = yard.incoming.filter((one) => one.material === material.id);
    const there = coming.reduce((sum, { quantity }) => sum + quantity, countedOnHand(material));
    if (there > buyAt) return [];
    const packs = Math.max(1, Math.floor((buyAt - there) / material.pack) + 1);
    const orderBy = dateOfDay(dayNumber(today) + RIDES_ALONG_DAYS);
    const arrivesOn = dateOfDay(dayNumber(orderBy) + (material.leadDays ?? 0));
    return [{ material: material.id, quantity: packs * material.pack, orderBy, arrivesOn }];
  });

/** The trips of a plan, and which materials are bought because they are nearly used up. */
export interface TripsPlanned {
  trips: readonly Trip[];
  low: ReadonlySet<string>;
}

/**
 * All there is to buy, as trips: what the plan needs, and what is nearly used up. Every page that says what to buy, or how
 * much there is to buy, asks this.
 */
export const tripsPlanned = (planned: Planned, known: BuyingKnown): TripsPlanned => {
  const { yard, plan, today, uses } = planned;
  const needed = new Set(plan.buys.map(({ material }) => material));
  const low = lowBuys(planned, known).filter(({ material }) => !needed.has(material));
  const trips = tripsOf({
    ...{ yard, today, uses, floatDays: known.floatDays },
    plan: { ...plan, buys: [...plan.buys, ...low] },
    suppliers: new Map(known.suppliers.map((one) => [one.name, supplierOf(one, yard, known.leadDays)])),
    figures: figuresOf(known),
  });
  return { trips, low: new Set(low.map(({ material }) => material)) };
};
