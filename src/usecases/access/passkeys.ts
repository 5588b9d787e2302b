import type { AuthenticationResponseJSON, RegistrationResponseJSON } from '@simplewebauthn/server';
import {
  addPasskey,
  countPasskey,
  passkeyOfCredential,
  passkeysOf,
  personNamed,
  removePasskey,
  type StoredPasskey,
} from '../../../db/stores/access-store.ts';
import { isOwnMachine } from '../../../shared/own-machine.ts';
import type { Person } from '../../../shared/person.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import { whoTyped } from '../typed/who-form.ts';
import { isPassword } from './password.ts';
import { type Moment, sessionFor } from './sign-in.ts';

/** A passkey on a list. */
export interface PasskeyFacts {
  id: number;
  name: string;
}

/** Where passkeys are made and used: a name, by https or on the machine itself. */
export interface PasskeyPlace {
  origin: string;
  host: string;
}

/** Challenges, as the http side keeps them. */
interface Challenged {
  /** Asked once with what the device answered to. */
  isChallenge: (challenge: string) => Promise<boolean>;
}

/** Loaded once a door is opened by it: it brings the formats of every maker of devices along, and one desk has no door. */
const webAuthn = () => import('@simplewebauthn/server');

/** One person has no more devices than that. */
const MOST_PASSKEYS = 20;

/**
 * Where passkeys work at an address; null where browsers have none: by plain http, and by a number in place of a name (WebAuthn
 * level 3, 5.1.3: an effective domain).
 */
export const passkeyPlace = (address: string): PasskeyPlace | null => {
  const { protocol, origin, hostname } = new URL(address);
  const isNumber = /^([\d.]+|\[.*\])$/.test(hostname);
  return !isNumber && (protocol === 'https:' || isOwnMachine(hostname)) ? { origin, host: hostname } : null;
};

/** The passkeys of somebody. */
export const passkeyFacts = async ({ database }: Pick<Moment, 'database'>, person: number): Promise<PasskeyFacts[]> =>
  (await database.read((tx) => passkeysOf(tx, person))).map(({ id, name }) => ({ id, name }));

/** What a browser is asked for to make a passkey for somebody who knows their password, as JSON. */
export const askForPasskey = async (
  { database }: Pick<Moment, 'database'>,
  { id, name }: Pick<Person, 'id' | 'name'>,
  typed: { device: string; own: string },
  { host }: PasskeyPlace,
  challenge: string,
): Promise<Outcome<{ device: string; options: string }>> => {
  const device = whoTyped(typed.device);
  if (!device.ok) return refuse('device', device.faults[0]?.message ?? '');
  const [stored, before] = await database.read(
    async (tx) => [await personNamed(tx, name), await passkeysOf(tx, id)] as const,
  );
  if (before.length >= MOST_PASSKEYS) return refuse('device', 'Take one off first that is not used.');
  if (!(await isPassword(typed.own, stored?.passwordHash ?? null)))
    return refuse('own', 'That is not your password as it is now.');
  const { generateRegistrationOptions } = await webAuthn();
  const options = await generateRegistrationOptions({
    ...{ rpName: 'Mould Rota', rpID: host, userName: name, userDisplayName: name, challenge },
    excludeCredentials: before.map(({ credential }) => ({ id: credential })),
    // Whoever finds the device signs in with nothing: it has to ask for a finger, a face or its own code.
    authenticatorSelection: { residentKey: 'required', userVerification: 'required' },
  });
  return done({ device: device.value ?? 'Passkey', options: JSON.stringify(options) });
};

const NOT_MADE = 'The device did not make a passkey that can be used here. Try again.';

const jsonOf = <T>(text: string): T | null => {
  try {
    return JSON.parse(text) as T;
  } catch {
    return null;
  }
};

/** The outcome of work of the library, which throws at whatever is wrong. */
const orNull = <T>(work: Promise<T>): Promise<T | null> => work.catch(() => null);

/** Keeps the passkey that a device has made for somebody. */
export const keepPasskey = async (
  { database, now }: Moment,
  person: number,
  { device, answer }: { device: string; answer: string },
  { origin, host }: PasskeyPlace,
  { isChallenge }: Challenged,
): Promise<Outcome<null>> => {
  const [named, response] = [whoTyped(device), jsonOf<RegistrationResponseJSON>(answer)];
  if (response === null) return refuse('device', NOT_MADE);
  const { verifyRegistrationResponse } = await webAuthn();
  const expected = { expectedChallenge: isChallenge, expectedOrigin: origin, expectedRPID: host };
  const made = await orNull(verifyRegistrationResponse({ response, ...expected, requireUserVerification: true }));
  if (!made?.verified) return refuse('device', NOT_MADE);
  const { id, publicKey, counter } = made.registrationInfo.credential;
  return database.write(async (tx) => {
    if (await passkeyOfCredential(tx, id)) return refuse('device', 'This passkey is on a list here already.');
    const name = (named.ok && named.value) || 'Passkey';
    const key = { credential: id, publicKey: Buffer.from(publicKey).toString('base64url'), counter };
    await addPasskey(tx, { person, name, ...key, madeAt: now });
    return done(null);
  });
};

/** Takes a passkey of somebody's own off: it lets nobody in from then on. */
export const takePasskeyOff = ({ database }: Pick<Moment, 'database'>, person: number, id: number): Promise<void> =>
  database.write((tx) => removePasskey(tx, person, id));

/** What a browser is asked for to sign in by any passkey it has for here, as JSON. */
export const askToSignIn = async ({ host }: PasskeyPlace, challenge: string): Promise<string> => {
  const { generateAuthenticationOptions } = await webAuthn();
  return JSON.stringify(await generateAuthenticationOptions({ rpID: host, challenge, userVerification: 'required' }));
};

const WRONG = 'That passkey is not known here, or no longer. Sign in with your password.';

const isRight = async (
  response: AuthenticationResponseJSON,
  { credential, publicKey, counter }: StoredPasskey,
  { origin, host }: PasskeyPlace,
  { isChallenge }: Challenged,
): Promise<number | null> => {
  const { verifyAuthenticationResponse } = await webAuthn();
  const used = await orNull(
    verifyAuthenticationResponse({
      ...{ response, expectedChallenge: isChallenge, expectedOrigin: origin, expectedRPID: host },
      credential: { id: credential, publicKey: new Uint8Array(Buffer.from(publicKey, 'base64url')), counter },
      requireUserVerification: true,
    }),
  );
  return used?.verified ? used.authenticationInfo.newCounter : null;
};

/** Signs in whoever has a passkey that is known here: who it is, and the secret of a session. */
export const signInByPasskey = async (
  moment: Moment,
  answer: string,
  place: PasskeyPlace,
  challenged: Challenged,
): Promise<Outcome<string>> => {
  const response = jsonOf<AuthenticationResponseJSON>(answer);
  const credential = response?.id;
  if (!response || typeof credential !== 'string') return refuse('passkey', WRONG);
  const passkey = await moment.database.read((tx) => passkeyOfCredential(tx, credential));
  const counter = passkey && (await isRight(response, passkey, place, challenged));
  if (!passkey || counter === null) return refuse('passkey', WRONG);
  // Taken off meanwhile, it opens nothing.
  const isThere = await moment.database.write(async (tx) => {
    await countPasskey(tx, passkey.id, counter);
    return (await passkeyOfCredential(tx, credential)) !== null;
  });
  return isThere ? done(await sessionFor(moment, passkey.person)) : refuse('passkey', WRONG);
};
