import { guessesOfYard } from '../../../db/stores/figure-store.ts';
import { orderById, partsOfOrder, type StoredOrder } from '../../../db/stores/order-store.ts';
import { piecesToMend } from '../../../db/stores/piece-to-mend-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { Counted, PageHead } from '../core/page-parts.ts';
import { type DrawnKit, drawKits } from '../kits/draw-kits.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { type Guessed, restsOn } from '../plan/rests-on.ts';
import { showMeasures } from '../typed/measures.ts';
import { type DayToTell, dayToTell } from './day-to-tell.ts';
import { canGoInParts, hasLeftStock } from './open-order.ts';
import { type ContentsLine, contentsOf, type Offer, offersOf } from './order-contents.ts';
import { type OrderFacts, orderFacts, ordersSeen } from './order-facts.ts';
import { parcelsNeeded } from './parcels.ts';
import { type ReadyAgain, readyAgain } from './ready-again.ts';
import { toMendOfLines } from './to-mend-facts.ts';

/** How an order comes together by the plan. */
interface ComingTogether {
  /** Finished pieces that are taken for it. */
  fromYard: number;
  /** Moulds with pieces in them that are for it. */
  inMoulds: readonly string[];
  /** What is poured for it, day by day. */
  poured: readonly { date: string; pieces: readonly Counted[] }[];
}

/** A part of the order that went out. */
interface PartGone {
  id: string;
  on: string;
  contents: readonly ContentsLine[];
}

/** A line of which some can go out: its place in the order, and how many there are. */
interface PartableLine {
  place: number;
  name: string;
  count: number;
}

/** One order with its date by today's plan. */
export interface OrderModel extends PageHead {
  order: OrderFacts;
  together: ComingTogether;
  /** Such pieces as it needs, kept aside: they do not count for it. */
  toMend: readonly Counted[];
  /** What of it is still guessed; nothing where it is packed. */
  restsOn: readonly Guessed[];
  drawings: readonly DrawnKit[];
  /** The day that could be promised, where none is; null where that is just the day by plan. */
  tell: DayToTell | null;
  /** As how many orders it could be packed, each in one session; null where it is packed in one, or cannot be split. */
  parcels: number | null;
  /** What of it went out before, the first first. */
  parts: readonly PartGone[];
  /** What of it can go out before the rest; nothing where it is packed, or is one thing. */
  partable: readonly PartableLine[];
  /** What it could be given if it were taken up again; null where that cannot be. */
  again: ReadyAgain | null;
}

/** Pieces taken from the yard, pieces in moulds, and pieces poured day by day. */
const comingTogether = (id: string, plan: PlanFile, yard: YardFile): ComingTogether => {
  const calendar = calendarOf(yard.yard.timeZone);
  const names = new Map(yard.castings.map((casting) => [casting.id, casting.name]));
  const poured = new Map<string, Map<string, number>>();
  for (const pour of plan.pours.filter(({ order }) => order === id)) {
    const day = calendar.instantText(minuteOf(pour.fillStart)).slice(0, 10);
    const pieces = poured.get(day) ?? poured.set(day, new Map()).get(day)!;
    const name = names.get(pour.casting) ?? pour.casting;
    pieces.set(name, (pieces.get(name) ?? 0) + 1);
  }
  const fromYard = plan.orders.find((order) => order.id === id)?.fromFinished ?? [];
  return {
    fromYard: fromYard.reduce((sum, { count }) => sum + count, 0),
    inMoulds: plan.strips.filter(({ order }) => order === id).map(({ mould }) => mould),
    poured: [...poured]
      .sort(([a], [b]) => a.localeCompare(b))
      .map(([date, pieces]) => ({ date, pieces: [...pieces].map(([name, count]) => ({ name, count })) })),
  };
};

const partsGone = (parts: readonly StoredOrder[], offers: readonly Offer[]): PartGone[] =>
  parts.flatMap(({ id, handedOverOn, lines }) =>
    handedOverOn === null ? [] : [{ id, on: handedOverOn, contents: contentsOf(lines, offers) }],
  );

/** Kits and single pieces; parts that are bought go with the rest. */
const partableOf = (order: StoredOrder, offers: readonly Offer[]): PartableLine[] => {
  if (!canGoInParts(order)) return [];
  return contentsOf(order.lines, offers).flatMap(({ name, quantity }, place) =>
    order.lines[place]?.material === undefined ? [{ place, name, count: quantity }] : [],
  );
};

/** The order of a number; null when there is none. */
export const showOrder = async (context: UseCaseContext, id: string): Promise<OrderModel | null> => {
  const { plan, yard } = await currentPlan(context);
  const stored = await context.database.read((tx) => orderById(tx, id));
  if (!stored) return null;
  const { system } = await showMeasures(context);
  const offers = offersOf(yard, system);
  const planned = plan.orders.find((order) => order.id === id);
  const isTooLong = plan.unplanned.some(({ order }) => order === id) || planned?.packs !== undefined;
  const mayBeSplit = stored.status === 'open' && isTooLong && !hasLeftStock(stored);
  return {
    yardName: yard.yard.name,
    today: today(yard.yard.timeZone, context.now),
    order: orderFacts(stored, ordersSeen({ plan, yard }, system, context.now)),
    together: comingTogether(id, plan, yard),
    toMend: toMendOfLines(await context.database.read(piecesToMend), stored.lines, yard),
    restsOn: hasLeftStock(stored) ? [] : restsOn(yard, stored.lines, await context.database.read(guessesOfYard)),
    drawings: await drawKits(context, yard, stored.lines),
    tell: planned && stored.promisedOn === null ? dayToTell(yard, planned.completesAt) : null,
    parcels: mayBeSplit ? (parcelsNeeded(stored.lines, yard)?.length ?? null) : null,
    parts: partsGone(await context.database.read((tx) => partsOfOrder(tx, id)), offers),
    partable: partableOf(stored, offers),
    again: await readyAgain(context, { yard }, stored),
  };
};
