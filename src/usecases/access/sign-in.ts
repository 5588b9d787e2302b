import {
  addDoorKey,
  addPerson,
  doorKeyWithHash,
  dropOldDoorKeys,
  endDoorKey,
  endDoorKeys,
  personNamed,
  removePasskeys,
  setPasswordHash,
} from '../../../db/stores/access-store.ts';
import type { Person } from '../../../shared/person.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { hashOf, newSecret } from '../core/secret.ts';
import { whoTyped } from '../typed/who-form.ts';
import { hashPassword, isPassword, passwordTyped } from './password.ts';

/** What a use case of the door needs. */
export type Moment = Pick<UseCaseContext, 'database' | 'now'>;

const DAY_MS = 86_400_000;
/** A browser stays signed in for so long, however much it is used. */
export const SESSION_DAYS = 30;
const INVITATION_DAYS = 7;

const daysAfter = (now: string, days: number): string => new Date(Date.parse(now) + days * DAY_MS).toISOString();
const isOver = (until: string, now: string): boolean => Date.parse(until) <= Date.parse(now);

/** The same for a name that is not there, a wrong password, and one who never followed the invitation. */
const WRONG = 'The name or the password is not right.';

/** A session for somebody: its secret is given here and never again. */
export const sessionFor = async ({ database, now }: Moment, person: number): Promise<string> => {
  const secret = newSecret();
  const entry = {
    person,
    kind: 'session' as const,
    secretHash: await hashOf(secret),
    until: daysAfter(now, SESSION_DAYS),
  };
  await database.write(async (tx) => {
    await dropOldDoorKeys(tx, new Date(now).toISOString());
    await addDoorKey(tx, entry);
  });
  return secret;
};

/** Signs somebody in by name and password: the secret of the session. */
export const signIn = async (moment: Moment, name: string, password: string): Promise<Outcome<string>> => {
  const person = await moment.database.read((tx) => personNamed(tx, name));
  if (!(await isPassword(password, person?.passwordHash ?? null)) || !person) return refuse('password', WRONG);
  return done(await sessionFor(moment, person.id));
};

/** Who is signed in by a secret; null where nobody is, or no longer. */
export const signedInBy = async ({ database, now }: Moment, secret: string): Promise<Person | null> => {
  const hash = await hashOf(secret);
  const found = await database.read((tx) => doorKeyWithHash(tx, 'session', hash));
  if (!found || isOver(found.until, now)) return null;
  const { id, name, role } = found.person;
  return { id, name, role };
};

/** Ends one session. */
export const signOut = async ({ database }: Moment, secret: string): Promise<void> => {
  const hash = await hashOf(secret);
  await database.write((tx) => endDoorKey(tx, hash));
};

/** Ends every session of somebody, wherever it is, and every invitation. */
export const signOutEverywhere = ({ database }: Moment, person: number): Promise<void> =>
  database.write((tx) => endDoorKeys(tx, person));

/** Makes an owner, or gives one that is there another password; every session and passkey of before is over then. */
export const makeOwner = async (
  { database, now }: Moment,
  typed: string,
  password: string,
): Promise<Outcome<string>> => {
  const [name, fits] = [whoTyped(typed), passwordTyped(password)];
  if (!name.ok) return name;
  if (name.value === null) return refuse('name', 'What is the owner called?');
  if (!fits.ok) return fits;
  const [owner, passwordHash] = [name.value, await hashPassword(fits.value)];
  return database.write(async (tx) => {
    const before = await personNamed(tx, owner);
    if (before && before.role !== 'owner') return refuse('name', `${owner} is there already, and is no owner.`);
    if (before) await endDoorKeys(tx, before.id);
    if (before) await removePasskeys(tx, before.id);
    if (before) await setPasswordHash(tx, before.id, passwordHash);
    else await addPerson(tx, { name: owner, role: 'owner', passwordHash, madeAt: now });
    return done(owner);
  });
};

/** An invitation for somebody who is there: its secret, good for a week and once. Those of before are over. */
export const inviteAgain = async ({ database, now }: Moment, person: number): Promise<string> => {
  const secret = newSecret();
  const secretHash = await hashOf(secret);
  await database.write(async (tx) => {
    await endDoorKeys(tx, person);
    await addDoorKey(tx, { person, kind: 'invitation', secretHash, until: daysAfter(now, INVITATION_DAYS) });
  });
  return secret;
};

/** Whom an invitation is for; null where it was followed already, or is too old, or never was. */
export const invitedBy = async ({ database, now }: Moment, secret: string): Promise<Person | null> => {
  const hash = await hashOf(secret);
  const found = await database.read((tx) => doorKeyWithHash(tx, 'invitation', hash));
  return found && !isOver(found.until, now) ? found.person : null;
};

/** Follows an invitation: a password is chosen, and the secret of a session given; passkeys of before are over. Of two at once one does. */
export const followInvitation = async (moment: Moment, secret: string, password: string): Promise<Outcome<string>> => {
  const fits = passwordTyped(password);
  if (!fits.ok) return fits;
  const [hash, passwordHash] = [await hashOf(secret), await hashPassword(fits.value)];
  const person = await moment.database.write(async (tx) => {
    const found = await doorKeyWithHash(tx, 'invitation', hash);
    if (!found || isOver(found.until, moment.now)) return null;
    await setPasswordHash(tx, found.person.id, passwordHash);
    await endDoorKeys(tx, found.person.id);
    await removePasskeys(tx, found.person.id);
    return found.person.id;
  });
  return person === null ? refuse('password', 'This invitation is over.') : done(await sessionFor(moment, person));
};
