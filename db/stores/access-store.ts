import { and, asc, eq, lte } from 'drizzle-orm';
import { apiTokens, doorKeys, passkeys, people } from '../tables/access.ts';
import type { Tx } from '../transaction.ts';

/** Somebody who may come in; without a password until the invitation was followed. */
export type StoredPerson = typeof people.$inferSelect;
/** What a secret opens: a session of a browser, or an invitation. */
export type StoredDoorKey = typeof doorKeys.$inferSelect;

/** Everybody who may come in, the first made first. */
export const everybody = (tx: Tx): Promise<StoredPerson[]> => tx.select().from(people).orderBy(asc(people.id));

/** The person of a name, written just so; null where there is none. */
export const personNamed = async (tx: Tx, name: string): Promise<StoredPerson | null> =>
  (await tx.select().from(people).where(eq(people.name, name)))[0] ?? null;

/** Adds somebody; the id. Throws where the name is taken. */
export const addPerson = async (tx: Tx, person: Omit<StoredPerson, 'id'>): Promise<number> => {
  const [added] = await tx.insert(people).values(person).returning({ id: people.id });
  if (!added) throw new Error('A person was not added.');
  return added.id;
};

/** Puts another password in the place of somebody's, of whom there may be none. */
export const setPasswordHash = async (tx: Tx, id: number, passwordHash: string): Promise<void> => {
  await tx.update(people).set({ passwordHash }).where(eq(people.id, id));
};

/** Takes somebody away, with every session, invitation and passkey. */
export const removePerson = async (tx: Tx, id: number): Promise<void> => {
  await endDoorKeys(tx, id);
  await removePasskeys(tx, id);
  await tx.delete(people).where(eq(people.id, id));
};

/** Keeps a session or an invitation. */
export const addDoorKey = async (tx: Tx, entry: Omit<StoredDoorKey, 'id'>): Promise<void> => {
  await tx.insert(doorKeys).values(entry);
};

/** Whom the secret of this SHA-256 lets in, and until when; null where it lets nobody in. */
export const doorKeyWithHash = async (
  tx: Tx,
  kind: StoredDoorKey['kind'],
  secretHash: string,
): Promise<{ person: StoredPerson; until: string } | null> => {
  const [row] = await tx
    .select({ person: people, until: doorKeys.until })
    .from(doorKeys)
    .innerJoin(people, eq(doorKeys.person, people.id))
    .where(and(eq(doorKeys.secretHash, secretHash), eq(doorKeys.kind, kind)));
  return row ?? null;
};

/** Ends what one secret opens; ended already, nothing. */
export const endDoorKey = async (tx: Tx, secretHash: string): Promise<void> => {
  await tx.delete(doorKeys).where(eq(doorKeys.secretHash, secretHash));
};

/** Ends all that lets somebody in, in every browser, invitations too. */
export const endDoorKeys = async (tx: Tx, person: number): Promise<void> => {
  await tx.delete(doorKeys).where(eq(doorKeys.person, person));
};

/** Takes out what ran out by an instant in UTC. */
export const dropOldDoorKeys = async (tx: Tx, now: string): Promise<void> => {
  await tx.delete(doorKeys).where(lte(doorKeys.until, now));
};

/** A token as it is kept: without its secret. */
type StoredToken = typeof apiTokens.$inferSelect;

/** The tokens that were made and not withdrawn, the oldest first. */
export const allApiTokens = (tx: Tx): Promise<StoredToken[]> => tx.select().from(apiTokens).orderBy(asc(apiTokens.id));

/** Keeps a new token. Throws where another one has its secret. */
export const addApiToken = async (tx: Tx, token: Omit<StoredToken, 'id'>): Promise<void> => {
  await tx.insert(apiTokens).values(token);
};

/** The token with this SHA-256 of its secret; null where there is none, or none any more. */
export const apiTokenWithHash = async (tx: Tx, secretHash: string): Promise<StoredToken | null> =>
  (await tx.select().from(apiTokens).where(eq(apiTokens.secretHash, secretHash)))[0] ?? null;

/** Withdraws a token; one that is not there is withdrawn already. */
export const removeApiToken = async (tx: Tx, id: number): Promise<void> => {
  await tx.delete(apiTokens).where(eq(apiTokens.id, id));
};

/** A passkey as it is kept: its public half. */
export type StoredPasskey = typeof passkeys.$inferSelect;

/** The passkeys of somebody, the oldest first. */
export const passkeysOf = (tx: Tx, person: number): Promise<StoredPasskey[]> =>
  tx.select().from(passkeys).where(eq(passkeys.person, person)).orderBy(asc(passkeys.id));

/** Keeps a new passkey. Throws where it is kept already, for whomever. */
export const addPasskey = async (tx: Tx, passkey: Omit<StoredPasskey, 'id'>): Promise<void> => {
  await tx.insert(passkeys).values(passkey);
};

/** The passkey that a device calls so, in base64url; null where there is none, or none any more. */
export const passkeyOfCredential = async (tx: Tx, credential: string): Promise<StoredPasskey | null> =>
  (await tx.select().from(passkeys).where(eq(passkeys.credential, credential)))[0] ?? null;

/** How often a passkey was used by now, as its device counts. */
export const countPasskey = async (tx: Tx, id: number, counter: number): Promise<void> => {
  await tx.update(passkeys).set({ counter }).where(eq(passkeys.id, id));
};

/** Takes one passkey of somebody away; of somebody else, or not there, nothing. */
export const removePasskey = async (tx: Tx, person: number, id: number): Promise<void> => {
  await tx.delete(passkeys).where(and(eq(passkeys.person, person), eq(passkeys.id, id)));
};

/** Takes all passkeys of somebody away. */
export const removePasskeys = async (tx: Tx, person: number): Promise<void> => {
  await tx.delete(passkeys).where(eq(passkeys.person, person));
};
