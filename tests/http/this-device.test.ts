import { describe, expect, test } from 'vitest';
import { createApp } from '../../src/http/app.ts';
import { loadFile, readUpload } from '../../src/usecases/files/load-file.ts';
import { demoScreens, screensOn, screensOver, textOf } from '../support/screens.ts';
import { yardContext } from '../support/yard-context.ts';

const CLEANED = '/moulds/600%20no.%202/cleaned';

/** The cookie that an answer sets, as a browser sends it back. */
const cookieOf = (answer: Response): string => (answer.headers.get('Set-Cookie') ?? '').split(';')[0] ?? '';

/** What a browser sends along on which somebody has said who that is. */
const device = async ({ post }: Awaited<ReturnType<typeof demoScreens>>, name: string) => {
  const answer = await post('/who', { name, back: '/today' });
  expect([answer.status, answer.headers.get('Location')]).toEqual([303, '/today']);
  return { Cookie: cookieOf(answer) };
};

describe('a name chosen on a device', () => {
  test('stands with what is done there, and with nothing that is done elsewhere', async () => {
    const screens = await demoScreens();
    expect(await textOf(await screens.get('/today'))).toContain('Who is this?');
    const anna = await device(screens, '  Anna   Österreich ');
    expect(await textOf(await screens.get('/today', anna))).toContain('Done here by Anna Österreich');
    await screens.post(CLEANED, {}, anna);
    await screens.post('/moulds/900%20no.%201/damaged', {});
    const changes = await textOf(await screens.get('/changes'));
    expect(changes).toContain('Anna Österreich: 600 no. 2 marked cleaned.');
    expect(changes).toMatch(/\d 900 no\. 1 marked damaged\./);
    expect(await textOf(await screens.get('/who'))).toContain('Anna Österreich');
  });

  test('a tap that waited is the doing of whoever made it', async () => {
    const screens = await demoScreens();
    const anna = await device(screens, 'Anna');
    await screens.post(CLEANED, { doneBy: 'Ben' }, anna);
    await screens.post('/moulds/900%20no.%201/damaged', { doneBy: '' }, anna);
    const changes = await textOf(await screens.get('/changes'));
    expect(changes).toContain('Ben: 600 no. 2 marked cleaned.');
    expect(changes).not.toContain('Anna');
  });

  test('undoing is the doing of whoever undoes it', async () => {
    const screens = await demoScreens();
    const done = await screens.post(CLEANED, {}, await device(screens, 'Anna'));
    const change = new URL(done.headers.get('Location') ?? '', 'http://x').searchParams.get('done') ?? '';
    await screens.post('/undo', { change, back: '/changes' }, await device(screens, 'Ben'));
    const changes = await textOf(await screens.get('/changes'));
    expect(changes).toContain('Ben: Undone: 600 no. 2 marked cleaned.');
    expect(changes).toContain('Anna: 600 no. 2 marked cleaned. This was taken back.');
  });

  test('goes with an archive', async () => {
    const screens = await screensOver();
    await screens.post('/moulds/900%20no.%201/damaged', {}, await device(screens, 'Anna'));
    const archive = await screens.get('/yard/files/archive.json');
    const other = await yardContext();
    const read = readUpload(new Uint8Array(await archive.arrayBuffer()), other.now);
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    expect((await loadFile(other, read.value)).ok).toBe(true);
    const changes = await textOf(await screensOn(other.database, other.now).get('/changes'));
    expect(changes).toContain('Anna: 900 no. 1 marked damaged.');
  });

  test('is taken off again, and is refused where it is too long', async () => {
    const screens = await screensOver();
    const off = await screens.post('/who', { name: '' });
    expect(off.headers.get('Set-Cookie')).toContain('Max-Age=0');
    const tooLong = await screens.post('/who', { name: 'x'.repeat(41) });
    expect(tooLong.status).toBe(422);
    expect(await textOf(tooLong)).toContain('40 letters are the most.');
  });

  test('that no page of ours has set is nobody', async () => {
    const { get } = await screensOver();
    const text = await textOf(await get('/today', { Cookie: `who-is-here=${'x'.repeat(99)}` }));
    expect(text).toContain('Who is this?');
  });
});

describe('opening it on a phone', () => {
  test('by a square to point a camera at, and the address to copy', async () => {
    const { database, now } = await yardContext();
    const door = { isOneDesk: true, hosts: [], addresses: () => ['192.168.1.20'], publicAddress: null, path: '' };
    const app = createApp({ database, now: () => now, door });
    const html = await (await app.request('http://192.168.1.20:3000/phone')).text();
    expect(html).toContain('http://192.168.1.20:3000/today</textarea>');
    expect(html).toContain('<svg class="qr-code"');
  });

  test.each(['localhost:3000', '127.0.0.1', '[::1]:3000'])('is said to lead nowhere from %s', async (host) => {
    const { app } = await screensOver();
    const html = await (await app.request(`http://${host}/phone`)).text();
    expect(html).toContain('A phone can&#39;t get here yet.');
    expect(html).not.toContain('qr-code');
  });
});
