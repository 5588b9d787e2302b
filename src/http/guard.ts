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

/** Nothing from elsewhere, nothing inline, in no frame; a page is never kept by a cache, since it shows today's plan. */
export const securityHeaders: MiddlewareHandler = async (c: Context, next: Next) => {
  await next();
  c.header('Content-Security-Policy', CONTENT_POLICY);
  c.header('X-Content-Type-Options', 'nosniff');
  c.header('Referrer-Policy', 'same-origin');
  c.header('Cross-Origin-Opener-Policy', 'same-origin');
  c.header('Cross-Origin-Resource-Policy', 'same-origin');
  if (!c.res.headers.has('Cache-Control')) c.header('Cache-Control', 'no-store');
};

const hostOf = (origin: string): string | null => {
  try {
    return new URL(origin).host;
  } catch {
    return null;
  }
};

/**
 * True when a request that changes something comes from one of our own pages. Browsers say where it comes from by
 * `Sec-Fetch-Site` or, on a plain http address, by `Origin`; what says neither is no browser and carries nobody's session.
 */
export const fromOurPages = (method: string, headers: { site?: string; origin?: string; host?: string }): boolean => {
  if (SAFE_METHODS.has(method)) return true;
  if (headers.site) return headers.site === 'same-origin';
  if (headers.origin === undefined) return true;
  return headers.host !== undefined && hostOf(headers.origin) === headers.host;
};

export const sameOrigin =
  (refused: (c: Context) => Response | Promise<Response>): MiddlewareHandler =>
  async (c, next) => {
    const headers = {
      site: c.req.header('Sec-Fetch-Site'),
      origin: c.req.header('Origin'),
      host: c.req.header('Host') ?? new URL(c.req.url).host,
    };
    if (!fromOurPages(c.req.method, headers)) return refused(c);
    return next();
  };
