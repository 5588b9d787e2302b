import type { Tx } from '../../../db/open.ts';
import { arrivalsOf } from '../../../db/stores/material-store.ts';
import { undatedIn } from '../../../shared/bags.ts';
import { type DayNumber, dateOfDay, dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { keepsDays } from '../../engine/buy/dated-lots.ts';
import { type Lot, type LotKept, lotsInYard, lotsKept } from '../../engine/buy/keeping.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import type { MaterialUse } from './material-uses.ts';
import { keptOf } from './stock-facts.ts';

/** A delivery that is in the yard. */
export interface Arrival {
  quantity: number;
  arrivedOn: string;
}

/** So much of what is bought or on its way has no use, by the plan, for as long as it keeps. */
export interface Unused {
  quantity: number;
  until: string;
}

/** How the stock of a material that goes off stands. Quantities in the material's unit. */
export interface KeepingFacts {
  /** How long it keeps. */
  days: number;
  /** In the yard longer than it keeps. */
  past: readonly { quantity: number; cameOn: string }[];
  /** In the yard, still good, and by the plan used only after it has gone off. */
  late: readonly { quantity: number; until: string }[];
  /** In the yard, and nobody wrote down when it came. */
  undated: number;
}

/** What came, of each material that goes off. */
export const arrivalsThatKeep = async (
  tx: Tx,
  { materials }: Pick<YardFile, 'materials'>,
): Promise<ReadonlyMap<string, readonly Arrival[]>> => {
  const keep = materials.filter(({ shelfLifeDays }) => shelfLifeDays !== undefined);
  return new Map(await Promise.all(keep.map(async ({ id }) => [id, await arrivalsOf(tx, id)] as const)));
};

interface Asked {
  yard: YardFile;
  today: string;
  uses: readonly MaterialUse[];
  arrivals: readonly Arrival[];
  /** What is on its way or to be bought, in the order in which it is used up. */
  supplies: readonly { quantity: number; on: string }[];
}

const TOLERANCE = 1e-9;

/** What is always kept stays for the orders to come: that much of what comes last is not meant. */
const unusedOf = (kept: readonly LotKept[], always: number, lastDay: DayNumber): (Unused | null)[] => {
  let reserve = always;
  const beyond = [...kept].reverse().map(({ left, usedLate, keepsUntil }) => {
    const meant = Math.min(left, reserve);
    reserve -= meant;
    // Past its last day the plan knows of no use there may be.
    const known = keepsUntil !== null && keepsUntil <= lastDay;
    const quantity = usedLate + (known ? left - meant : 0);
    return quantity > TOLERANCE && keepsUntil !== null ? { quantity, until: dateOfDay(keepsUntil) } : null;
  });
  return beyond.reverse();
};

/** By the dates on the bags, where any has one; else by the deliveries that the stock is of. */
const bagsInYard = (
  { onHand, lots }: YardFile['materials'][number],
  shelfLifeDays: number,
  arrivals: readonly Arrival[],
): Lot[] => {
  if (lots === undefined)
    return lotsInYard(
      onHand,
      arrivals.map(({ quantity, arrivedOn }) => ({ day: dayNumber(arrivedOn), quantity })),
    );
  const rest = undatedIn({ onHand, lots });
  const dated = lots.map(({ quantity, useBy }) => ({
    ...{ quantity, cameOn: useBy === undefined ? null : dayNumber(useBy) - shelfLifeDays },
  }));
  return rest > TOLERANCE ? [{ cameOn: null, quantity: rest }, ...dated] : dated;
};

/**
 * What of a material goes off: in the yard, by its deliveries, and of each supply what it has no use for in time; null
 * where it keeps. A plan uses none past its date, as far as the dates are known; what came before bags had one is told here, and what
 * whole packs leave over.
 */
export const keepingOf = (
  material: YardFile['materials'][number],
  { yard, today, uses, arrivals, supplies }: Asked,
): (KeepingFacts & { unused: (Unused | null)[] }) | null => {
  const shelfLifeDays = keepsDays(material);
  if (shelfLifeDays === null) return null;
  const day = dayNumber(today);
  const there = bagsInYard(material, shelfLifeDays, arrivals);
  const coming = supplies.map(({ quantity, on }) => ({ cameOn: Math.max(day, dayNumber(on)), quantity }));
  const kept = lotsKept([...there, ...coming], uses, shelfLifeDays, calendarOf(yard.yard.timeZone));
  const unused = unusedOf(kept, keptOf(material), day + yard.yard.horizonDays).slice(there.length);
  const dated = there.flatMap(({ cameOn, quantity }, i) =>
    cameOn === null ? [] : [{ cameOn, quantity, ...kept[i]! }],
  );
  const isPast = ({ cameOn }: { cameOn: DayNumber }) => cameOn + shelfLifeDays < day;
  return {
    days: shelfLifeDays,
    // Bags with a date of their own are shown with it.
    past: dated
      .filter((lot) => material.lots === undefined && isPast(lot))
      .map(({ cameOn, quantity }) => ({ quantity, cameOn: dateOfDay(cameOn) })),
    late: dated
      .filter((lot) => !isPast(lot) && lot.usedLate > TOLERANCE)
      .map(({ cameOn, usedLate }) => ({ quantity: usedLate, until: dateOfDay(cameOn + shelfLifeDays) })),
    undated: there.filter(({ cameOn }) => cameOn === null).reduce((sum, { quantity }) => sum + quantity, 0),
    unused,
  };
};

/** The same in the unit that is shown. */
export const keepingShown = ({ days, past, late, undated }: KeepingFacts, perUnit: number): KeepingFacts => ({
  days,
  past: past.map((one) => ({ ...one, quantity: one.quantity * perUnit })),
  late: late.map((one) => ({ ...one, quantity: one.quantity * perUnit })),
  undated: undated * perUnit,
});
