import { guessesOfYard } from '../../../db/stores/figure-store.ts';
import { orderById, partsOfOrder, type StoredOrder } from '../../../db/stores/order-store.ts';
import { piecesToMend } from '../../../db/stores/piece-to-mend-store.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { Counted, PageHead } from '../core/page-parts.ts';
import { type DrawnKit, drawKits } from '../kits/draw-kits.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { type Guessed, restsOn } from '../plan/rests-on.ts';
import { type SparePlanned, sparesOfPlan } from '../plan/spares-of-plan.ts';
import { showMeasures } from '../typed/measures.ts';
import { type ComingTogether, comingTogether } from './coming-together.ts';
import { type DayToTell, dayToTell } from './day-to-tell.ts';
import { canGoInParts, hasLeftStock } from './open-order.ts';
import { type ContentsLine, contentsOf, type Offer, offersOf } from './order-contents.ts';
import { type OrderFacts, orderFacts, ordersSeen } from './order-facts.ts';
import { parcelsNeeded } from './parcels.ts';
import { type ReadyAgain, readyAgain } from './ready-again.ts';
import { toMendOfLines } from './to-mend-facts.ts';

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
  /** The day that could be promised, where none is; null where that is just the day by plan, 'coming' while it is worked out. */
  tell: DayToTell | 'coming' | null;
  /** Pieces to spare that the plan has, and that it could get. */
  spares: readonly SparePlanned[];
  /** As how many orders it could be packed, each in one session; null where it is packed in one, or cannot be split. */
  parcels: number | null;
  /** What of it went out before, the first first. */
  parts: readonly PartGone[];
  /** What of it can go out before the rest; nothing where it is packed, or is one thing. */
  partable: readonly PartableLine[];
  /** What it could be given if it were taken up again; null where that cannot be. */
  again: ReadyAgain | null;
}

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

/** The order of a number; null when there is none. So long is waited for the day to tell; left out: until it is there. */
export const showOrder = async (
  context: UseCaseContext,
  id: string,
  patienceMs?: number,
): Promise<OrderModel | null> => {
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
    tell:
      planned && stored.promisedOn === null
        ? await dayToTell(context, { id, completesAt: planned.completesAt, patienceMs })
        : null,
    spares: planned ? (await sparesOfPlan(context, { plan, yard })).filter(({ orders }) => orders.includes(id)) : [],
    parcels: mayBeSplit ? (parcelsNeeded(stored.lines, yard)?.length ?? null) : null,
    parts: partsGone(await context.database.read((tx) => partsOfOrder(tx, id)), offers),
    partable: partableOf(stored, offers),
    again: await readyAgain(context, { yard }, stored),
  };
};
