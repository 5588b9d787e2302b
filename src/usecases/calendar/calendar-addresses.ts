import { addCalendarAddress, calendarAddressesOf, removeCalendarAddress } from '../../../db/stores/calendar-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { LONGEST_NAME, tooLongText } from '../../../shared/text-limits.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { hashOf, newSecret } from '../core/secret.ts';

/** Who reads the calendar. */
export interface CalendarAddressesModel extends PageHead {
  addresses: readonly { id: number; name: string; madeOn: string }[];
}

/** The addresses at which the calendar is read; what they are is known to nobody but those who have them. */
export const showCalendarAddresses = async ({ database, now }: UseCaseContext): Promise<CalendarAddressesModel> => {
  const { yard, addresses } = await database.read(async (tx) => ({
    yard: (await loadYardFile(tx, now)).yard,
    addresses: await calendarAddressesOf(tx),
  }));
  return {
    yardName: yard.name,
    today: today(yard.timeZone, now),
    addresses: addresses.map(({ id, name, madeAt }) => ({ id, name, madeOn: today(yard.timeZone, madeAt) })),
  };
};

/** Makes a secret address for somebody. The secret is given here and never again. */
export const makeCalendarAddress = async (
  { database, now }: UseCaseContext,
  name: string,
): Promise<Outcome<{ secret: string }>> => {
  if (name === '') return refuse('name', 'Say who or what reads it, such as My phone.');
  if (name.length > LONGEST_NAME) return refuse('name', tooLongText(LONGEST_NAME));
  const secret = newSecret();
  const address = { name, secretHash: await hashOf(secret), uidEnding: crypto.randomUUID(), madeAt: now };
  await database.write((tx) => addCalendarAddress(tx, address));
  return done({ secret });
};

/** Withdraws an address: from then on there is nothing at it. */
export const withdrawCalendarAddress = ({ database }: UseCaseContext, id: number): Promise<void> =>
  database.write((tx) => removeCalendarAddress(tx, id));
