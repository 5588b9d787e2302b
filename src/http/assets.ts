import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { Hono } from 'hono';
import { answerWithKept, type KeptBody } from './compressed.ts';

/** Beside a bundle, where they are smaller; from this file in the source, and from a bundle that brings none. */
const PLACES = ['./assets/', '../../views/assets/', '../views/assets/'];

const assetsFolder = (): string => {
  const folders = PLACES.map((place) => fileURLToPath(new URL(place, import.meta.url)));
  const folder = folders.find((path) => existsSync(`${path}styles.css`));
  if (!folder) throw new Error(`The style sheet is missing. Looked in ${folders.join(', ')}.`);
  return folder;
};

/** styles.css first, then one sheet per screen that needs its own, by name. */
const styleSheet = (folder: string): string =>
  [
    'styles.css',
    ...readdirSync(folder)
      .filter((name) => name.endsWith('.css') && name !== 'styles.css')
      .sort(),
  ]
    .map((name) => readFileSync(folder + name, 'utf8'))
    .join('\n');

const encoder = new TextEncoder();

interface Asset {
  type: string;
  body: string | Uint8Array<ArrayBuffer>;
}

const SCRIPT = 'text/javascript; charset=utf-8';

const SCRIPTS = [
  ...['screen.js', 'clocks.js', 'kept.js', 'waiting.js', 'others.js', 'photo.js', 'keep-focus.js', 'passkey.js'],
  ...['acts.js', 'keep-place.js', 'own-path.js', 'show-anew.js', 'waiting-list.js', 'waiting-store.js'],
];

/** What a page asks for, and its scripts in turn, with their version. */
const ON_EVERY_PAGE = ['styles.css', 'htmx.js', ...SCRIPTS];

/** Files of the folder as they are: for the program that a phone makes of these pages. */
const AS_THEY_ARE: Readonly<Record<string, string>> = {
  'mark.svg': 'image/svg+xml',
  'manifest.webmanifest': 'application/manifest+json',
  'icon-192.png': 'image/png',
  'icon-512.png': 'image/png',
  'icon-maskable-512.png': 'image/png',
  'apple-touch-icon.png': 'image/png',
};

const readAssets = (): Map<string, Asset> => {
  const folder = assetsFolder();
  const htmx = createRequire(import.meta.url).resolve('htmx.org/dist/htmx.min.js');
  const script = (path: string): Asset => ({ type: SCRIPT, body: readFileSync(path, 'utf8') });
  const asItIs = ([name, type]: [string, string]): [string, Asset] => [
    name,
    { type, body: new Uint8Array(readFileSync(folder + name)) },
  ];
  return new Map([
    ['styles.css', { type: 'text/css; charset=utf-8', body: styleSheet(folder) }],
    ...SCRIPTS.map((name): [string, Asset] => [name, script(folder + name)]),
    ['htmx.js', script(htmx)],
    ...Object.entries(AS_THEY_ARE).map(asItIs),
  ]);
};

const assets = readAssets();

/** Part of the address of every asset: it changes when one of them does. */
export const assetVersion = createHash('sha256')
  .update([...assets.values()].map(({ body }) => createHash('sha256').update(body).digest('hex')).join('\n'))
  .digest('hex')
  .slice(0, 10);

/** A script asks for others in the version that it is of itself. */
const inThisVersion = ({ type, body }: Asset): Asset['body'] =>
  type === SCRIPT && typeof body === 'string'
    ? body.replaceAll(/(\bfrom ?)(['"])(\.\/[\w-]+\.js)\2/g, `$1$2$3?v=${assetVersion}$2`)
    : body;

/** As it is sent for a year, so that it is coded once and as small as can be. */
const lastingBody = (asset: Asset): KeptBody => {
  const body = inThisVersion(asset);
  const bytes = typeof body === 'string' ? encoder.encode(body) : body;
  return { bytes, coded: new Map(), isLasting: true };
};

const YEAR_SECONDS = 31_536_000;

/**
 * The program that keeps pages on the phone, told which version of the assets goes with them. With each other version it
 * is another one, so that the browser takes the new one.
 */
const serviceWorker = (): string => {
  const kept = [...ON_EVERY_PAGE.map((name) => `/assets/${name}?v=${assetVersion}`), '/assets/mark.svg'];
  const told = `const VERSION = ${JSON.stringify(assetVersion)};\nconst ASSETS = ${JSON.stringify(kept)};\n`;
  return told + readFileSync(`${assetsFolder()}service-worker.js`, 'utf8');
};

/** Signs that would end a string of a style sheet, or begin an escape in it, as CSS writes them: \22 for a quotation mark. */
const cssText = (text: string): string =>
  `"${text.replace(/[^\p{L}\p{N} .,-]/gu, (sign) => `\\${sign.codePointAt(0)!.toString(16)} `)}"`;

/** More of a name does not fit beside the number of the page. */
const LONGEST_FOOT = 60;

/** What stands at the foot of each sheet of paper beside its number: whose it is. A style sheet is all that says it there. */
const printedFoot = (yardName: string): string =>
  `@page { @bottom-left { content: ${cssText([...yardName].slice(0, LONGEST_FOOT).join(''))}; font-size: 8pt; } }\n`;

export const assetRoutes = (): Hono => {
  const routes = new Hono();
  const worker = serviceWorker();
  const sent = new Map([...assets].map(([name, asset]) => [name, { type: asset.type, body: lastingBody(asset) }]));
  // Asked for by browsers that read no link to an icon.
  routes.get('/favicon.ico', (c) => c.redirect('/assets/icon-192.png', 301));
  // At the root: from there it may answer for every page.
  routes.get('/sw.js', (c) => {
    c.header('Cache-Control', 'no-cache');
    return c.body(worker, 200, { 'Content-Type': SCRIPT });
  });
  routes.get('/assets/foot.css', (c) => {
    c.header('Cache-Control', 'no-cache');
    return c.body(printedFoot(c.req.query('yard') ?? ''), 200, { 'Content-Type': 'text/css; charset=utf-8' });
  });
  routes.get('/assets/:name', (c) => {
    const asset = sent.get(c.req.param('name'));
    if (!asset) return c.notFound();
    answerWithKept(c, asset.body);
    const lasting = c.req.query('v') === assetVersion;
    c.header('Cache-Control', lasting ? `public, max-age=${YEAR_SECONDS}, immutable` : 'no-cache');
    return c.body(asset.body.bytes, 200, { 'Content-Type': asset.type });
  });
  return routes;
};
