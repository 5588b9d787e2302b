import { sizesOfCastings } from '../../../db/stores/casting-size-store.ts';
import { mouldsInOrder } from '../../../db/stores/mould-store.ts';
import { customersOfOrders } from '../../../db/stores/order-store.ts';
import { workRecords } from '../../../db/stores/work-record-store.ts';
import { type MouldPart, setOf } from '../../../shared/mould-part.ts';
import { minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { customersByOrder } from '../core/customers-by-order.ts';
import type { PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { poursOfMould } from '../plan/pours-of-mould.ts';
import { lengthsOf, type MouldFacts, mouldFacts } from './mould-facts.ts';
import { type HistoryEntry, type MouldHistory, mouldHistory, turnsSinceService } from './mould-history.ts';

/** More than these nobody reads on a phone in a yard. */
const COMING_SHOWN = 6;
const PAST_SHOWN = 60;

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
  /** All parts of its set. */
  set: readonly MouldPart[];
  coming: readonly ComingPour[];
  history: Omit<MouldHistory, 'entries'>;
  /** The newest first, so many of them. */
  entries: readonly ShownEntry[];
  entriesInAll: number;
}

const orderOf = (entry: HistoryEntry): string | null => ('order' in entry ? entry.order : null);

/** One mould with its plan and its history; null where there is none of that name. */
export const showMould = async (context: UseCaseContext, id: string): Promise<MouldModel | null> => {
  const { plan, yard } = await currentPlan(context);
  const found = await context.database.read(async (tx) => {
    const stored = (await mouldsInOrder(tx)).find((mould) => mould.id === id);
    if (!stored) return null;
    const records = await workRecords(tx);
    const lengths = lengthsOf(await sizesOfCastings(tx));
    const { entries, ...history } = mouldHistory(records, id, context.now);
    const shown = entries.slice(0, PAST_SHOWN);
    const names = await customersOfOrders(tx, [...new Set(shown.flatMap((entry) => orderOf(entry) ?? []))]);
    return { stored, lengths, history, shown, names, entriesInAll: entries.length, turns: turnsSinceService(records) };
  });
  if (!found) return null;
  const { stored, lengths, history, shown, names, entriesInAll, turns } = found;
  const calendar = calendarOf(yard.yard.timeZone);
  const customers = customersByOrder(yard);
  const castings = new Map(yard.castings.map(({ id: casting, name }) => [casting, name]));
  return {
    ...{ yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now) },
    mould: mouldFacts(stored, { plan, calendar, customers, castings, lengths, turns, now: minuteOf(context.now) }),
    set: setOf(stored.parts ?? []),
    coming: poursOfMould(plan, id)
      .slice(0, COMING_SHOWN)
      .map(({ fillStart, casting, order }) => ({
        ...{ at: fillStart, piece: castings.get(casting) ?? casting },
        customer: order === undefined ? null : (customers.get(order) ?? `order ${order}`),
      })),
    history,
    entries: shown.map((entry) => ({
      ...entry,
      at: calendar.instantText(minuteOf(entry.at)),
      piece: 'casting' in entry ? (castings.get(entry.casting) ?? entry.casting) : null,
      customer: orderOf(entry) === null ? null : (names.get(orderOf(entry)!) ?? `order ${orderOf(entry)}`),
    })),
    entriesInAll,
  };
};
