import type { StoredIncoming } from '../../../db/stores/material-store.ts';
import type { PlanBuy } from '../../../shared/plan.ts';
import { dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { thereAt } from '../../engine/buy/there-at.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { countedOnHand } from '../../engine/cut/offcuts.ts';
import { type Measures, shownAmount } from '../typed/measures.ts';
import { type Arrival, type KeepingFacts, keepingOf, type Unused } from './keeping-facts.ts';
import type { MaterialUse } from './material-uses.ts';
import { keptOf } from './stock-facts.ts';
import { type SupplyPurpose, supplyPurposes } from './supply-purposes.ts';

export type Goods = Pick<StoredIncoming, 'id' | 'material' | 'quantity' | 'on' | 'boughtOn' | 'price'>;

/** What the supplies of a yard are worked out from. */
export interface Supplied {
  yard: YardFile;
  today: string;
  uses: ReadonlyMap<string, readonly MaterialUse[]>;
  goods: readonly Goods[];
  buys: readonly PlanBuy[];
  measures: Measures;
  /** What was typed for the stock of a material ("onHand") and for goods on their way, by "material figure". */
  typed: ReadonlyMap<string, string>;
  /** What came, of the materials that go off. */
  arrivals: ReadonlyMap<string, readonly Arrival[]>;
}

/** What comes of a material, on its way or to be bought. */
interface ComingSupply {
  of: Goods | PlanBuy;
  quantity: number;
  /** Never before today. */
  on: string;
}

/** All that comes of a material, in the order in which it is used up: goods first on one day. */
const suppliesOf = ({ id }: YardFile['materials'][number], { today: day, goods, buys }: Supplied): ComingSupply[] =>
  [
    ...goods.filter((one) => one.material === id).map((one) => ({ of: one, quantity: one.quantity, on: one.on })),
    ...buys.filter((one) => one.material === id).map((one) => ({ of: one, quantity: one.quantity, on: one.arrivesOn })),
  ]
    .map((supply) => ({ ...supply, on: supply.on < day ? day : supply.on }))
    .sort((a, b) => a.on.localeCompare(b.on));

/** How a material's stock keeps, and of each supply what has no use in time. */
interface KeepingOfSupplies extends KeepingFacts {
  unused: ReadonlyMap<Goods | PlanBuy, Unused>;
}

/** How long a material's stock keeps, and of each supply what has no use in time; null where it does not go off. */
export const keepingFacts = (material: YardFile['materials'][number], seen: Supplied): KeepingOfSupplies | null => {
  const supplies = suppliesOf(material, seen);
  const uses = seen.uses.get(material.id) ?? [];
  const asked = { yard: seen.yard, today: seen.today, uses, arrivals: seen.arrivals.get(material.id) ?? [], supplies };
  const keeping = keepingOf(material, asked);
  if (keeping === null) return null;
  const unused = new Map<Goods | PlanBuy, Unused>();
  supplies.forEach(({ of }, i) => {
    const none = keeping.unused[i];
    if (none) unused.set(of, none);
  });
  return { ...keeping, unused };
};

export interface Seen extends Supplied {
  /** By order. */
  customers: ReadonlyMap<string, string | undefined>;
  /** By material, of those that go off. */
  keeping: ReadonlyMap<string, KeepingOfSupplies | null>;
}

/** So much of some supplies has no use for as long as it keeps, in the unit that is shown. */
export interface UnusedFacts extends Unused {
  unit: string;
  /** How long it keeps. */
  days: number;
}

/** What is left of an opened bag, or of half a pack, is only what comes of buying whole ones. */
const worthSaying = ({ pack }: YardFile['materials'][number]): number => (pack === 1 ? 1 : pack / 2);

/** Of these supplies of a material, what has no use while it keeps, until the day when the first of it goes off. */
export const unusedIn = (
  of: readonly (Goods | PlanBuy)[],
  material: YardFile['materials'][number],
  seen: Seen,
): UnusedFacts | null => {
  const keeping = seen.keeping.get(material.id) ?? null;
  const unused = of.flatMap((one) => keeping?.unused.get(one) ?? []);
  const quantity = unused.reduce((sum, one) => sum + one.quantity, 0);
  if (keeping === null || unused.length === 0 || quantity < worthSaying(material)) return null;
  const until = unused.map((one) => one.until).sort()[0]!;
  return { days: keeping.days, until, ...shownAmount({ quantity, unit: material.unit }, seen.measures.system) };
};

/** What each supply of a material is for. */
export type Purposes = ReadonlyMap<Goods | PlanBuy, SupplyPurpose>;

/** What each purchase of a material is for: goods on their way first where both come on one day. */
export const purposesOf = (material: YardFile['materials'][number], seen: Seen): Purposes => {
  const { timeZone, deliveredBy } = seen.yard.yard;
  const calendar = calendarOf(timeZone);
  const coming = { leadDays: material.leadDays, deliveredBy };
  const supplies = suppliesOf(material, seen);
  const purposes = supplyPurposes(
    countedOnHand(material) - keptOf(material),
    seen.uses.get(material.id) ?? [],
    supplies.map(({ on, quantity }) => ({ at: thereAt(dayNumber(on), coming, calendar), quantity })),
  );
  return new Map(supplies.map(({ of }, i) => [of, purposes[i]!]));
};
