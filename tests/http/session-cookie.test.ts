import { Hono } from 'hono';
import { describe, expect, test } from 'vitest';
import type { Screens } from '../../src/http/screens.ts';
import { forgetSession, rememberSession, sessionSecret } from '../../src/http/session-cookie.ts';

/** A yard that is reached at an address, and signs everybody in with one secret. */
const yardAt = (address: string, secret: string) => {
  const screens = { addressOf: (_, path) => address + path, isSecure: address.startsWith('https:') } as Screens;
  const app = new Hono();
  app.get('/in', (c) => {
    rememberSession(c, secret, screens);
    return c.body(null);
  });
  app.get('/out', (c) => {
    forgetSession(c, screens);
    return c.body(null);
  });
  app.get('/who', (c) => c.text(sessionSecret(c, screens)));
  // By https, as such a cookie is only set there.
  return async (path: string, jar: Map<string, string>) => {
    const cookies = [...jar].map(([name, value]) => `${name}=${value}`).join('; ');
    const answer = await app.request(`https://host${path}`, { headers: { Cookie: cookies } });
    for (const set of answer.headers.getSetCookie()) {
      const [, name, value] = /^([^=]+)=([^;]*)/.exec(set)!;
      if (/Max-Age=0/.test(set)) jar.delete(name!);
      else jar.set(name!, value!);
    }
    return answer.text();
  };
};

describe.each([
  ['ports of one machine', 'http://desk:3000', 'http://desk:3001'],
  ['paths of one name', 'https://yards.example/larch', 'https://yards.example/birch'],
  ['a path and the root of one name', 'https://yards.example', 'https://yards.example/birch'],
])('two yards at %s', (_, one, other) => {
  test('keep a session each in one browser, and signing out of one leaves the other', async () => {
    const [first, second] = [yardAt(one, 'of-the-first'), yardAt(other, 'of-the-second')];
    const jar = new Map<string, string>();
    await first('/in', jar);
    await second('/in', jar);
    expect([await first('/who', jar), await second('/who', jar)]).toEqual(['of-the-first', 'of-the-second']);
    await second('/out', jar);
    expect(await first('/who', jar)).toBe('of-the-first');
    expect(jar.size).toBe(1);
  });
});

test('a session of before yards were told apart goes on, and can be left', async () => {
  const yard = yardAt('http://desk:3000', 'new');
  const jar = new Map([['mould-rota-session', 'old']]);
  expect(await yard('/who', jar)).toBe('old');
  await yard('/out', jar);
  expect([jar.size, await yard('/who', jar)]).toEqual([0, '']);
});
