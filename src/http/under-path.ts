import { type Context, Hono } from 'hono';
import { answerAsItIs } from './compressed.ts';

/** Attributes of pages that are addresses, where these are paths of our own. Signs of an attribute's end are never in a text. */
const ADDRESSES = /(\s(?:href|src|action|formaction|data-hx-(?:get|post))="|\scontent="0;url=)\/(?!\/)/g;

/** A browser takes a cookie of that name for the whole host only (RFC 6265bis, 4.1.3.2). */
const OF_HOST = '__Host-';

const locationUnder = (location: string, path: string, url: string): string => {
  const { origin } = new URL(url);
  const own = location.startsWith(`${origin}/`) ? location.slice(origin.length) : location;
  return /^\/(?!\/)/.test(own) ? path + own : location;
};

const putHeaders = ({ res: { headers }, req }: Context, path: string): void => {
  const location = headers.get('Location');
  if (location !== null) headers.set('Location', locationUnder(location, path, req.url));
  const cookies = headers.getSetCookie();
  headers.delete('Set-Cookie');
  for (const cookie of cookies)
    headers.append('Set-Cookie', cookie.startsWith(OF_HOST) ? cookie : cookie.replace('; Path=/', `; Path=${path}`));
};

/**
 * Puts every address of an answer under the path by which others get to the program: links, forms, assets, ways on, cookies.
 * Everywhere else paths are written as if it stood at the root; scripts, the manifest and the service worker go by where they are.
 */
export const putUnderPath = async (c: Context, path: string): Promise<void> => {
  if (path === '') return;
  putHeaders(c, path);
  if (!c.res.headers.get('Content-Type')?.startsWith('text/html')) return;
  const html = await c.res.text();
  c.res = new Response(html.replace(ADDRESSES, `$1${path}/`), c.res);
  answerAsItIs(c);
};

/** Asked by whatever watches the program, which knows of no path. */
const WATCHED = ['/healthz', '/readyz'];

/** A program under a path, as a proxy leads there that passes paths on as they are. */
export const mountedAt = (app: Hono, path: string): Hono => {
  if (path === '') return app;
  const whole = new Hono();
  for (const place of ['/', path]) whole.get(place, (c) => c.redirect(`${path}/`, 302));
  for (const place of WATCHED) whole.get(place, (c) => app.fetch(c.req.raw, c.env));
  whole.all(`${path}/*`, (c) => {
    const url = new URL(c.req.url);
    url.pathname = url.pathname.slice(path.length);
    return app.fetch(new Request(url, c.req.raw), c.env);
  });
  whole.notFound((c) => c.text(`Mould Rota is at ${path}/ here.\n`, 404));
  return whole;
};
