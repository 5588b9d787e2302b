import { describe, expect, test } from 'vitest';
import { createApp } from '../../src/http/app.ts';
import { ONE_DESK } from '../../src/http/own-names.ts';
import { behindDoor, cookieOf, OWNER } from '../support/behind-door.ts';
import { yardContext } from '../support/yard-context.ts';

const DOOR = { ...ONE_DESK, publicAddress: 'https://yard.example', path: '/rota' };

/** A page of every kind, as the small yard has it. */
const PAGES = [
  ...['/', '/orders', '/orders/new', '/orders/past', '/orders/27-001', '/orders/27-001/edit', '/going-out', '/pieces'],
  ...[
    '/moulds',
    '/moulds?next=yes',
    '/moulds/labels',
    '/mould/900%20no.%201',
    '/today',
    '/today/sheet',
    '/today/evening',
  ],
  ...['/turns', '/buying', '/count', '/trace', '/prices', '/changes', '/who', '/phone', '/people', '/api/v1', '/begin'],
  ...[
    '/kits/by-size',
    '/yard',
    '/yard/files',
    '/yard/calendar',
    '/yard/moulds/900%20no.%201',
    '/yard/hours',
    '/yard/kits',
  ],
];

const yardUnderPath = async () => {
  const { database, now } = await yardContext();
  const app = createApp({ database, now: () => now, door: DOOR });
  return async (path: string, init: RequestInit = {}) => app.request(path, init);
};

/** Every attribute of a page that is a path, but what a form would send. */
const pathsIn = (html: string): string[] =>
  [...html.matchAll(/\s([\w-]+)="(?:0;url=)?(\/[^"]*)"/g)].flatMap(([, name, path]) =>
    name === 'value' ? [] : [path!],
  );

describe('under a path of its public address', () => {
  test('no page leads anywhere else, and all that it is drawn with is there', async () => {
    const get = await yardUnderPath();
    const needed = new Set<string>();
    for (const path of PAGES) {
      const answer = await get(`/rota${path}`);
      expect([path, answer.status]).toEqual([path, 200]);
      const paths = pathsIn(await answer.text());
      expect(paths.length).toBeGreaterThan(10);
      expect([path, paths.filter((one) => !one.startsWith('/rota/') || one.startsWith('/rota/rota'))]).toEqual([
        path,
        [],
      ]);
      for (const one of paths) if (/^\/rota\/(assets|sw)/.test(one)) needed.add(one.replaceAll('&amp;', '&'));
    }
    expect(needed.size).toBeGreaterThan(10);
    for (const one of needed) expect([one, (await get(one)).status]).toEqual([one, 200]);
  });

  test('a page that is kept, a form, a part of a page and what is not there lead there too', async () => {
    const get = await yardUnderPath();
    const [first, again] = [await (await get('/rota/moulds')).text(), await (await get('/rota/moulds')).text()];
    expect(again).toBe(first);
    const sent = await get('/rota/moulds/900%20no.%202/damaged', { method: 'POST', body: new URLSearchParams() });
    expect([sent.status, sent.headers.get('Location')]).toEqual([
      303,
      expect.stringMatching(/^\/rota\/moulds\?done=\d+$/),
    ]);
    const headers = { 'HX-Request-Type': 'partial' };
    for (const [path, status] of Object.entries({ '/rota/moulds': 200, '/rota/nothing/at/all': 404 })) {
      const answer = await get(path, { headers });
      expect(answer.status).toBe(status);
      expect(pathsIn(await answer.text()).filter((one) => !one.startsWith('/rota/'))).toEqual([]);
    }
    expect((await get('/rota/orders/')).headers.get('Location')).toBe('/rota/orders');
    const who = await get('/rota/who', { method: 'POST', body: new URLSearchParams({ name: 'Anna', back: '/today' }) });
    expect([who.headers.get('Location'), who.headers.get('Set-Cookie')]).toEqual([
      '/rota/today',
      expect.stringContaining('; Path=/rota;'),
    ]);
  });

  test('what is scanned, copied or read by programs says all of it; nothing is there without it', async () => {
    const get = await yardUnderPath();
    expect(await (await get('/rota/phone')).text()).toContain('https://yard.example/rota/today</textarea>');
    const made = await get('/rota/yard/calendar', { method: 'POST', body: new URLSearchParams({ name: 'Phone' }) });
    const shown = await (await get(made.headers.get('Location') ?? '')).text();
    const [, calendar = ''] = /https:\/\/yard\.example(\/rota\/calendar\/[\w-]+\.ics)/.exec(shown) ?? [];
    expect((await get(calendar)).headers.get('Content-Type')).toContain('text/calendar');
    const { servers } = (await (await get('/rota/api/v1/openapi.json')).json()) as { servers: { url: string }[] };
    expect(servers).toEqual([{ url: '/rota/api/v1' }]);
    for (const place of ['/', '/rota']) expect((await get(place)).headers.get('Location')).toBe('/rota/');
    for (const place of ['/orders', '/rotary', '/assets/styles.css']) expect((await get(place)).status).toBe(404);
    for (const place of ['/healthz', '/readyz']) expect((await get(place)).status).toBe(200);
  });
});

test('whoever signs in under a path is let in there, and an invitation leads there', async () => {
  const { database, now } = await yardContext();
  const { app } = await behindDoor(database, { now }, { publicAddress: 'https://yard.example', path: '/rota' });
  const send = async (path: string, form: Record<string, string>, headers = {}) =>
    app.request(path, { method: 'POST', body: new URLSearchParams(form), headers });
  const asked = await app.request('/rota/people');
  expect(asked.status).toBe(401);
  expect(await asked.text()).toContain('action="/rota/sign-in"');
  const signed = await send('/rota/sign-in', { ...OWNER, back: '/people' });
  expect([signed.headers.get('Location'), signed.headers.get('Set-Cookie')]).toEqual([
    '/rota/people',
    expect.stringMatching(/^__Host-.*; Path=\/; /),
  ]);
  const page = await send('/rota/people', { name: 'Ben', role: 'yard' }, { Cookie: cookieOf(signed) });
  const [, path = ''] = /https:\/\/yard\.example(\/rota\/invited\/[\w-]+)/.exec(await page.text()) ?? [];
  expect((await app.request(path)).status).toBe(200);
});
