import { sql } from 'drizzle-orm';
import { describe, expect, test } from 'vitest';
import { recentChanges } from '../../db/stores/change-store.ts';
import { countedTries } from '../../src/http/tries.ts';
import { type BehindDoor, behindDoor, cookieOf, OWNER } from '../support/behind-door.ts';
import { DEMO_NOW, demoScreens, textOf, withDemo } from '../support/screens.ts';
import { databaseFilled } from '../support/temporary-database.ts';

const demoBehindDoor = async () => {
  const [database, clock] = [await databaseFilled(withDemo), { now: DEMO_NOW }];
  return { database, clock, ...(await behindDoor(database, clock)) };
};

const PAGES = [
  '/',
  '/orders',
  '/orders/27-001',
  '/today',
  '/moulds',
  '/prices',
  '/people',
  '/yard/files/archive.json',
  '/changes/stream',
  '/nothing',
];
const DAMAGED = '/moulds/600%20no.%202/damaged';

/** Invites somebody, who follows the invitation: what their browser sends along. */
const invited = async ({ get, post }: BehindDoor, owner: { Cookie: string }, name: string, role: string) => {
  const page = await (await post('/people', { name, role }, owner)).text();
  const path = new URL(/http:\S+\/invited\/[\w-]+/.exec(page)![0]).pathname;
  expect(await textOf(await get(path))).toContain(`Choose a password, ${name}.`);
  expect((await post(path, { password: 'too short' })).status).toBe(422);
  const answer = await post(path, { password: `the long one of ${name}` });
  expect(answer.status).toBe(303);
  expect((await post(path, { password: 'and another one of theirs' })).status).toBe(404);
  return { path, cookie: { Cookie: cookieOf(answer) }, start: answer.headers.get('Location') };
};

describe('whoever has not signed in', () => {
  test('sees nothing of the yard, and changes nothing, whatever is asked', async () => {
    const { get, post, database } = await demoBehindDoor();
    const before = await database.read((tx) => recentChanges(tx, 1));
    for (const headers of [{}, { Cookie: 'mould-rota-session=guessed' }] as Record<string, string>[])
      for (const path of PAGES) {
        const answer = await get(path, headers);
        expect([path, answer.status]).toEqual([path, 401]);
        const html = await answer.text();
        expect(html).toContain('Sign in to go on.');
        expect(html).not.toMatch(/Larch|School garden|€/);
      }
    expect((await post(DAMAGED, {})).status).toBe(401);
    expect(await database.read((tx) => recentChanges(tx, 1))).toEqual(before);
    for (const path of ['/healthz', '/assets/styles.css', '/sw.js', '/sign-in?back=/orders'])
      expect([path, (await get(path)).status]).toEqual([path, path.startsWith('/sign-in') ? 401 : 200]);
  });

  test('is let in by name and password only, and told the same for a wrong name as for a wrong password', async () => {
    const { get, post, signedIn, database } = await demoBehindDoor();
    const words = [];
    for (const who of [
      { ...OWNER, password: 'four words nobody guessed' },
      { ...OWNER, name: 'Nobody' },
    ]) {
      const answer = await post('/sign-in', who);
      expect([answer.status, cookieOf(answer)]).toEqual([401, '']);
      words.push(/The name or the password[^<]*/.exec(await answer.text())?.[0]);
    }
    expect(words).toEqual(Array(2).fill('The name or the password is not right.'));
    const answer = await post('/sign-in', { ...OWNER, back: '/orders' });
    expect([answer.status, answer.headers.get('Location')]).toEqual([303, '/orders']);
    expect(answer.headers.get('Set-Cookie')).toMatch(/; Path=\/; HttpOnly; SameSite=Lax$/);
    const kept = await database.read((tx) => tx.all(sql`select * from "doorKeys", "people"`));
    expect(JSON.stringify(kept)).not.toContain(cookieOf(answer).split('=')[1]);
    expect(JSON.stringify(kept)).not.toContain(OWNER.password);
    const owner = await signedIn(OWNER);
    expect((await get('/orders', owner)).status).toBe(200);
    expect((await post('/sign-out', {}, owner)).status).toBe(303);
    expect((await get('/orders', owner)).status).toBe(401);
    expect((await get('/orders', { Cookie: cookieOf(answer) })).status).toBe(200);
  });

  test('is so again after thirty days, however much the browser was used', async () => {
    const { get, signedIn, clock } = await demoBehindDoor();
    const owner = await signedIn(OWNER);
    clock.now = '2027-05-05T07:29:00Z';
    expect((await get('/who', owner)).status).toBe(200);
    clock.now = '2027-05-05T07:30:00Z';
    expect((await get('/who', owner)).status).toBe(401);
  });
});

