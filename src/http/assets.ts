import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { Hono } from 'hono';

/** From this file in the source, and from a bundle one or two folders under the project. */
const PLACES = ['../../views/assets/', '../views/assets/', './assets/'];

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

interface Asset {
  type: string;
  body: string;
}

const readAssets = (): Map<string, Asset> => {
  const folder = assetsFolder();
  const htmx = createRequire(import.meta.url).resolve('htmx.org/dist/htmx.min.js');
  return new Map(
    Object.entries({
      'styles.css': { type: 'text/css; charset=utf-8', body: styleSheet(folder) },
      'screen.js': { type: 'text/javascript; charset=utf-8', body: readFileSync(`${folder}screen.js`, 'utf8') },
      'clocks.js': { type: 'text/javascript; charset=utf-8', body: readFileSync(`${folder}clocks.js`, 'utf8') },
      'htmx.js': { type: 'text/javascript; charset=utf-8', body: readFileSync(htmx, 'utf8') },
      'mark.svg': { type: 'image/svg+xml', body: readFileSync(`${folder}mark.svg`, 'utf8') },
    }),
  );
};

const assets = readAssets();

/** Part of the address of every asset: it changes when one of them does. */
export const assetVersion = createHash('sha256')
  .update([...assets.values()].map((asset) => asset.body).join('\n'))
  .digest('hex')
  .slice(0, 10);

const YEAR_SECONDS = 31_536_000;

export const assetRoutes = (): Hono => {
  const routes = new Hono();
  routes.get('/assets/:name', (c) => {
    const asset = assets.get(c.req.param('name'));
    if (!asset) return c.notFound();
    const lasting = c.req.query('v') === assetVersion;
    c.header('Cache-Control', lasting ? `public, max-age=${YEAR_SECONDS}, immutable` : 'no-cache');
    return c.body(asset.body, 200, { 'Content-Type': asset.type });
  });
  return routes;
};
