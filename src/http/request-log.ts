import type { Context, MiddlewareHandler } from 'hono';
import { requestId } from 'hono/request-id';
import { routePath } from 'hono/route';

/** What is told of one request, or of a fault in it. No value of it: an address may hold a customer's name, a header a secret. */
export type LogEntry = { request: string } & (
  | {
      method: string;
      /** The address as the program knows it, with `:number` in the place of what was asked for. */
      route: string;
      status: number;
      /** Until the answer began, in milliseconds. */
      ms: number;
    }
  | { fault: string }
);

/** Whoever keeps the log. */
export type Log = (entry: LogEntry) => void;

/** Where no log is kept, faults are told all the same. */
export const faultsOnly: Log = (entry) => {
  if ('fault' in entry) console.error(entry.fault);
};

/** What a request is called in the log and in its answer, by which the two are found together. */
export const requestOf = (c: Context): string => c.get('requestId') as string;

const LONGEST_NAME = 64;

/** Gives every request its name, one of a proxy before it where that came with one. */
export const named = (): MiddlewareHandler => requestId({ limitLength: LONGEST_NAME });

/** Tells of every request once it is answered. */
export const requestLog =
  (log: Log): MiddlewareHandler =>
  async (c, next) => {
    const began = performance.now();
    await next();
    const [request, ms] = [requestOf(c), Math.round(performance.now() - began)];
    log({ request, method: c.req.method, route: routePath(c, -1), status: c.res.status, ms });
  };
