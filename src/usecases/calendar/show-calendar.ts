import type { Tx } from '../../../db/open.ts';
import { addressWithHash, eventsGiven, saveEventsGiven } from '../../../db/stores/calendar-store.ts';
import type { CalendarEntry, CalendarEvent } from '../../../shared/calendar-entry.ts';
import { buysAhead } from '../buying/trips-ahead.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { type Written, writtenIn } from '../core/own-words.ts';
import { hashOf } from '../core/secret.ts';
import { mapYielding } from '../core/yield-thread.ts';
import { openOrdersOf } from '../orders/open-orders.ts';
import { orderFacts, ordersSeen } from '../orders/order-facts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { turnsOfPlan } from '../turns/turns-of-plan.ts';
import { showMeasures } from '../typed/measures.ts';
import { calendarEntries } from './calendar-entries.ts';
import { eventsAfter } from './calendar-history.ts';

/** The calendar as one address gives it out. */
export interface CalendarModel {
  yardName: string;
  today: string;
  /** What each UID ends in. */
  uidEnding: string;
  events: readonly CalendarEvent[];
  /** The English it is written in. */
  written: Written;
}

const entriesNow = async (context: UseCaseContext) => {
  const { plan, yard, cached } = await currentPlan(context);
  const { system, weekStart } = await showMeasures(context);
  const seen = ordersSeen({ plan, yard }, system, context.now);
  const orders = await mapYielding(await openOrdersOf(context, cached), (order) => orderFacts(order, seen));
  const turns = turnsOfPlan(yard, plan, weekStart);
  const buys = await buysAhead(context, { plan, yard }, system);
  return { yard, entries: calendarEntries({ turns, orders, buys }) };
};

/** What is given out now, and kept where it is not what was given out before. */
const given = async (
  tx: Tx,
  address: number,
  entries: readonly CalendarEntry[],
  moment: { now: string; today: string },
): Promise<CalendarEvent[]> => {
  const before = await eventsGiven(tx, address);
  const events = eventsAfter(before, entries, moment);
  const known = new Set(before);
  const kept = new Set(events.map(({ entry }) => entry.key));
  const changed = events.filter((event) => !known.has(event));
  const gone = before.flatMap(({ entry }) => (kept.has(entry.key) ? [] : [entry.key]));
  await saveEventsGiven(tx, address, { changed, gone });
  return events;
};

/** The calendar for whoever has a secret; null where no address has it, or none any more. */
export const showCalendar = async (context: UseCaseContext, secret: string): Promise<CalendarModel | null> => {
  const hash = await hashOf(secret);
  const address = await context.database.read((tx) => addressWithHash(tx, hash));
  if (!address) return null;
  const { yard, entries } = await entriesNow(context);
  const moment = { now: context.now, today: today(yard.yard.timeZone, context.now) };
  const events = await context.database.write((tx) => given(tx, address.id, entries, moment));
  const written = await writtenIn(context);
  return { yardName: yard.yard.name, today: moment.today, uidEnding: address.uidEnding, events, written };
};
