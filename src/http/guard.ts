import type { Context, MiddlewareHandler, Next } from 'hono';

const SAFE_METHODS = new Set(['GET', 'HEAD', 'OPTIONS']);

const CONTENT_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data:",
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "form-action 'self'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** Once seen by https, a browser asks for these pages by nothing else for a year (RFC 6797). */
const ALWAYS_HTTPS = 'max-age=31536000';

/** Nothing from elsewhere, nothing inline, in no frame; a page is never kept by a cache, since it shows today's plan. */
export const securityHeaders =
  (publicAddress: string | null): MiddlewareHandler =>
  async (c: Context, next: Next) => {
    await next();
    if (publicAddress?.startsWith('https:')) c.header('Strict-Transport-Security', ALWAYS_HTTPS);
    c.header('Content-Security-Policy', CONTENT_POLICY);
    c.header('X-Content-Type-Options', 'nosniff');
    c.header('Referrer-Policy', 'same-origin');
    c.header('Cross-Origin-Opener-Policy', 'same-origin');
    c.header('Cross-Origin-Resource-Policy', 'same-origin');
    if (!c.res.headers.has('Cache-Control')) c.header('Cache-Control', 'no-store');
  };

const NOT_FOR_THEM = 'Another page asked for this, and nobody followed a link. It was not answered.\n';

const hostOf = (origin: string): string | null => {
  try {
    return new URL(origin).host;
  } catch {
    return null;
  }
};

interface Whence {
  site?: string;
  origin?: string;
  host?: string;
  /** Where others get here through a proxy, which may ask by another name than they did. */
  publicAddress?: string | null;
}

/**
 * True when a request that changes something comes from one of our own pages. Browsers say where it comes from by
 * `Sec-Fetch-Site` or, on a plain http address, by `Origin`; what says neither is no browser and carries nobody's session.
 */
export const fromOurPages = (method: string, { site, origin, host, publicAddress }: Whence): boolean => {
  if (SAFE_METHODS.has(method)) return true;
  if (site) return site === 'same-origin';
  if (origin === undefined) return true;
  return origin === publicAddress || (host !== undefined && hostOf(origin) === host);
};

/**
 * True when a page elsewhere asks for something in its own frame or script, where nobody followed a link: whatever a page of
 * ours costs to make, it would be made for nobody. What is no browser says nothing of the kind.
 */
const askedFromElsewhere = (site: string | undefined, mode: string | undefined): boolean =>
  site !== undefined && !['same-origin', 'none'].includes(site) && mode !== 'navigate';

export const sameOrigin =
  (publicAddress: string | null, refused: (c: Context) => Response | Promise<Response>): MiddlewareHandler =>
  async (c, next) => {
    const headers = {
      site: c.req.header('Sec-Fetch-Site'),
      origin: c.req.header('Origin'),
      host: c.req.header('Host') ?? new URL(c.req.url).host,
      publicAddress,
    };
    if (!fromOurPages(c.req.method, headers)) return refused(c);
    if (askedFromElsewhere(headers.site, c.req.header('Sec-Fetch-Mode'))) return c.text(NOT_FOR_THEM, 403);
    return next();
  };
