import type { Order } from '../../../shared/order.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { NEVER, NONE } from '../decoder/problem.ts';
import type { PlanMemory } from '../search/memory.ts';
import type { Candidate } from './standing-plan.ts';

/** What is known of the plan that stands. */
type Near = Pick<PlanFile, 'orders' | 'unplanned'>;
/** The day on which an order is ready; NEVER for one that is left out. */
type DayOf = (id: string) => number;
/** Who has an order's place in a plan, where that is not the order itself. */
type Holders = ReadonlyMap<string, string>;

/** What two orders have to have in common to be the same work for the same day. */
const wishOf = ({ due = '', wanted = '', notBefore = '', weight, packedMinutes = 0, lines }: Order): string =>
  JSON.stringify([due, wanted, notBefore, weight, packedMinutes, lines]);

/**
 * Orders that have something of their own: pieces set aside, a packing that is fixed or under way, or a day that was told
 * just now, since the plan that stands does not know them.
 */
const withOwn = ({ orders, finished, inMould, keep, begun }: YardFile, near: Near): ReadonlySet<string> => {
  const known = new Set([...near.orders.map(({ id }) => id), ...near.unplanned.map(({ order }) => order)]);
  const held = [...finished, ...inMould, ...(keep?.packs ?? []), ...(begun?.packs ?? [])];
  return new Set([...held.map(({ order }) => order ?? ''), ...orders.map(({ id }) => (known.has(id) ? '' : id))]);
};

/** Orders that want the same and have nothing of their own, several together. */
const equals = (yard: YardFile, near: Near): string[][] => {
  const own = withOwn(yard, near);
  const groups = new Map<string, string[]>();
  for (const order of yard.orders) {
    if (own.has(order.id)) continue;
    const wish = wishOf(order);
    groups.set(wish, [...(groups.get(wish) ?? []), order.id]);
  }
  return [...groups.values()].filter(({ length }) => length > 1);
};

const daysIn = ({ orders }: Near): DayOf => {
  const days = new Map(orders.map(({ id, completesOn }) => [id, dayNumber(completesOn)]));
  return (id) => days.get(id) ?? NEVER;
};

/** Who takes whose place, so that of orders that want the same none is put off, or left out, for another. */
const holdersOf = (yard: YardFile, near: Near, is: DayOf): Holders => {
  const was = daysIn(near);
  const later = (id: string, place: string): number => Math.max(0, is(place) - was(id));
  const holders = new Map<string, string>();
  for (const group of equals(yard, near)) {
    const places = group.toSorted((a, b) => is(a) - is(b));
    const inTurn = group.toSorted((a, b) => was(a) - was(b) || is(a) - is(b));
    const now = group.reduce((sum, id) => sum + later(id, id), 0);
    if (inTurn.reduce((sum, id, turn) => sum + later(id, places[turn]!), 0) >= now) continue;
    for (const [turn, id] of inTurn.entries()) holders.set(places[turn]!, id);
  }
  return holders;
};

/** A way to plan as `plannedInTurn` will have it: what it comes to for each order. */
export const judgedInTurn = (yard: YardFile, one: Candidate, near: Near): Candidate => {
  const { orders } = one.problem.yard;
  const place = new Map(orders.map(({ id }, o) => [id, o]));
  const holders = holdersOf(yard, near, (id) => {
    const day = one.readyOn[place.get(id)!]!;
    return day === NONE ? NEVER : day;
  });
  if (holders.size === 0) return one;
  const [readyOn, daysLate] = [[...one.readyOn], [...one.daysLate]];
  orders.forEach(({ id }, o) => {
    const holder = place.get(holders.get(id) ?? id)!;
    readyOn[holder] = one.readyOn[o]!;
    daysLate[holder] = one.daysLate[o]!;
  });
  return { ...one, readyOn, daysLate };
};

const named = (plan: PlanFile, nameOf: (id: string) => string): PlanFile => {
  const batches = new Set(plan.batches.map(({ id }) => id));
  const forWhom = <T extends { order?: string | undefined }>(list: readonly T[]): T[] =>
    list.map((one) => (one.order === undefined ? one : { ...one, order: nameOf(one.order) }));
  return {
    ...plan,
    ...{ pours: forWhom(plan.pours), strips: forWhom(plan.strips), unplanned: forWhom(plan.unplanned) },
    orders: plan.orders.map((order) => ({ ...order, id: nameOf(order.id) })),
    sticks: plan.sticks.map((stick) => ({
      ...stick,
      cuts: stick.cuts.map((cut) => (batches.has(cut.for) ? cut : { ...cut, for: nameOf(cut.for) })),
    })),
  };
};

const remembered = (memory: PlanMemory, nameOf: (id: string) => string): PlanMemory => ({
  ...memory,
  sequence: memory.sequence.map(nameOf),
  ...(memory.setUp && { setUp: memory.setUp.map(nameOf) }),
  ...(memory.heldBack && { heldBack: memory.heldBack.map((held) => ({ ...held, order: nameOf(held.order) })) }),
  ...(memory.pourFirst && { pourFirst: memory.pourFirst.map(nameOf) }),
});

/**
 * A plan in which no order is later than in the plan that stands, or left out, for the sake of another that wants the same: they
 * change places. What is made when stays as it is.
 *
 * Example: two orders for a planter were ready on the 5th and the 7th, and are on the 9th and the 3rd: then it is the first
 * that is ready on the 3rd, and the other on the 9th.
 */
export const plannedInTurn = (
  yard: YardFile,
  made: { plan: PlanFile; memory: PlanMemory },
  near: Near,
): { plan: PlanFile; memory: PlanMemory } => {
  const holders = holdersOf(yard, near, daysIn(made.plan));
  if (holders.size === 0) return made;
  const nameOf = (id: string): string => holders.get(id) ?? id;
  return { plan: named(made.plan, nameOf), memory: remembered(made.memory, nameOf) };
};
