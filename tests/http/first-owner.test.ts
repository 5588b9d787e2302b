import { describe, expect, test } from 'vitest';
import type { Database } from '../../db/open.ts';
import { everybody } from '../../db/stores/access-store.ts';
import { createApp } from '../../src/http/app.ts';
import { ONE_DESK } from '../../src/http/own-names.ts';
import { newFirstCode } from '../../src/usecases/access/first-owner.ts';
import { invite } from '../../src/usecases/access/people.ts';
import { followInvitation, makeOwner } from '../../src/usecases/access/sign-in.ts';
import { cookieOf } from '../support/behind-door.ts';
import { doneOf } from '../support/outcomes.ts';
import { textOf } from '../support/screens.ts';
import { temporaryDatabase } from '../support/temporary-database.ts';
import { yardContext } from '../support/yard-context.ts';

const NOW = '2027-04-05T07:30:00Z';
const PASSWORD = 'four words nobody guesses';

const nobodyIn = (database: Database) => expect(database.read(everybody)).resolves.toEqual([]);

/** The door of a program that was started when there was no owner, and the code that it showed. */
const doorOf = async (database: Database, clock = { now: NOW }) => {
  const { code, kept } = await newFirstCode(clock.now);
  const door = { ...ONE_DESK, isOneDesk: false };
  const app = createApp({ database, now: () => clock.now, door, firstCode: kept });
  const get = async (path: string, headers = {}) => app.request(path, { headers });
  const post = async (typed: Record<string, string>) =>
    app.request('/first-owner', {
      method: 'POST',
      body: new URLSearchParams({ name: 'Maria', password: PASSWORD, ...typed }),
    });
  return { code, get, post, clock };
};

describe('the first visit, before there is an owner', () => {
  test('asks for the code at every address, shows nothing else, and lets nobody in without it', async () => {
    const database = await temporaryDatabase();
    const { code, get, post } = await doorOf(database);
    expect(code).toMatch(/^([0-9A-HJKMNP-TV-Z]{4}-){2}[0-9A-HJKMNP-TV-Z]{4}$/);
    for (const path of ['/', '/orders', '/people', '/sign-in', '/first-owner']) {
      const answer = await get(path);
      expect([path, answer.status]).toEqual([path, 401]);
      const html = await answer.text();
      expect(html).toContain('Nobody has a password here yet.');
      expect(html).not.toContain(code);
    }
    const refused = await post({ code: 'AAAA-BBBB-CCCC' });
    expect([refused.status, cookieOf(refused)]).toEqual([401, '']);
    expect(await textOf(refused)).toContain('That is not the code.');
    await nobodyIn(database);
  });

  test('is told what is wrong with a name and a password only by whoever has the code', async () => {
    const database = await temporaryDatabase();
    const { code, post } = await doorOf(database);
    expect(await (await post({ code: 'no', name: '', password: 'short' })).text()).not.toMatch(
      /data-fault="(name|password)"/,
    );
    const short = await post({ code, password: 'short' });
    expect(await short.text()).toMatch(/data-fault="password"/);
    expect(await (await post({ code, name: ' ' })).text()).toMatch(/data-fault="name"/);
    await nobodyIn(database);
  });

  test('waits after five wrong codes, and takes none that is half an hour old', async () => {
    const database = await temporaryDatabase();
    const { code, post, clock } = await doorOf(database, { now: NOW });
    for (let n = 0; n < 5; n += 1) await post({ code: `${n}` });
    expect(await textOf(await post({ code }))).toContain('Too many tries. Wait a minute.');
    clock.now = '2027-04-05T08:00:00Z';
    expect(await textOf(await post({ code }))).toContain('The code is over.');
    await nobodyIn(database);
  });
});

test('the code makes one owner, read as it is typed, and is good once', async () => {
  const { database, now } = await yardContext();
  const { code, get, post } = await doorOf(database, { now });
  const [first, second] = await Promise.all([
    post({ code: ` ${code.toLowerCase().replaceAll('-', ' ').replaceAll('0', 'o').replaceAll('1', 'l')}` }),
    post({ code, name: 'Eve' }),
  ]);
  const came = [first, second].filter(({ status }) => status === 303);
  expect(came).toHaveLength(1);
  expect((await database.read(everybody)).map(({ role }) => role)).toEqual(['owner']);
  expect((await get('/people', { Cookie: cookieOf(came[0]!) })).status).toBe(200);
  const late = await post({ code, name: 'Late' });
  expect([late.status, late.headers.get('Location')]).toEqual([303, '/sign-in']);
  expect(await textOf(await get('/orders'))).toContain('Sign in to go on.');
  expect((await get('/first-owner')).headers.get('Location')).toBe('/sign-in');
});

test('an owner who was made meanwhile from the command line ends the code', async () => {
  const database = await temporaryDatabase();
  const { code, post } = await doorOf(database);
  await makeOwner({ database, now: NOW }, 'Maria', PASSWORD);
  expect((await post({ code, name: 'Eve' })).headers.get('Location')).toBe('/sign-in');
  expect(await database.read(everybody)).toHaveLength(1);
});

test('whoever was invited as the owner and comes by the code ends the invitation', async () => {
  const { database, now } = await yardContext();
  const invitation = doneOf(await invite({ database, now }, { name: 'Maria', role: 'owner' }));
  const { code, post } = await doorOf(database, { now });
  expect((await post({ code })).status).toBe(303);
  expect((await followInvitation({ database, now }, invitation, 'four other words of mine')).ok).toBe(false);
});
