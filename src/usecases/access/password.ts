import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import { promisify } from 'node:util';
import { done, type Outcome, refuse } from '../core/context.ts';

const LEAST = 12;
const MOST = 200;

/** 32 MB and three rounds of it: one of the settings that OWASP's Password Storage Cheat Sheet calls equal. */
const COST = { N: 2 ** 15, r: 8, p: 3, maxmem: 64 * 1024 * 1024 };
const KEY_BYTES = 32;
const SALT_BYTES = 16;

const derived = promisify<string, Buffer, number, typeof COST, Buffer>(scrypt);

/** Length is all that is asked of it: any letters, as many as one likes. */
export const passwordTyped = (text: string, field = 'password'): Outcome<string> => {
  if (text.length < LEAST)
    return refuse(field, `At least ${LEAST} letters. Four words that nobody would guess do well.`);
  return text.length > MOST ? refuse(field, `At most ${MOST} letters.`) : done(text);
};

/** What is kept of a password: salt and scrypt (RFC 7914), in hexadecimal. */
export const hashPassword = async (password: string): Promise<string> => {
  const salt = randomBytes(SALT_BYTES);
  const key = await derived(password, salt, KEY_BYTES, COST);
  return `scrypt:${salt.toString('hex')}:${key.toString('hex')}`;
};

/** Of nobody: it is tried where there is no such name, so that the answer takes as long as where there is. */
const OF_NOBODY = `scrypt:${'00'.repeat(SALT_BYTES)}:${'00'.repeat(KEY_BYTES)}`;

/** Whether a password is the one that was kept; never where none was. */
export const isPassword = async (password: string, kept: string | null): Promise<boolean> => {
  const [, salt = '', key = ''] = (kept ?? OF_NOBODY).split(':');
  const tried = await derived(password.slice(0, MOST), Buffer.from(salt, 'hex'), KEY_BYTES, COST);
  return timingSafeEqual(tried, Buffer.from(key, 'hex')) && kept !== null;
};
