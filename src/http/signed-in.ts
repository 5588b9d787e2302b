import type { Context, MiddlewareHandler } from 'hono';
import type { Person, Role } from '../../shared/person.ts';
import { letInByToken } from '../usecases/access/api-tokens.ts';
import { signedInBy } from '../usecases/access/sign-in.ts';
import { API, isApiPath } from './api/problem.ts';
import type { Screens } from './screens.ts';
import { sessionSecret } from './session-cookie.ts';

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
const whoAsks = async (c: Context, screens: Screens): Promise<(Person & { mayOnlyRead?: boolean }) | null> => {
  const moment = screens.context();
  const authorization = c.req.header('Authorization');
  if (isApiPath(c.req.path) && authorization !== undefined) {
    const token = /^Bearer +([\w-]+)$/i.exec(authorization)?.[1];
    return token === undefined ? null : letInByToken(moment, token);
  }
  const secret = sessionSecret(c, screens);
  return secret === '' ? null : signedInBy(moment, secret);
};

/** Asking when something could be ready records nothing, though it is sent. */
const isReading = ({ req }: Context): boolean => req.method === 'GET' || req.path === `${API}/ready`;

/** Lets in who has signed in, to what they may; everything but how to get in is kept from everybody else. */
export const signedInOnly =
  (screens: Screens, { signInFirst, notYours }: Answers): MiddlewareHandler =>
  async (c, next) => {
    const person = await whoAsks(c, screens);
    if (person) c.set('person', person);
    if (FOR_ANYBODY.test(c.req.path)) return next();
    if (!person) return signInFirst(c);
    const may = mayAsk(person.role, c.req.path) && (!person.mayOnlyRead || isReading(c));
    return may ? next() : notYours(c, person);
  };
