import type { Context, MiddlewareHandler } from 'hono';
import { getCookie } from 'hono/cookie';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { answerWithKept, type KeptBody } from './compressed.ts';
import { type Finish, isFinished } from './finished.ts';
import type { Screens } from './screens.ts';
import { personAt } from './signed-in.ts';
import { WHO } from './this-device.ts';

/** Pages that are made of the data and the minute alone: of no thread, of nothing held in memory, with no key for one form. */
const MADE_OF_DATA =
  /^\/(today(\/(sheet|evening))?|orders|orders\/(?!new$)[^/]+|moulds|moulds\/labels|mould\/[^/]+|turns|buying|count|pieces|prices|season|trace|changes|going-out|yard|yard\/(moulds|stock|panels|kits|mixes|hours|suppliers|temperatures|about)|kits\/by-size)$/;

/** What they may be asked beside: what is looked for, which part of a list, and what was just done. All else may take a thread. */
const ASKED_BESIDE: readonly string[] = [
  'find',
  'which',
  'from',
  'mould',
  'list',
  'done',
  'read',
  'on',
  'payload',
  'year',
];

const isMadeOfData = ({ req }: Context): boolean =>
  req.method === 'GET' &&
  MADE_OF_DATA.test(req.path) &&
  Object.keys(req.query()).every((name) => ASKED_BESIDE.includes(name));

interface KeptPage extends KeptBody {
  headers: readonly [string, string][];
}

interface KeptPages {
  /** Which state of the data, at which minute; with another one all of them are forgotten. */
  of: string;
  pages: Map<string, Promise<KeptPage | null>>;
  bytes: number;
}

/** Together; nobody looks at more in one minute. */
const MOST_BYTES = 16_000_000;

const kept = new WeakMap<UseCaseContext['database'], KeptPages>();

const keptFor = (database: UseCaseContext['database'], of: string): KeptPages => {
  const known = kept.get(database);
  if (known?.of === of) return known;
  const fresh: KeptPages = { of, pages: new Map(), bytes: 0 };
  kept.set(database, fresh);
  return fresh;
};

/** All that a page is made of beside the data: its whole address, who asks, and how. */
const keyOf = (c: Context): string =>
  JSON.stringify([
    c.req.url,
    ...['Host', 'HX-Request-Type', 'HX-Target'].map((name) => c.req.header(name) ?? ''),
    ...[personAt(c), getCookie(c, WHO) ?? ''],
  ]);

const pageOf = async ({ res }: Context): Promise<KeptPage | null> => {
  if (res.status !== 200 || res.headers.has('Set-Cookie')) return null;
  const bytes = new Uint8Array(await res.clone().arrayBuffer());
  return { bytes, coded: new Map(), headers: [...res.headers] };
};

const answer = (c: Context, { bytes, headers, ...rest }: KeptPage): Response => {
  answerWithKept(c, { bytes, ...rest });
  isFinished(c);
  return new Response(bytes, { status: 200, headers: [...headers] });
};

/**
 * Pages that are made of the data alone are drawn once for all who ask, until anything is written, by whatever process, or
 * the minute is over.
 */
export const keptPages =
  ({ context }: Screens, finish: Finish): MiddlewareHandler =>
  async (c, next) => {
    if (!isMadeOfData(c)) return next();
    const { database, now, background } = context();
    // Asked first: what is written while the page is drawn makes it one of before.
    const written = await database.written();
    const all = keptFor(database, `${written} ${now} ${background?.improving() ?? false} ${database.minutesAway()}`);
    const key = keyOf(c);
    // Nothing is awaited between looking and beginning: of two who ask at once one draws.
    const coming = all.pages.get(key);
    const before = coming && (await coming.catch(() => null));
    if (before) return answer(c, before);
    const drawn = next()
      .then(() => finish(c))
      .then(() => pageOf(c));
    if (all.bytes < MOST_BYTES) all.pages.set(key, drawn);
    const page = await drawn;
    if (page === null) all.pages.delete(key);
    else {
      all.bytes += page.bytes.length;
      answerWithKept(c, page);
    }
    return undefined;
  };
