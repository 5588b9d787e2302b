import type { KeptLine } from '../../../db/stores/kept-ready-store.ts';
import type { Material } from '../../../shared/material.ts';
import type { PlanBuy, PlanFile } from '../../../shared/plan.ts';
import { isFetched, type MaterialBuying, type Supplier } from '../../../shared/supplier.ts';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { BuyingFigures, TripSupplier } from '../../engine/buy/bought-goods.ts';
import type { Trip, TripsAsked } from '../../engine/buy/trips.ts';
import { countedOnHand } from '../../engine/cut/offcuts.ts';
import { beginningOf } from '../core/kept-for-day.ts';
import { shortForKept } from './kept-goods.ts';
import type { MaterialUse } from './material-uses.ts';

/** What is known of suppliers and of what buying asks of materials, and how many days in hand the yard wants. */
export interface BuyingKnown {
  suppliers: readonly Supplier[];
  buyings: ReadonlyMap<string, MaterialBuying>;
  /** By material, without what it takes longer while it is not to be had. */
  leadDays: ReadonlyMap<string, number | null>;
  floatDays: number;
  /** What money bound up in stock costs a year, of a hundred. */
  holdingPercent: number;
  /** What is to stand ready. */
  kept: readonly KeptLine[];
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

/** Bought with whatever trip there is within some days, or on one of its own by then. */
const ridingAlong = ({ id: material, leadDays = 0 }: Material, quantity: number, today: string): PlanBuy => {
  const orderBy = dateOfDay(dayNumber(today) + RIDES_ALONG_DAYS);
  return { material, quantity, orderBy, arrivesOn: dateOfDay(dayNumber(orderBy) + leadDays) };
};

/** What is down to what the maker said, and not on its way: as many packs as bring it above that. */
const lowBuys = ({ yard, today }: Planned, { buyings }: BuyingKnown): PlanBuy[] =>
  yard.materials.flatMap((material): PlanBuy[] => {
    const buyAt = buyings.get(material.id)?.buyAt;
    if (buyAt === undefined) return [];
    const coming = yard.incoming.filter((one) => one.material === material.id);
    const there = coming.reduce((sum, { quantity }) => sum + quantity, countedOnHand(material));
    if (there > buyAt) return [];
    const packs = Math.max(1, Math.floor((buyAt - there) / material.pack) + 1);
    return [ridingAlong(material, packs * material.pack, today)];
  });

/** The plan's buys, and what kits take that are to stand ready: with the last buy of the same, or by itself. */
const withKept = (
  buys: readonly PlanBuy[],
  planned: Planned,
  { kept }: BuyingKnown,
): { buys: PlanBuy[]; alone: PlanBuy[] } => {
  const short = new Map(kept.length === 0 ? [] : shortForKept(kept, planned));
  const larger = [...buys].reverse().map((buy) => {
    const more = short.get(buy.material) ?? 0;
    short.delete(buy.material);
    return more === 0 ? buy : { ...buy, quantity: buy.quantity + more };
  });
  const alone = planned.yard.materials.flatMap((material) => {
    const quantity = short.get(material.id);
    return quantity === undefined ? [] : [ridingAlong(material, quantity, planned.today)];
  });
  return { buys: larger.reverse(), alone };
};

/** Why something is bought that no plan waits for. */
export type BoughtBeside = 'nearly used up' | 'to stand ready';

/** The trips of a plan, and which materials are bought beside what it needs, and why. */
export interface TripsPlanned {
  trips: readonly Trip[];
  beside: ReadonlyMap<string, BoughtBeside>;
}

/** What trips are asked of: no more of the yard and its plan than they go by, since all of it may be sent to a thread. */
const askedOf = ({ yard, today, uses }: Planned, buys: readonly PlanBuy[], known: BuyingKnown): TripsAsked => {
  const { work, closed, extra, materials, suppliers, incoming } = yard;
  const now = beginningOf(today, yard.yard);
  const bought = new Set(buys.map(({ material }) => material));
  return {
    ...{ today, plan: { buys: [...buys] }, floatDays: known.floatDays, holdingPercent: known.holdingPercent },
    yard: {
      yard: { ...yard.yard, now },
      work,
      closed,
      extra,
      materials,
      incoming,
      ...(suppliers ? { suppliers } : {}),
    },
    uses: new Map(
      [...uses].flatMap(([material, list]): [string, { at: number; quantity: number }[]][] =>
        bought.has(material) ? [[material, list.map(({ at, quantity }) => ({ at, quantity }))]] : [],
      ),
    ),
    suppliers: new Map(known.suppliers.map((one) => [one.name, supplierOf(one, yard, known.leadDays)])),
    figures: figuresOf(known),
  };
};

/**
 * All there is to buy, to be asked for as trips: what the plan needs, what is nearly used up, and what kits take that are to stand ready. Every page that says
 * what to buy, or how much there is to buy, asks this.
 */
export const tripsToAsk = (
  planned: Planned,
  known: BuyingKnown,
): Pick<TripsPlanned, 'beside'> & { asked: TripsAsked } => {
  const { plan } = planned;
  const { buys, alone } = withKept(plan.buys, planned, known);
  const needed = new Set([...buys, ...alone].map(({ material }) => material));
  const low = lowBuys(planned, known).filter(({ material }) => !needed.has(material));
  const named = (list: readonly PlanBuy[], why: BoughtBeside) =>
    list.map(({ material }): [string, BoughtBeside] => [material, why]);
  const asked = askedOf(planned, [...buys, ...alone, ...low], known);
  return { asked, beside: new Map([...named(low, 'nearly used up'), ...named(alone, 'to stand ready')]) };
};
