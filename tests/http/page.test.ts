import { describe, expect, onTestFinished, test, vi } from 'vitest';
import { customers } from '../../db/tables/customer.ts';
import { createApp } from '../../src/http/app.ts';
import { ownPath } from '../../src/http/page.tsx';
import { logLines } from '../../src/usecases/core/log-lines.ts';
import { demoScreens, screensOver, withDemo } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';
import { databaseFilled } from '../support/temporary-database.ts';

describe('a way back given in a form', () => {
  test.each(['/', '/orders/27-001', '/moulds?done=3'])('%s is one of ours', (path) => expect(ownPath(path)).toBe(path));
  test.each([undefined, '', 'orders', 'https://evil.example/', '//evil.example', '/\\evil.example', '/a b', '/a\nb'])(
    '%j leads to the first page instead',
    (path) => expect(ownPath(path)).toBe('/'),
  );
});

describe('htmx asks for a part', () => {
  const partial = { 'HX-Request-Type': 'partial' };

  test('and gets what stands in the frame, without the frame', async () => {
    const { get } = await screensOver();
    const answer = await get('/moulds', partial);
    const html = await answer.text();
    expect(html).toContain('900 no. 1');
    expect(html).not.toContain('<html');
    expect(answer.headers.get('Vary')).toContain('HX-Request-Type');
  });

  test('of the first page and gets the answer alone', async () => {
    const { get } = await screensOver();
    const html = await (await get('/?what=kit:pair&number=1', partial)).text();
    expect(html).toContain('<h1>');
    expect(html).not.toContain('<form');
  });

  test('of the first page after a change there, and gets all that stands in the frame', async () => {
    const { get } = await screensOver();
    const html = await (await get('/?what=kit:pair&number=1', { ...partial, 'HX-Target': 'main#page' })).text();
    expect(html).toContain('<form');
    expect(html).not.toContain('<html');
  });
});

describe('an address asked otherwise than it is meant', () => {
  test('says by which methods it may be asked', async () => {
    const { app, get } = await screensOver();
    const form = await get('/undo');
    expect([form.status, form.headers.get('Allow')]).toEqual([405, 'POST']);
    const list = await app.request('/orders', { method: 'DELETE', headers: { 'Sec-Fetch-Site': 'same-origin' } });
    expect([list.status, list.headers.get('Allow')]).toEqual([405, 'GET, HEAD, POST']);
    expect((await get('/nowhere')).status).toBe(404);
    expect((await get('/orders/none-of-ours')).status).toBe(404);
  });

  test('is found with a slash at its end too, and has an icon and a description', async () => {
    const { get } = await screensOver();
    const slash = await get('/orders/?find=ann');
    expect([slash.status, new URL(slash.headers.get('Location') ?? '', 'http://x').pathname]).toEqual([301, '/orders']);
    expect((await get('/favicon.ico')).status).toBe(301);
    expect(await (await get('/')).text()).toMatch(/<meta\s+name="description"/);
  });
});

describe('a fault of the program', () => {
  /** A program whose store is gone. */
  const broken = (error = new Error('The disk is full.')) => {
    vi.spyOn(console, 'error').mockImplementation(() => {});
    onTestFinished(() => {
      vi.restoreAllMocks();
    });
    const gone = () => Promise.reject(error);
    return createApp({
      database: { read: gone, write: gone, commits: () => 0, written: gone, minutesAway: () => null, close: gone },
      now: () => smallYard().yard.now,
    });
  };

  test('while a page is asked for offers it once more', async () => {
    const answer = await broken().request('/orders?find=ann');
    expect(answer.status).toBe(500);
    const html = await answer.text();
    expect(html).toContain('This page could not be shown. Nothing was changed');
    expect(html).toMatch(/href="\/orders\?find=ann"[^>]*>Try once more</);
    expect(html).not.toContain('data-fault');
    expect(html).not.toContain('The disk is full');
  });

  test('never leads anywhere else', async () => {
    expect(await (await broken().request('http://localhost//evil.example/orders')).text()).not.toContain('href="//');
  });

  test('after something was sent says what is safe, and has what was typed put back', async () => {
    const answer = await broken().request('/orders', {
      method: 'POST',
      body: new URLSearchParams({ what0: 'kit:pair' }),
    });
    expect(answer.status).toBe(500);
    const html = await answer.text();
    expect(html).toContain('What you sent last was not saved; everything before it was.');
    expect(html).toContain('data-fault');
  });

  test('is no fault where another process held the database for too long: it is to be tried again', async () => {
    for (const code of ['SQLITE_BUSY', 'TRANSACTION_TIMEOUT']) {
      const answer = await broken(new Error('no', { cause: Object.assign(new Error('held'), { code }) })).request(
        '/orders',
      );
      expect([answer.status, answer.headers.get('Retry-After')]).toEqual([503, '5']);
      expect(await answer.text()).toContain('Another program is writing to the database just now.');
    }
  });
});

