import type { Material } from '../../../shared/material.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { type DayNumber, dayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Calendar, calendarOf } from '../calendar/calendar.ts';
import { countedOnHand } from '../cut/offcuts.ts';
import { buysOf } from './buys.ts';
import type { MaterialUse } from './material-flow.ts';
import { onItsWay } from './there-at.ts';
import type { PackNeeded } from './trip-windows.ts';

const TOLERANCE = 1e-6;

/** What is bought, and what is on its way, as packs are counted by. */
interface BuyingPlanned {
  yard: Pick<YardFile, 'yard' | 'suppliers' | 'incoming'>;
  plan: Pick<PlanFile, 'buys'>;
}

/** One entry for each pack, in order. */
const packByPack = <T>(buys: readonly { quantity: number }[], pack: number, of: (index: number) => T): T[] =>
  buys.flatMap(({ quantity }, i) => Array.from({ length: Math.round(quantity / pack) }, () => of(i)));

/** What a plan buys of a material, in the order in which it comes. */
const boughtOf = ({ buys }: Pick<PlanFile, 'buys'>, { id }: Material): PlanFile['buys'] =>
  buys.filter((buy) => buy.material === id).sort((a, b) => a.arrivesOn.localeCompare(b.arrivesOn));

/** The days on which packs are needed, less any day in hand; as the plan has them come where it has none in hand and shops are always open. */
const neededDays = (
  material: Material,
  { yard, plan }: BuyingPlanned,
  uses: readonly MaterialUse[],
  calendar: Calendar,
): DayNumber[] => {
  const coming = onItsWay(yard, material.id);
  const lastDays = buysOf(material, [...uses], coming, minuteOf(yard.yard.now), calendar, {
    deliveredBy: yard.yard.deliveredBy,
  });
  const bought = boughtOf(plan, material);
  const needed = packByPack(lastDays, material.pack, (i) => dayNumber(lastDays[i]!.arrivesOn));
  return packByPack(bought, material.pack, (i) => dayNumber(bought[i]!.arrivesOn)).map((day, k) =>
    Math.max(day, needed[k] ?? day + yard.yard.deliveryDaysInHand),
  );
};

/** The day of the last use of what comes as the units from one number to another, the first in first out. */
const lastUseOf = (sums: readonly { day: DayNumber; sum: number }[], from: number, to: number): DayNumber | null => {
  const until = sums.find(({ sum }) => sum >= to - TOLERANCE);
  if (until) return until.day;
  const last = sums.at(-1);
  return last && last.sum > from + TOLERANCE ? last.day : null;
};

/**
 * The packs of a material that a plan buys, one by one: when each comes by the plan, when it is needed at the latest, and when
 * the last of it is used, the oldest being used first.
 *
 * Example: one bag there, packs of one, days in hand 2; bags used on days 10 and 14: the pack bought comes by day 12, is
 * needed and used up on day 14.
 */
export const packsNeeded = (material: Material, planned: BuyingPlanned, uses: readonly MaterialUse[]): PackNeeded[] => {
  const { yard, plan } = planned;
  const calendar = calendarOf(yard.yard.timeZone);
  const bought = boughtOf(plan, material);
  const comes = packByPack(bought, material.pack, (i) => dayNumber(bought[i]!.arrivesOn));
  if (comes.length === 0) return [];
  const hasInHand = yard.yard.deliveryDaysInHand > 0 && (material.leadDays ?? 0) > 0;
  const hasDays = (yard.suppliers ?? []).some(({ name }) => name === material.supplier);
  const needed = hasInHand || hasDays ? neededDays(material, planned, uses, calendar) : comes;
  let sum = 0;
  const sums = uses.map(({ at, quantity }) => {
    sum += quantity;
    return { day: calendar.dayOf(at), sum };
  });
  const coming = onItsWay(yard, material.id);
  const there = coming.reduce((all, { quantity }) => all + quantity, countedOnHand(material));
  return comes.map((comesBy, k) => {
    const from = there + k * material.pack;
    return { comesBy, neededOn: needed[k]!, lastUse: lastUseOf(sums, from, from + material.pack) };
  });
};