test('over https the cookie goes by nothing else', async () => {
  const [database, clock] = [await databaseFilled(withDemo), { now: DEMO_NOW }];
  const { get, post, signedIn } = await behindDoor(database, clock, { publicAddress: 'https://rota.example' });
  expect((await post('/sign-in', OWNER)).headers.get('Set-Cookie')).toMatch(/^__Host-.*; Secure/);
  const owner = await signedIn(OWNER);
  expect((await get('/who', owner)).status).toBe(200);
  expect((await post('/sign-out', {}, owner)).headers.get('Set-Cookie')).toContain('__Host-');
  expect((await get('/who', owner)).status).toBe(401);
});

const CLOSED_TO_YARD = [
  '/',
  '/orders',
  '/orders/27-001',
  '/buying',
  '/prices',
  '/yard',
  '/changes',
  '/people',
  '/yard/files/archive.json',
  '/who',
];

describe('somebody who was invited', () => {
  test('for the yard has today, moulds and counting, no prices, no orders, and stands with what they do', async () => {
    const screens = await demoBehindDoor();
    const { cookie, start } = await invited(screens, await screens.signedIn(OWNER), 'Ben', 'yard');
    expect(start).toBe('/today');
    for (const path of ['/today', '/moulds', '/mould/600%20no.%202', '/count']) {
      const answer = await screens.get(path, cookie);
      expect([path, answer.status]).toEqual([path, 200]);
      expect(await answer.text()).not.toMatch(/€|<li><a href="\/(orders|buying)"/);
    }
    for (const path of CLOSED_TO_YARD) {
      const answer = await screens.get(path, cookie);
      expect([path, answer.status]).toEqual([path, 403]);
      expect(await textOf(answer)).toContain('That is not open to you.');
    }
    expect((await screens.post('/orders', { what0: 'kit:planter', quantity0: '1' }, cookie)).status).toBe(403);
    await screens.post(DAMAGED, { doneBy: 'Somebody else' }, { Cookie: `${cookie.Cookie}; who-is-here=Anna` });
    const [change] = await screens.database.read((tx) => recentChanges(tx, 1));
    expect(change).toMatchObject({ by: 'Ben', kind: expect.stringContaining('damaged') });
  });

  test('for the yard takes back what they did themselves, and nothing of others', async () => {
    const screens = await demoBehindDoor();
    const owner = await screens.signedIn(OWNER);
    const { cookie } = await invited(screens, owner, 'Ben', 'yard');
    const undo = (of: string, who: { Cookie: string }) => screens.post('/undo', { change: of, back: '/moulds' }, who);
    await screens.post(DAMAGED, {}, cookie);
    const [own] = await screens.database.read((tx) => recentChanges(tx, 1));
    expect((await undo(String(own?.id), cookie)).status).toBe(303);
    await screens.post(DAMAGED, {}, owner);
    const [others] = await screens.database.read((tx) => recentChanges(tx, 1));
    const refused = await undo(String(others?.id), cookie);
    expect([refused.status, await textOf(refused)]).toEqual([409, expect.stringContaining('Somebody else did that.')]);
    expect((await undo(String(others?.id), owner)).status).toBe(303);
  });

  test('for the office has all but who comes in and files of all data; shut out everywhere, nothing', async () => {
    const screens = await demoBehindDoor();
    const owner = await screens.signedIn(OWNER);
    const { cookie } = await invited(screens, owner, 'Anna', 'office');
    for (const path of ['/', '/orders', '/prices', '/today'])
      expect((await screens.get(path, cookie)).status).toBe(200);
    for (const path of ['/people', '/yard/files', '/yard/files/archive.json'])
      expect((await screens.get(path, cookie)).status).toBe(403);
    expect((await screens.post('/people', { name: 'Eve', role: 'owner' }, cookie)).status).toBe(403);
    expect(await textOf(await screens.post('/people/removed', { person: '1' }, owner))).toContain(
      'There has to be another owner first.',
    );
    expect((await screens.post('/people/signed-out', { person: '2' }, owner)).status).toBe(200);
    expect((await screens.get('/orders', cookie)).status).toBe(401);
    const again = await screens.signedIn({ name: 'Anna', password: 'the long one of Anna' });
    await screens.post('/people/removed', { person: '2' }, owner);
    expect((await screens.get('/orders', again)).status).toBe(401);
    expect((await screens.post('/sign-in', { name: 'Anna', password: 'the long one of Anna' })).status).toBe(401);
  });
});

