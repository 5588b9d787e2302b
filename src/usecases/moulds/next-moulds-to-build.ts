import { sizesOfCastings } from '../../../db/stores/casting-size-store.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { mouldKind, mouldsFor } from '../../engine/book/mould-kind.ts';
import { computeWithoutThread } from '../core/computations.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { daysAfter } from '../plan/days-late.ts';
import { planToAsk } from '../plan/plan-to-ask.ts';
import { lengthsOf } from './mould-facts.ts';

/** What the moulds that are for a casting alone are called together, or the casting's own name where that is not one. */
const kindOf = (yard: YardFile, casting: string): string => {
  const own = mouldsFor(yard, casting).filter(({ makes }) => makes.length === 1);
  const kinds = new Set(own.map(({ id }) => mouldKind(id)));
  return kinds.size === 1 ? [...kinds][0]! : (yard.castings.find(({ id }) => id === casting)?.name ?? casting);
};

/** A kind of mould of which one more would help, and the orders it would help. Days are days less late, summed up. */
export interface MouldToBuild {
  kind: string;
  /** How long its piece is, in mm; null where nobody said. */
  lengthMm: number | null;
  days: number;
  /** The most days first; no customer where none is written down. */
  orders: readonly { order: string; days: number; customer: string | null }[];
}

/** Which mould to build next. */
export interface NextMoulds {
  today: string;
  /** How many are late by the plan. */
  lateOrders: number;
  /** The one that helps most first; null: it took too long to find out. */
  moulds: readonly MouldToBuild[] | null;
}

/** Which mould to build next: what one more of each kind would take off the days that orders are late. */
export const nextMouldsToBuild = async (context: UseCaseContext): Promise<NextMoulds> => {
  const { plan, yard, memory } = await planToAsk(context);
  const compute = context.background?.compute ?? computeWithoutThread;
  const found = await compute('next moulds', { yard, ...(memory ? { memory } : {}) });
  const lengths = lengthsOf(await context.database.read(sizesOfCastings));
  const orders = new Map(yard.orders.map((order) => [order.id, order]));
  return {
    today: today(yard.yard.timeZone, context.now),
    lateOrders: plan.orders.filter(({ id, completesOn }) => daysAfter(orders.get(id) ?? {}, completesOn) > 0).length,
    moulds:
      found?.map(({ casting, daysSaved }) => ({
        kind: kindOf(yard, casting),
        lengthMm: lengths.get(casting) ?? null,
        days: daysSaved.reduce((sum, { days }) => sum + days, 0),
        orders: daysSaved
          .map(({ order, days }) => ({ order, days, customer: orders.get(order)?.customer ?? null }))
          .sort((a, b) => b.days - a.days),
      })) ?? null,
  };
};
