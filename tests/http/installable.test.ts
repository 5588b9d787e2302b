import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { screensOver } from '../support/screens.ts';

/** By where the manifest is (Web Application Manifest, 1.2 and after): the same at a root and under a path. */
const ownAddress = z
  .string()
  .transform((text) => new URL(text, 'http://localhost/assets/manifest.webmanifest').pathname);

/** What the W3C's Web Application Manifest says of the members used here. */
const manifestSchema = z.strictObject({
  name: z.string().min(1),
  short_name: z.string().min(1).max(12),
  description: z.string(),
  lang: z.literal('en'),
  dir: z.enum(['ltr', 'rtl', 'auto']),
  start_url: ownAddress,
  scope: ownAddress,
  display: z.enum(['fullscreen', 'standalone', 'minimal-ui', 'browser']),
  background_color: z.string().regex(/^#[0-9a-f]{6}$/),
  theme_color: z.string().regex(/^#[0-9a-f]{6}$/),
  icons: z.array(
    z.strictObject({
      src: ownAddress,
      sizes: z.string().regex(/^(any|\d+x\d+)$/),
      type: z.enum(['image/png', 'image/svg+xml']),
      purpose: z.enum(['any', 'maskable', 'monochrome']),
    }),
  ),
  shortcuts: z.array(z.strictObject({ name: z.string().min(1), url: ownAddress })),
});

/** Width and height as the header of a PNG has them (ISO/IEC 15948, 11.2.2). */
const pngSize = async (answer: Response): Promise<string> => {
  const bytes = Buffer.from(await answer.arrayBuffer());
  expect(bytes.subarray(0, 8).toString('hex')).toBe('89504e470d0a1a0a');
  return `${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`;
};

const manifestOf = async (get: (path: string) => Promise<Response>) => {
  const html = await (await get('/today')).text();
  const answer = await get(/<link rel="manifest" href="([^"]+)"/.exec(html)?.[1] ?? '');
  expect(answer.headers.get('Content-Type')).toBe('application/manifest+json');
  return manifestSchema.parse(await answer.json());
};

describe('as a program of the phone', () => {
  test('has a manifest, its pages are there, and each icon is as large as it says', async () => {
    const { get } = await screensOver();
    const manifest = await manifestOf(get);
    expect([manifest.start_url, manifest.scope]).toEqual(['/today', '/']);
    for (const path of [manifest.start_url, ...manifest.shortcuts.map(({ url }) => url)])
      expect((await get(path)).status).toBe(200);
    for (const { src, sizes, type } of manifest.icons) {
      const answer = await get(src);
      expect([src, answer.status, answer.headers.get('Content-Type')]).toEqual([src, 200, type]);
      if (type === 'image/png') expect([src, await pngSize(answer)]).toEqual([src, sizes]);
    }
    const sizes = manifest.icons.map(({ sizes, purpose }) => `${purpose} ${sizes}`);
    expect(sizes).toEqual(expect.arrayContaining(['any 192x192', 'any 512x512', 'maskable 512x512']));
  });

  test('has an icon for phones that read no manifest, and the colour of the paper', async () => {
    const { get } = await screensOver();
    const html = await (await get('/today')).text();
    expect(await pngSize(await get(/rel="apple-touch-icon" href="([^"]+)"/.exec(html)?.[1] ?? ''))).toBe('180x180');
    expect(html).toContain('<meta name="theme-color" content="#f2efe9" media="(prefers-color-scheme: light)"');
  });

  test('is allowed its manifest and its worker by the policy, from here alone', async () => {
    const { get } = await screensOver();
    const policy = (await get('/today')).headers.get('Content-Security-Policy')?.split('; ');
    expect(policy).toEqual(expect.arrayContaining(["manifest-src 'self'", "worker-src 'self'"]));
  });
});

describe('the worker that keeps pages', () => {
  test('is asked for anew each time, and every file that it keeps is there for good', async () => {
    const { get } = await screensOver();
    const answer = await get('/sw.js');
    expect(answer.headers.get('Cache-Control')).toBe('no-cache');
    expect(answer.headers.get('Content-Type')).toContain('text/javascript');
    const text = await answer.text();
    const assets: string[] = JSON.parse(/const ASSETS = (\[.*\]);/.exec(text)?.[1] ?? '[]');
    for (const path of assets) expect([path, (await get(path)).status]).toEqual([path, 200]);
    const html = await (await get('/today')).text();
    for (const [, path] of html.matchAll(/(?:src|href)="(\/assets\/[^"]+\?v=[^"]+)"/g)) expect(assets).toContain(path);
  });

  test('finds on pages what it changes on them', async () => {
    const { get } = await screensOver();
    expect(await (await get('/today')).text()).toContain('<main id="page"');
    expect(await (await get('/no-signal')).text()).toContain('<ul class="kept-pages"></ul>');
  });
});
