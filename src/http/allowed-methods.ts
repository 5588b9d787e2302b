import type { Hono } from 'hono';
import { TrieRouter } from 'hono/router/trie-router';

/** What middleware is registered for: every method. */
const ANY = 'ALL';

/**
 * By which methods an address may be asked, of all the routes there are; none where it leads nowhere. Who may be asked by GET
 * may be asked by HEAD.
 */
export const allowedMethods = (routes: Hono['routes']): ((path: string) => string[]) => {
  const own = routes.filter(({ method }) => method !== ANY);
  const methods = [...new Set(own.map(({ method }) => method))];
  const router = new TrieRouter<string>();
  for (const { method, path } of own) router.add(method, path, path);
  return (path) =>
    methods
      .filter((method) => router.match(method, path)[0].length > 0)
      .flatMap((method) => (method === 'GET' ? ['GET', 'HEAD'] : [method]));
};
