import { keptLines } from '../../../db/stores/kept-ready-store.ts';
import { wetCuresOfMixes } from '../../../db/stores/mix-wet-cure-store.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import { workRecords } from '../../../db/stores/work-record-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { customersByOrder } from '../core/customers-by-order.ts';
import type { PageHead } from '../core/page-parts.ts';
import { type Offer, offersOf } from '../orders/order-contents.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { type KeptFacts, keptFacts } from './kept-facts.ts';
import { type StrippedSince, strippedSince } from './stripped-since.ts';
import { type WetCureFacts, wetCures } from './wet-cures.ts';

/** Pieces that are fit to go out from the same time, and for the same customer. */
interface PiecesAlike {
  count: number;
  /** Null: they are fit to go out. */
  fitFrom: string | null;
  /** Whom the plan has them for; null: nobody. */
  customer: string | null;
  /** They were set aside for him, so that nobody else gets them. */
  isAside: boolean;
}

/** All pieces of one casting. */
export interface PiecesOfKind {
  casting: string;
  name: string;
  total: number;
  alike: readonly PiecesAlike[];
  /** Moulds that hold one, with the time it comes out by the plan; null: it stays. */
  inMoulds: readonly { mould: string; outAt: string | null }[];
  /** When they came out of their moulds, in the yard's zone; null where that was not recorded of all. */
  since: StrippedSince | null;
  /** How many of them are kept wet, and until when; null where none is. */
  wet: WetCureFacts | null;
}

/** What stands in the yard, piece by piece. */
export interface PiecesModel extends PageHead {
  kinds: readonly PiecesOfKind[];
  /** What is to stand ready for whoever comes. */
  kept: readonly KeptFacts[];
  /** What could. */
  offers: readonly Offer[];
}

/** How many of a lot the plan gives to which order; the rest is for nobody, or for whom it is set aside. */
const dealtOf = (place: number, { count, order }: YardFile['finished'][number], plan: PlanFile) => {
  const dealt = plan.orders.flatMap(({ id, fromFinished = [] }) =>
    fromFinished.filter(({ finished }) => finished === place).map((taken) => ({ order: id, count: taken.count })),
  );
  const left = count - dealt.reduce((sum, taken) => sum + taken.count, 0);
  return [...dealt, ...(left > 0 ? [{ order: order ?? null, count: left }] : [])];
};

/** What stands in the yard and what is in the moulds, by casting, and whom it is for by today's plan. */
export const showPieces = async (context: UseCaseContext): Promise<PiecesModel> => {
  const { plan, yard } = await currentPlan(context);
  const { instantText } = calendarOf(yard.yard.timeZone);
  const customers = customersByOrder(yard);
  const strips = new Map(plan.strips.map(({ mould, stripEnd }) => [mould, stripEnd]));
  const now = minuteOf(context.now);
  const { records, lines, system, wetHours } = await context.database.read(async (tx) => ({
    records: await workRecords(tx),
    lines: await keptLines(tx),
    system: await unitsOfYard(tx),
    wetHours: await wetCuresOfMixes(tx),
  }));
  const wet = wetCures(yard, records, wetHours, now);
  const sinceOf = (casting: string, count: number): StrippedSince | null => {
    const since = strippedSince(records, casting, count);
    return since && { first: instantText(minuteOf(since.first)), last: instantText(minuteOf(since.last)) };
  };
  const alikeOf = (lot: YardFile['finished'][number], place: number): PiecesAlike[] =>
    dealtOf(place, lot, plan).map(({ order, count }) => ({
      count,
      fitFrom: lot.readyAt && minuteOf(lot.readyAt) > now ? instantText(minuteOf(lot.readyAt)) : null,
      customer: order === null ? null : (customers.get(order) ?? `order ${order}`),
      isAside: lot.order !== undefined,
    }));
  return {
    ...{ yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now) },
    kinds: yard.castings.map(({ id, name }) => {
      const lots = yard.finished.flatMap((lot, place) => (lot.casting === id ? [{ lot, place }] : []));
      const total = lots.reduce((sum, { lot }) => sum + lot.count, 0);
      return {
        ...{ casting: id, name, total, since: sinceOf(id, total) },
        wet: wet.find(({ casting }) => casting === id) ?? null,
        alike: lots.flatMap(({ lot, place }) => alikeOf(lot, place)),
        inMoulds: yard.inMould
          .filter(({ casting }) => casting === id)
          .map(({ mould }) => ({ mould, outAt: strips.get(mould) ?? null })),
      };
    }),
    kept: keptFacts(lines, plan, { ...yard, yard: { ...yard.yard, now: context.now } }),
    offers: offersOf(yard, system).filter(({ kind }) => kind !== 'material'),
  };
};
