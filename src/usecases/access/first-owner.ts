import type { Tx } from '../../../db/open.ts';
import { addPerson, endDoorKeys, everybody, personNamed, setPasswordHash } from '../../../db/stores/access-store.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import { hashOf } from '../core/secret.ts';
import { whoTyped } from '../typed/who-form.ts';
import { hashPassword, passwordTyped } from './password.ts';
import { type Moment, sessionFor } from './sign-in.ts';

/** What is kept of the code that was shown where the program was started. */
export interface FirstCode {
  hash: string;
  until: string;
}

const GOOD_FOR_MINUTES = 30;

/** Digits and letters of which none is taken for another one (Crockford's base 32): 60 bits in twelve of them. */
const SIGNS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const LENGTH = 12;

/** A code as it was read off a screen: "4ktm 9q2x-7hwd" is "4KTM9Q2X7HWD", an O a nought, an I or L a one. */
const codeTyped = (text: string): string =>
  text
    .toUpperCase()
    .replace(/[^0-9A-Z]/g, '')
    .replaceAll('O', '0')
    .replace(/[IL]/g, '1');

/** A code for the first owner, to be shown once where the program was started, and what is kept of it. */
export const newFirstCode = async (now: string): Promise<{ code: string; kept: FirstCode }> => {
  const signs = [...crypto.getRandomValues(new Uint8Array(LENGTH))].map((byte) => SIGNS[byte % SIGNS.length]).join('');
  const until = new Date(Date.parse(now) + GOOD_FOR_MINUTES * 60_000).toISOString();
  return { code: signs.replace(/(.{4})(?=.)/g, '$1-'), kept: { hash: await hashOf(signs), until } };
};

const ownerIn = async (tx: Tx): Promise<boolean> =>
  (await everybody(tx)).some(({ role, passwordHash }) => role === 'owner' && passwordHash !== null);

/** True where somebody may decide who comes in. */
export const hasOwner = ({ database }: Pick<Moment, 'database'>): Promise<boolean> => database.read(ownerIn);

interface Typed {
  code: string;
  name: string;
  password: string;
}

/** Whether it is the code, and still good; nothing is said of how much of it was right. */
const isFirstCode = async (code: string, { hash, until }: FirstCode, now: string): Promise<Outcome<null>> => {
  if (Date.parse(until) <= Date.parse(now))
    return refuse('code', 'The code is over. Start Mould Rota again: it shows another one.');
  return (await hashOf(codeTyped(code))) === hash ? done(null) : refuse('code', 'That is not the code.');
};

const firstOwner = async (tx: Tx, name: string, passwordHash: string, madeAt: string): Promise<number | null> => {
  if (await ownerIn(tx)) return null;
  const invited = await personNamed(tx, name);
  if (invited && invited.role !== 'owner') return null;
  if (!invited) return addPerson(tx, { name, role: 'owner', passwordHash, madeAt });
  await setPasswordHash(tx, invited.id, passwordHash);
  // Whoever still has the invitation could put another password in the place of this one.
  await endDoorKeys(tx, invited.id);
  return invited.id;
};

/** Makes whoever has the code the first owner: the secret of a session. Of two at once one is; it does nothing once there is one. */
export const becomeFirstOwner = async (
  moment: Moment,
  kept: FirstCode,
  { code, name: typed, password }: Typed,
): Promise<Outcome<string>> => {
  const right = await isFirstCode(code, kept, moment.now);
  if (!right.ok) return right;
  const [name, fits] = [whoTyped(typed), passwordTyped(password)];
  if (!name.ok) return name;
  if (name.value === null) return refuse('name', 'What are you called? A first name will do.');
  if (!fits.ok) return fits;
  const [owner, passwordHash] = [name.value, await hashPassword(fits.value)];
  const id = await moment.database.write((tx) => firstOwner(tx, owner, passwordHash, moment.now));
  if (id === null) return refuse('name', 'There is an owner already, or somebody of that name.');
  return done(await sessionFor(moment, id));
};
