import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { YardRecord } from '../../../shared/yard-record.ts';
import type { KeptReady } from '../kept-ready.ts';
import { beliefsOf } from './beliefs.ts';
import { shareOf } from './beta.ts';

/**
 * How likely so many are good of so many that are poured, each of them not good with the same share, whatever the others are
 * (the binomial).
 *
 * Example: of 12 poured at 1 in 20 all 12 are good in 0.540 of all cases; of 13 poured 12 in 0.865.
 */
export const chanceOfGood = (good: number, poured: number, share: number): number => {
  let chance = 0;
  // So many are not good: each term follows from the one before.
  let term = (1 - share) ** poured;
  for (let bad = 0; bad <= poured - good; bad++) {
    chance += term;
    term *= ((poured - bad) / (bad + 1)) * (share / (1 - share));
  }
  return chance;
};

/** Pieces of one casting that an order lacks, and what pouring one or two more would do. */
export interface Spare {
  casting: string;
  count: number;
  /** How likely none of them has to be poured again. */
  allGood: number;
  /** So many poured at once, and how likely enough of them are good. */
  poured: number;
  enoughGood: number;
}

/** A spare piece that gains less is not worth a turn of a mould. */
const LEAST_GAIN = 0.1;

/**
 * Whether pouring one more than an order lacks is worth telling: where it makes it likelier by a tenth or more that nothing has to be
 * poured again. Null where it does not.
 *
 * Example: `spareFor('panel-900', 12, 0.05)` is to pour 13: 0.865 in place of 0.540.
 */
export const spareFor = (casting: string, count: number, share: number): Spare | null => {
  const [allGood, enoughGood] = [chanceOfGood(count, count, share), chanceOfGood(count, count + 1, share)];
  if (enoughGood - allGood < LEAST_GAIN) return null;
  return { casting, count, allGood, poured: count + 1, enoughGood };
};

/** Pieces of one order that are still to come out of moulds: planned, or in one already; by casting. */
const toComeOut = (
  { inMould }: Pick<YardFile, 'inMould'>,
  { pours, strips }: Pick<PlanFile, 'pours' | 'strips'>,
): Map<string, Map<string, number>> => {
  const byOrder = new Map<string, Map<string, number>>();
  const add = (order: string | undefined, casting: string | undefined): void => {
    if (order === undefined || casting === undefined) return;
    const counts = byOrder.get(order) ?? new Map<string, number>();
    byOrder.set(order, counts.set(casting, (counts.get(casting) ?? 0) + 1));
  };
  for (const { order, casting } of pours) add(order, casting);
  for (const { order, mould } of strips) add(order, inMould.find((one) => one.mould === mould)?.casting);
  return byOrder;
};

type Counts = Iterable<readonly [string, number]>;

const sparesBy = (counts: Counts, { piecesOf }: Pick<ReturnType<typeof beliefsOf>, 'piecesOf'>): Spare[] =>
  [...counts].flatMap(([casting, count]) => spareFor(casting, count, shareOf(piecesOf(casting))) ?? []);

/** Spare pieces worth pouring beside so many of each casting, as often as one is not good by the record. */
export const sparesFor = (counts: Counts, record: YardRecord): Spare[] => sparesBy(counts, beliefsOf(record));

/** The same for what one order still lacks. */
export const sparesForOrder = (
  yard: Pick<YardFile, 'inMould'>,
  plan: Pick<PlanFile, 'pours' | 'strips'>,
  { order, record }: { order: string; record: YardRecord },
): Spare[] => sparesFor(toComeOut(yard, plan).get(order) ?? [], record);

/** A piece to spare that a plan is to have, until when it is of use, and the orders that it could serve. */
interface SpareWanted extends KeptReady {
  by: string;
  orders: string[];
}

type Planned = Pick<PlanFile, 'pours' | 'strips' | 'orders'>;

/**
 * The pieces to spare that a plan is to have: one of a casting, however many orders with a date it could serve, since whatever
 * takes it, the next plan has another. It is of use until the last of them is there, by its date or by the plan.
 */
export const sparesWanted = (
  yard: Pick<YardFile, 'inMould' | 'orders'>,
  plan: Planned,
  record: YardRecord,
): SpareWanted[] => {
  const completesOn = new Map(plan.orders.map((order) => [order.id, order.completesOn]));
  const [lacking, beliefs] = [toComeOut(yard, plan), beliefsOf(record)];
  const byCasting = new Map<string, SpareWanted>();
  for (const { id, due, wanted } of yard.orders) {
    const [date, planned] = [due ?? wanted, completesOn.get(id)];
    if (date === undefined || planned === undefined) continue;
    for (const { casting } of sparesBy(lacking.get(id) ?? [], beliefs)) {
      const { by, orders } = byCasting.get(casting) ?? { by: '', orders: [] };
      const last = [by, date, planned].sort().at(-1)!;
      byCasting.set(casting, { casting, count: 1, by: last, orders: [...orders, id] });
    }
  }
  return [...byCasting.values()];
};

/** What is to stand ready, with spares before it: what of a casting stands there anyway is a spare. */
export const withSpares = (kept: readonly KeptReady[], spares: readonly KeptReady[]): KeptReady[] => [
  ...spares.filter(({ casting }) => !kept.some((one) => one.casting === casting)),
  ...kept,
];
