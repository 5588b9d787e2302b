import type { Context, MiddlewareHandler } from 'hono';
import { deleteCookie, getCookie, setCookie } from 'hono/cookie';
import type { Person, Role } from '../../shared/person.ts';
import { letInByToken } from '../usecases/access/api-tokens.ts';
import { SESSION_DAYS, signedInBy } from '../usecases/access/sign-in.ts';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { API, isApiPath } from './api/problem.ts';
import type { Screens } from './screens.ts';

const COOKIE = 'mould-rota-session';
/** Browsers take a cookie of such a name by https alone, and from no other host (RFC 6265bis, 4.1.3.2). */
const SECURE_COOKIE = `__Host-${COOKIE}`;
const DAY_SECONDS = 86_400;

/** For the server alone; a page elsewhere that sends a form sends it without. Over https it goes by nothing else. */
const options = (isSecure: boolean) =>
  ({ path: '/', httpOnly: true, sameSite: 'Lax', secure: isSecure, maxAge: SESSION_DAYS * DAY_SECONDS }) as const;

/** The secret that a browser came with; '' where it has none. */
export const sessionSecret = (c: Context): string => getCookie(c, SECURE_COOKIE) ?? getCookie(c, COOKIE) ?? '';

export const rememberSession = (c: Context, secret: string, isSecure: boolean): void =>
  setCookie(c, isSecure ? SECURE_COOKIE : COOKIE, secret, options(isSecure));

export const forgetSession = (c: Context): void => {
  deleteCookie(c, COOKIE, { path: '/' });
  deleteCookie(c, SECURE_COOKIE, { path: '/', secure: true });
};

/** Who has signed in and asks; null at the one desk, where nobody has to. */
export const personAt = (c: Context): Person | null => (c.get('person') as Person | undefined) ?? null;

/** Where somebody begins who has just come in. */
export const startOf = ({ role }: Pick<Person, 'role'>): string => (role === 'yard' ? '/today' : '/');

/** What anybody may ask for: how to get in, what pages are drawn with, whether it runs; and addresses that are secrets themselves. */
const FOR_ANYBODY =
  /^\/(sign-in(\/passkey)?|first-owner|invited\/[\w-]+|assets\/.*|sw\.js|healthz|readyz|calendar\/[\w-]+\.(ics|json))$/;

/** Today, the moulds and counting: no prices, no orders but through what is packed today. */
const FOR_THE_YARD =
  /^\/(today|moulds|mould|piece|photo|count|changes\/stream|sign-out|sign-out-everywhere|password|undo|no-signal|api\/v1\/(today|moulds|stock))(\/.*)?$/;

/** What only an owner may: who comes in, and all of the data in one file. */
const FOR_OWNERS = /^\/(people|yard\/files)(\/.*)?$/;

const MAY: Readonly<Record<Role, (path: string) => boolean>> = {
  owner: () => true,
  office: (path) => !FOR_OWNERS.test(path),
  yard: (path) => FOR_THE_YARD.test(path),
};

/** Whether somebody of a role may ask for a path, or send something there. */
const mayAsk = (role: Role, path: string): boolean => MAY[role](path);

interface Answers {
  /** What is said to whoever has not signed in. */
  signInFirst: (c: Context) => Response | Promise<Response>;
  /** What is said to whoever may not. */
  notYours: (c: Context, person: Person) => Response | Promise<Response>;
}

/** By a token where one came along, which opens the JSON interface alone; else by the session of a browser. */
const whoAsks = async (c: Context, moment: UseCaseContext): Promise<(Person & { mayOnlyRead?: boolean }) | null> => {
  const authorization = c.req.header('Authorization');
  if (isApiPath(c.req.path) && authorization !== undefined) {
    const token = /^Bearer +([\w-]+)$/i.exec(authorization)?.[1];
    return token === undefined ? null : letInByToken(moment, token);
  }
  const secret = sessionSecret(c);
  return secret === '' ? null : signedInBy(moment, secret);
};

/** Asking when something could be ready records nothing, though it is sent. */
const isReading = ({ req }: Context): boolean => req.method === 'GET' || req.path === `${API}/ready`;

/** Lets in who has signed in, to what they may; everything but how to get in is kept from everybody else. */
export const signedInOnly =
  ({ context }: Screens, { signInFirst, notYours }: Answers): MiddlewareHandler =>
  async (c, next) => {
    const person = await whoAsks(c, context());
    if (person) c.set('person', person);
    if (FOR_ANYBODY.test(c.req.path)) return next();
    if (!person) return signInFirst(c);
    const may = mayAsk(person.role, c.req.path) && (!person.mayOnlyRead || isReading(c));
    return may ? next() : notYours(c, person);
  };