test('the log says what failed and where, and not to whom', async () => {
  const database = await databaseFilled(withDemo);
  const row = { id: 1, name: 'Anna Österreich', phone: '+43 1 234\n    at Anna' };
  const failed = database.write(async (tx) => {
    await tx.insert(customers).values([row, row]);
  });
  const lines = await failed.then(() => '', logLines);
  expect(lines).toMatch(/Failed query: insert into "customers".*\n +at .*\nbecause of .*SQLITE_CONSTRAINT/s);
  expect(lines).not.toMatch(/Anna|234/);
  const unread = ((text: string) => {
    try {
      return JSON.parse(text);
    } catch (error) {
      return logLines(error);
    }
  })('{"customer": Anna}');
  expect(unread).toMatch(/^SyntaxError: .*\n +at /);
  expect(unread).not.toContain('Anna');
});

test.each(['/assets/__proto__', '/assets/nothing.css', '/orders/toString'])('%s is not there either', async (path) => {
  const { get } = await screensOver();
  expect((await get(path)).status).toBe(404);
});

test.each([
  ['/nothing', '/', 'To the first page', null],
  ['/orders/99-999', '/orders', 'Orders', 'Orders'],
  ['/orders/99-999/edit', '/orders', 'Orders', 'Orders'],
  ['/yard/moulds/none', '/yard/moulds', 'Moulds', 'Your yard'],
  ['/yard/nothing', '/yard', 'Your yard', 'Your yard'],
])('%s is not there, says so, and leads to the list it would stand in', async (path, back, name, current) => {
  const { get } = await screensOver();
  const answer = await get(path);
  expect(answer.status).toBe(404);
  const html = await answer.text();
  expect(html).toContain('There is no such page.');
  expect(/<main[\s\S]*<a[^>]* href="([^"]+)"[^>]*>([^<]+)</.exec(html)?.slice(1)).toEqual([back, name]);
  expect(/aria-current="page">([^<]+)</.exec(html)?.[1] ?? null).toBe(current);
});

test('pages that are open beside each other are told apart by their titles', async () => {
  const { get } = await demoScreens();
  const day = ['/', '/today', '/today/sheet', '/orders', '/orders/new', '/orders/past', '/orders/27-010', '/moulds'];
  const rest = [
    '/orders/27-010/edit',
    '/orders/27-010/quote',
    '/orders/27-010/quote/1',
    '/orders/27-010/bill',
    '/turns',
    '/buying',
    '/changes',
    '/kits/by-size',
    '/prices',
    '/prices/sessions',
    '/season',
    '/begin',
    '/begin/four',
    '/who',
    '/phone',
  ];
  const parts = [
    '',
    '/about',
    '/panels',
    '/kits',
    '/moulds',
    '/mixes',
    '/stock',
    '/hours',
    '/temperatures',
    '/weather',
    '/files',
    '/costs',
  ];
  const added = ['/panels/new', '/kits/new', '/moulds/new', '/mixes/new', '/stock/new', '/hours/new', '/hours/day/new'];
  const entries = ['/panels/panel-900', '/kits/planter', '/mixes/thin', '/hours/1', '/hours/day/1', '/hours/off/new'];
  const titles = new Map<string, string>();
  for (const path of [...day, ...rest, ...[...parts, ...added, ...entries].map((part) => `/yard${part}`)]) {
    const title = /<title>([^<]+)</.exec(await (await get(path)).text())?.[1] ?? '';
    expect([path, title, titles.get(title)]).toEqual([path, expect.stringContaining(' · Larch Row Yard'), undefined]);
    titles.set(title, path);
  }
});
