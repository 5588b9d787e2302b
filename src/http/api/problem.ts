import type { Context } from 'hono';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import type { z } from 'zod';
import type { problem as problemShape } from './shapes.ts';

type Problem = z.infer<typeof problemShape>;

/** Everything of the JSON interface begins with this; its page of documentation is there. */
export const API = '/api/v1';

export const isApiPath = (path: string): boolean => path === API || path.startsWith(`${API}/`);

const TITLES: Readonly<Record<number, string>> = {
  400: 'That cannot be read',
  401: 'A token is needed',
  403: 'Not open to you',
  404: 'There is no such thing',
  405: 'Not done in that way',
  409: 'Dates would move',
  412: 'It is another one by now',
  413: 'Too large',
  415: 'JSON is needed',
  422: 'That cannot be done',
  428: 'Say which one was seen',
  500: 'Something went wrong in the program',
};

/** Answers with a problem (RFC 9457): nothing was changed. */
export const problem = (c: Context, status: number, more: Partial<Omit<Problem, 'type' | 'status'>> = {}): Response => {
  const body: Problem = { type: 'about:blank', title: TITLES[status] ?? 'Not done', status, ...more };
  if (status === 401) c.header('WWW-Authenticate', 'Bearer');
  return c.body(JSON.stringify(body), status as ContentfulStatusCode, { 'Content-Type': 'application/problem+json' });
};
