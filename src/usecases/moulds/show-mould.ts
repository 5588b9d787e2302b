import { mouldsInOrder } from '../../../db/stores/mould-store.ts';
import { pastOrders } from '../../../db/stores/order-store.ts';
import { workRecords } from '../../../db/stores/work-record-store.ts';
import { minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { poursOfMould } from '../plan/pours-of-mould.ts';
import { type MouldFacts, mouldFacts } from './mould-facts.ts';
import { type HistoryEntry, type MouldHistory, mouldHistory } from './mould-history.ts';

/** More than these nobody reads on a phone in a yard. */
const COMING_SHOWN = 6;
const PAST_SHOWN = 60;
const NO_LIMIT = -1;

/** A pour of the plan. */
interface ComingPour {
  at: string;
  piece: string;
  /** Null: for stock. */
  customer: string | null;
}

/** An entry as the page has it: instants in the yard's zone, things by their names. */
export type ShownEntry = HistoryEntry & { piece: string | null; customer: string | null };

/** All about one mould: how it is, what comes, and what it has been through. */
export interface MouldModel extends PageHead {
  mould: MouldFacts;
  coming: readonly ComingPour[];
  history: Omit<MouldHistory, 'entries'>;
  /** The newest first, so many of them. */
  entries: readonly ShownEntry[];
  entriesInAll: number;
}

const ordersByName = async ({ database }: UseCaseContext): Promise<Map<string, string | null>> =>
  new Map(
    (await database.read((tx) => pastOrders(tx, NO_LIMIT))).map(({ id, customer }) => [id, customer?.name ?? null]),
  );

/** One mould with its plan and its history; null where there is none of that name. */
export const showMould = async (context: UseCaseContext, id: string): Promise<MouldModel | null> => {
  const { plan, yard } = await currentPlan(context);
  const { stored, records } = await context.database.read(async (tx) => ({
    stored: (await mouldsInOrder(tx)).find((mould) => mould.id === id),
    records: await workRecords(tx),
  }));
  if (!stored) return null;
  const calendar = calendarOf(yard.yard.timeZone);
  const customers = new Map(yard.orders.map((order) => [order.id, order.customer ?? `order ${order.id}`]));
  const castings = new Map(yard.castings.map(({ id: casting, name }) => [casting, name]));
  const past = await ordersByName(context);
  const customerOf = (order: string): string => customers.get(order) ?? past.get(order) ?? `order ${order}`;
  const { entries, ...history } = mouldHistory(records, id, context.now);
  return {
    ...{ yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now) },
    mould: mouldFacts(stored, { plan, calendar, customers, castings, now: minuteOf(context.now) }),
    coming: poursOfMould(plan, id)
      .slice(0, COMING_SHOWN)
      .map(({ fillStart, casting, order }) => ({
        ...{ at: fillStart, piece: castings.get(casting) ?? casting },
        customer: order === undefined ? null : customerOf(order),
      })),
    history,
    entries: entries.slice(0, PAST_SHOWN).map((entry) => ({
      ...entry,
      at: calendar.instantText(minuteOf(entry.at)),
      piece: 'casting' in entry ? (castings.get(entry.casting) ?? entry.casting) : null,
      customer: 'order' in entry && entry.order !== null ? customerOf(entry.order) : null,
    })),
    entriesInAll: entries.length,
  };
};
