import type { Hono } from 'hono';
import type { Database } from '../../db/open.ts';
import type { PhotoFolder } from '../../db/photo-folder.ts';
import { createApp } from '../../src/http/app.ts';
import { type Door, ONE_DESK } from '../../src/http/own-names.ts';
import { makeOwner } from '../../src/usecases/access/sign-in.ts';

export const OWNER = { name: 'Maria', password: 'four words nobody guesses' };

/** The cookie that an answer sets, as a browser sends it back. */
export const cookieOf = (answer: Response): string => (answer.headers.get('Set-Cookie') ?? '').split(';')[0] ?? '';

export interface BehindDoor {
  app: Hono;
  get(path: string, headers?: Record<string, string>): Promise<Response>;
  post(path: string, form: Record<string, string>, headers?: Record<string, string>): Promise<Response>;
  /** Signs in; what a browser sends along from then on. */
  signedIn(who: { name: string; password: string }): Promise<{ Cookie: string }>;
}

/** The screens as others get to them: with an owner, and nothing for whoever has not signed in. */
export const behindDoor = async (
  database: Database,
  clock: { now: string },
  door: Partial<Door> = {},
  photos?: PhotoFolder,
): Promise<BehindDoor> => {
  const made = await makeOwner({ database, now: clock.now }, OWNER.name, OWNER.password);
  if (!made.ok) throw new Error(made.faults[0]?.message);
  const app = createApp({ database, now: () => clock.now, photos, door: { ...ONE_DESK, isOneDesk: false, ...door } });
  const get = async (path: string, headers = {}) => app.request(path, { headers });
  const post = async (path: string, form: Record<string, string>, headers = {}) =>
    app.request(path, { method: 'POST', body: new URLSearchParams(form), headers });
  const signedIn = async (who: { name: string; password: string }) => {
    const answer = await post('/sign-in', who);
    if (answer.status !== 303) throw new Error(`${who.name} was not signed in.`);
    return { Cookie: cookieOf(answer) };
  };
  return { app, get, post, signedIn };
};
