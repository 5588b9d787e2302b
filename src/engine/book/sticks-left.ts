import type { Material } from '../../../shared/material.ts';
import type { PlanBuy, PlanFile, PlanStick } from '../../../shared/plan.ts';
import { dayNumber, type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { buysOf, type MaterialUse } from '../buy/buys.ts';
import { type Calendar, calendarOf } from '../calendar/calendar.ts';
import { goodsOfLines } from './goods.ts';

/** When what is cut is needed, by batch or order. */
const neededAt = (plan: PlanFile): ReadonlyMap<string, Minute> =>
  new Map([
    ...plan.batches.map(({ id, start }): [string, Minute] => [id, minuteOf(start)]),
    ...plan.orders.map(({ id, packStart, completesAt }): [string, Minute] => [id, minuteOf(packStart ?? completesAt)]),
  ]);

/** Sticks less the cuts that were made, each opened when the first of its other cuts is needed. */
const sticksLeft = (plan: PlanFile, cutFor: string, calendar: Calendar): PlanStick[] => {
  const needed = neededAt(plan);
  return plan.sticks.flatMap((stick) => {
    const cuts = stick.cuts.filter((cut) => cut.for !== cutFor);
    if (cuts.length === 0) return [];
    if (cuts.length === stick.cuts.length) return [stick];
    const first = Math.min(...cuts.map((cut) => needed.get(cut.for) ?? minuteOf(stick.openedAt)));
    return [{ ...stick, cuts, openedAt: calendar.instantText(first) }];
  });
};

/** All that a plan takes of one material: sticks when they are opened, and what is used uncut. */
const usesOf = (plan: PlanFile, yard: YardFile, id: string): MaterialUse[] => {
  const quantityIn = (list: readonly { material: string; quantity: number }[]) =>
    list.reduce((sum, one) => sum + (one.material === id ? one.quantity : 0), 0);
  const perBag = new Map(yard.mixes.map((mix) => [mix.id, quantityIn(mix.perBag)]));
  const perPiece = new Map(yard.castings.map((casting) => [casting.id, quantityIn(casting.perPiece)]));
  const pours = new Map(plan.pours.map((pour) => [pour.id, perPiece.get(pour.casting) ?? 0]));
  const lines = new Map(yard.orders.map((order) => [order.id, order.lines]));
  return [
    ...plan.sticks.flatMap(({ material, openedAt }) =>
      material === id ? [{ at: minuteOf(openedAt), quantity: 1 }] : [],
    ),
    ...plan.batches.map(({ mix, bags, start, pours: own }) => ({
      at: minuteOf(start),
      quantity: bags * (perBag.get(mix) ?? 0) + own.reduce((sum, pour) => sum + (pours.get(pour) ?? 0), 0),
    })),
    ...plan.orders.map(({ id: order, packStart, completesAt }) => ({
      at: minuteOf(packStart ?? completesAt),
      quantity: goodsOfLines(lines.get(order) ?? [], yard).parts.get(id) ?? 0,
    })),
  ].filter(({ quantity }) => quantity > 0);
};

/** Less than this is not missing: sums of fractions are not exact. */
const TOLERANCE = 1e-6;

/** Whether what is there and on its way does until more can be bought. */
const doesUntilBought = (material: Material, uses: MaterialUse[], yard: YardFile, calendar: Calendar): boolean => {
  const now = minuteOf(yard.yard.now);
  const { leadDays } = material;
  const until = leadDays === undefined ? Infinity : calendar.midnightOf(calendar.dayOf(now) + leadDays);
  const changes = [
    ...uses.map(({ at, quantity }) => ({ at, quantity: -quantity })),
    ...yard.incoming.flatMap(({ material: id, on, quantity }) =>
      id === material.id ? [{ at: Math.max(now, calendar.midnightOf(dayNumber(on))), quantity }] : [],
    ),
  ];
  changes.sort((a, b) => a.at - b.at || b.quantity - a.quantity);
  let level = material.onHand;
  return changes.every(({ at, quantity }) => {
    level += quantity;
    return at >= until || level >= -TOLERANCE;
  });
};

/** What to buy of a material by the plan as it is left; null when what is there does not do until then. */
const buysLeft = (material: Material, plan: PlanFile, yard: YardFile, calendar: Calendar): PlanBuy[] | null => {
  const uses = usesOf(plan, yard, material.id);
  if (!doesUntilBought(material, uses, yard, calendar)) return null;
  const incoming = yard.incoming.flatMap(({ material: id, on, quantity }) =>
    id === material.id ? [{ day: dayNumber(on), quantity }] : [],
  );
  return buysOf(material, uses, incoming, minuteOf(yard.yard.now), calendar);
};

/**
 * A plan in which the cuts for one batch or order are made. The book counts a cut stick as a share of one, the plan as a
 * whole one, so what is to be bought of it is worked out again; null when too little is left.
 */
export const withoutCutsFor = (plan: PlanFile, cutFor: string, yard: YardFile): PlanFile | null => {
  const cut = new Set(
    plan.sticks.filter(({ cuts }) => cuts.some((one) => one.for === cutFor)).map(({ material }) => material),
  );
  if (cut.size === 0) return plan;
  const calendar = calendarOf(yard.yard.timeZone);
  const left = { ...plan, sticks: sticksLeft(plan, cutFor, calendar) };
  const buys = yard.materials.map((material) =>
    cut.has(material.id)
      ? buysLeft(material, left, yard, calendar)
      : left.buys.filter(({ material: id }) => id === material.id),
  );
  if (buys.some((own) => own === null)) return null;
  return { ...left, buys: buys.flatMap((own) => own ?? []) };
};
