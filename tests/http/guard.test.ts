import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { fromOurPages } from '../../src/http/guard.ts';
import { screensOver } from '../support/screens.ts';

describe('a request that changes something', () => {
  test.each([
    ['the browser says that it is from here', { site: 'same-origin' }, true],
    ['the browser says that it is from elsewhere', { site: 'cross-site' }, false],
    ['it is from a neighbouring address', { site: 'same-site' }, false],
    ['an old browser names our own host', { origin: 'http://yard.local:3000', host: 'yard.local:3000' }, true],
    ['a proxy in front speaks https', { origin: 'https://yard.local', host: 'yard.local' }, true],
    ['an old browser names another host', { origin: 'http://evil.example', host: 'yard.local:3000' }, false],
    ['another port', { origin: 'http://yard.local:4000', host: 'yard.local:3000' }, false],
    ['a page without an origin', { origin: 'null', host: 'yard.local:3000' }, false],
    ['no browser at all', { host: 'yard.local:3000' }, true],
  ])('%s', (_what, headers, taken) => {
    expect(fromOurPages('POST', headers)).toBe(taken);
  });

  test('reading is for everyone', () => {
    expect(fromOurPages('GET', { site: 'cross-site' })).toBe(true);
  });

  test('from elsewhere is refused in words, and nothing is changed', async () => {
    const { get, post } = await screensOver();
    const answer = await post('/orders/27-001/cancel', {}, { 'Sec-Fetch-Site': 'cross-site' });
    expect(answer.status).toBe(403);
    expect(await answer.text()).toContain('did not come from one of these pages');
    expect(await (await get('/orders')).text()).toContain('School garden');
  });
});

describe('a page asked for by a page elsewhere', () => {
  const SITE = 'Sec-Fetch-Site';
  const MODE = 'Sec-Fetch-Mode';
  test('is not made where nobody followed a link', async () => {
    const { get } = await screensOver();
    for (const site of ['cross-site', 'same-site'])
      for (const mode of ['no-cors', 'cors', 'same-origin'])
        expect([site, mode, (await get('/?what=kit:pair&number=9', { [SITE]: site, [MODE]: mode })).status]).toEqual([
          site,
          mode,
          403,
        ]);
  });

  test('is shown to whoever follows a link, types its address, or is on a page of ours', async () => {
    const { get } = await screensOver();
    for (const [site, mode] of [
      ['cross-site', 'navigate'],
      ['none', 'navigate'],
      ['none', 'no-cors'],
      ['same-origin', 'cors'],
    ])
      expect((await get('/who', { [SITE]: site ?? '', [MODE]: mode ?? '' })).status).toBe(200);
  });
});

describe('every answer', () => {
  test.each(['/', '/orders', '/moulds', '/nothing', '/assets/styles.css'])(
    '%s allows nothing inline and no frame',
    async (path) => {
      const { get } = await screensOver();
      const { headers } = await get(path);
      expect(headers.get('Content-Security-Policy')).toContain("default-src 'none'");
      expect(headers.get('Content-Security-Policy')).not.toContain('unsafe');
      expect(headers.get('X-Content-Type-Options')).toBe('nosniff');
    },
  );

  test.each(['/', '/orders', '/orders/27-001', '/orders/new', '/moulds'])(
    '%s has no inline script or style',
    async (path) => {
      const { get } = await screensOver();
      const html = await (await get(path)).text();
      expect(html).not.toMatch(/<[^>]+\s(style|on\w+)=/);
      expect(html).not.toMatch(/<style|<script(?![^>]*\ssrc=)/);
      expect(html.startsWith('<!doctype html>')).toBe(true);
    },
  );

  test('is a fraction of its size to whoever takes it so, but for what is sent bit by bit', async () => {
    const { app, get } = await screensOver();
    for (const path of ['/orders', '/', '/assets/styles.css'])
      for (const [accepted, coding, unpack] of [
        ['gzip, br', 'br', brotliDecompressSync],
        ['gzip, deflate, br;q=0', 'gzip', gunzipSync],
        ['gzip', 'gzip', gunzipSync],
      ] as const) {
        const [plain, packed] = [await get(path), await get(path, { 'Accept-Encoding': accepted })];
        expect([path, packed.headers.get('Content-Encoding')]).toEqual([path, coding]);
        expect(packed.headers.get('Vary')).toContain('Accept-Encoding');
        const [text, bytes] = [await plain.text(), new Uint8Array(await packed.arrayBuffer())];
        expect(bytes.length).toBeLessThan(text.length / 2.5);
        expect(unpack(bytes).toString()).toBe(text);
      }
    expect((await get('/orders', { 'Accept-Encoding': 'br;q=0, gzip;q=0.0' })).headers.get('Content-Encoding')).toBe(
      null,
    );
    const stream = await app.request('/changes/stream', { headers: { 'Accept-Encoding': 'gzip' } });
    expect(stream.headers.get('Content-Encoding')).toBe(null);
    await stream.body?.cancel();
  });

  test('a page is kept by no cache, a style sheet with its version for good', async () => {
    const { get } = await screensOver();
    const page = await get('/');
    const sheet = /href="(\/assets\/styles\.css\?v=\w+)"/.exec(await page.text())?.[1] ?? '';
    expect(page.headers.get('Cache-Control')).toBe('no-store');
    expect((await get(sheet)).headers.get('Cache-Control')).toContain('immutable');
    expect((await get('/assets/styles.css?v=old')).headers.get('Cache-Control')).toBe('no-cache');
  });
});

test('a form larger than any here is refused in words', async () => {
  const { post } = await screensOver();
  const answer = await post('/orders', { note: 'x'.repeat(200_000) }, { 'Content-Length': '200005' });
  expect(answer.status).toBe(413);
});
