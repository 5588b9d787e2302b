import type { Context } from 'hono';
import { deleteCookie, getCookie, setCookie } from 'hono/cookie';
import { SESSION_DAYS } from '../usecases/access/sign-in.ts';
import type { Screens } from './screens.ts';

const COOKIE = 'mould-rota-session';
/** Browsers take a cookie of such a name by https alone, and from no other host (RFC 6265bis, 4.1.3.2). */
const OF_HOST = '__Host-';
const DAY_SECONDS = 86_400;

/** For the server alone; a page elsewhere that sends a form sends it without. Over https it goes by nothing else. */
const options = (isSecure: boolean) =>
  ({ path: '/', httpOnly: true, sameSite: 'Lax', secure: isSecure, maxAge: SESSION_DAYS * DAY_SECONDS }) as const;

/** What tells this yard from another under the same host name: browsers share cookies between ports, and between paths by https. */
const apart = (address: string): string => {
  const { port, pathname } = new URL(address);
  return [port, ...pathname.split('/')]
    .filter(Boolean)
    .map((part) => `-${part.replace(/[^\w-]/g, '_')}`)
    .join('');
};

/** The name by which this yard keeps its session in a browser. */
const nameOf = (c: Context, { addressOf, isSecure }: Screens): string =>
  `${isSecure ? OF_HOST : ''}${COOKIE}${apart(addressOf(c, '/'))}`;

/** The cookie that a browser came with; the last two are of before yards were told apart. Null where it has none. */
const cookieAt = (c: Context, screens: Screens): string | null =>
  [nameOf(c, screens), OF_HOST + COOKIE, COOKIE].find((name) => getCookie(c, name) !== undefined) ?? null;

/** The secret that a browser came with; '' where it has none. */
export const sessionSecret = (c: Context, screens: Screens): string => {
  const name = cookieAt(c, screens);
  return (name !== null && getCookie(c, name)) || '';
};

/** Has a browser keep the secret of its session. */
export const rememberSession = (c: Context, secret: string, screens: Screens): void =>
  setCookie(c, nameOf(c, screens), secret, options(screens.isSecure));

/** Has a browser forget its session here, and none of another yard's. */
export const forgetSession = (c: Context, screens: Screens): void => {
  const name = cookieAt(c, screens);
  if (name !== null) deleteCookie(c, name, { path: '/', secure: name.startsWith(OF_HOST) });
};
