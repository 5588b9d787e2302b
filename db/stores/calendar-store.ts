import { and, asc, eq, inArray } from 'drizzle-orm';
import type { CalendarEvent } from '../../shared/calendar-entry.ts';
import { calendarAddresses, calendarEvents } from '../tables/calendar.ts';
import type { Tx } from '../transaction.ts';

/** An address as it is kept: without its secret. */
export type StoredAddress = typeof calendarAddresses.$inferSelect;

/** The addresses that were made and not withdrawn, the oldest first. */
export const calendarAddressesOf = (tx: Tx): Promise<StoredAddress[]> =>
  tx.select().from(calendarAddresses).orderBy(asc(calendarAddresses.id));

/** Keeps a new address. Throws where another one has its secret. */
export const addCalendarAddress = async (tx: Tx, address: Omit<StoredAddress, 'id'>): Promise<void> => {
  await tx.insert(calendarAddresses).values(address);
};

/** The address with this SHA-256 of its secret; null where there is none, or none any more. */
export const addressWithHash = async (tx: Tx, secretHash: string): Promise<StoredAddress | null> =>
  (await tx.select().from(calendarAddresses).where(eq(calendarAddresses.secretHash, secretHash)))[0] ?? null;

/** Withdraws an address with all it gave out; one that is not there is withdrawn already. */
export const removeCalendarAddress = async (tx: Tx, id: number): Promise<void> => {
  await tx.delete(calendarEvents).where(eq(calendarEvents.address, id));
  await tx.delete(calendarAddresses).where(eq(calendarAddresses.id, id));
};

/** What an address gave out last, by key. */
export const eventsGiven = async (tx: Tx, address: number): Promise<CalendarEvent[]> => {
  const rows = await tx
    .select({ event: calendarEvents.event })
    .from(calendarEvents)
    .where(eq(calendarEvents.address, address))
    .orderBy(asc(calendarEvents.key));
  return rows.map(({ event }) => event);
};

/** Puts changed events in the place of those with their keys, and takes out those that are too old. */
export const saveEventsGiven = async (
  tx: Tx,
  address: number,
  { changed, gone }: { changed: readonly CalendarEvent[]; gone: readonly string[] },
): Promise<void> => {
  for (const event of changed)
    await tx
      .insert(calendarEvents)
      .values({ address, key: event.entry.key, event })
      .onConflictDoUpdate({ target: [calendarEvents.address, calendarEvents.key], set: { event } });
  if (gone.length > 0)
    await tx
      .delete(calendarEvents)
      .where(and(eq(calendarEvents.address, address), inArray(calendarEvents.key, [...gone])));
};