describe("a password of one's own", () => {
  const [BEFORE, AFTER] = [OWNER.password, 'five other words nobody says'];

  test('is changed with the one of before, and ends every session but the one it was changed in', async () => {
    const { get, post, signedIn } = await demoBehindDoor();
    const [desk, phone] = [await signedIn(OWNER), await signedIn(OWNER)];
    expect(await textOf(await get('/password', desk))).toContain('Another password for Maria.');
    for (const [form, field, words] of [
      [{ before: 'not the one at all', password: AFTER }, 'before', 'That is not your password as it is now.'],
      [{ before: BEFORE, password: 'short' }, 'password', 'At least 12 letters.'],
    ] as const) {
      const refused = await post('/password', form, desk);
      expect(refused.status).toBe(422);
      expect(/id="(\w+)-error"[^>]*>([^<]*)/.exec(await refused.text())?.slice(1)).toEqual([
        field,
        expect.stringContaining(words),
      ]);
    }
    const changed = await post('/password', { before: BEFORE, password: AFTER }, desk);
    expect([changed.status, changed.headers.get('Location')]).toEqual([303, '/']);
    for (const old of [desk, phone]) expect((await get('/orders', old)).status).toBe(401);
    expect((await get('/orders', { Cookie: cookieOf(changed) })).status).toBe(200);
    expect((await post('/sign-in', OWNER)).status).toBe(401);
    expect((await post('/sign-in', { ...OWNER, password: AFTER })).status).toBe(303);
  });

  test('guessed at from an open browser waits as signing in does; one tap ends all sessions of one person alone', async () => {
    const screens = await demoBehindDoor();
    const [owner, phone] = [await screens.signedIn(OWNER), await screens.signedIn(OWNER)];
    const { cookie } = await invited(screens, owner, 'Ben', 'yard');
    const guess = () => screens.post('/password', { before: 'four words of somebody', password: AFTER }, cookie);
    for (let n = 0; n < 5; n += 1) expect(await textOf(await guess())).toContain('That is not your password');
    expect(await textOf(await guess())).toContain('Too many tries. Wait a minute.');
    const out = await screens.post('/sign-out-everywhere', {}, owner);
    expect([out.status, out.headers.get('Location')]).toEqual([303, '/sign-in']);
    for (const old of [owner, phone]) expect((await screens.get('/orders', old)).status).toBe(401);
    expect((await screens.get('/today', cookie)).status).toBe(200);
  });

  test("is nobody's at the one desk, where nobody has to sign in", async () => {
    const { get, post } = await demoScreens();
    expect((await get('/password')).status).toBe(404);
    for (const path of ['/password', '/sign-out-everywhere']) expect((await post(path, {})).status).toBe(404);
  });
});

describe('tries', () => {
  const at = (minute: number) => new Date(Date.UTC(2027, 3, 5, 7, minute)).toISOString();
  test('of one name wait longer and longer after five, and are free again once it was right', () => {
    const tries = countedTries();
    for (let n = 0; n < 5; n += 1) expect(tries.begin('Maria', at(0))).toBe(0);
    expect(tries.begin('Maria', at(0))).toBe(1);
    expect(tries.begin('Anna', at(0))).toBe(0);
    expect(tries.begin('Maria', at(1))).toBe(0);
    expect(tries.begin('Maria', at(1))).toBe(2);
    tries.right('Maria');
    expect(tries.begin('Maria', at(1))).toBe(0);
  });

  test('of all names together are thirty in a minute', () => {
    const tries = countedTries();
    const waits = Array.from({ length: 31 }, (_, n) => tries.begin(`name ${n}`, at(0)));
    expect(waits.filter((wait) => wait === 0)).toHaveLength(30);
    expect(tries.begin('another', at(1))).toBe(0);
  });
});
