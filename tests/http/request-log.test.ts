import { expect, test, vi } from 'vitest';
import { createApp } from '../../src/http/app.ts';
import type { LogEntry } from '../../src/http/request-log.ts';
import { DEMO_NOW, withDemo } from '../support/screens.ts';
import { databaseFilled } from '../support/temporary-database.ts';

const logged = async () => {
  const database = await databaseFilled(withDemo);
  const entries: LogEntry[] = [];
  const app = createApp({ database, now: () => DEMO_NOW, log: (entry) => void entries.push(entry) });
  return { app, database, entries };
};

test('every request is told of by its route, whatever was asked for or sent: no name, phone, note or secret is in the log', async () => {
  const { app, entries } = await logged();
  const secrets = ['Brid Casey', '01 234 5678', 'ring the bell', 'School garden', 'let-me-in'];
  const form = { customer: secrets[0]!, phone: secrets[1]!, note: secrets[2]!, what0: 'kit:trough', quantity0: '1' };
  const headers = { Cookie: `mould-rota-session=${secrets[4]}` };
  await app.request('/orders', { method: 'POST', body: new URLSearchParams(form), headers });
  await app.request(`/orders?find=${encodeURIComponent(secrets[3]!)}`, { headers });
  await app.request('/orders/27-010');
  await app.request(`/invited/${secrets[4]}`);
  await app.request(`/nowhere/${encodeURIComponent(secrets[3]!)}`);
  expect(entries.map((entry) => ('route' in entry ? [entry.method, entry.route, entry.status] : entry))).toEqual([
    ['POST', '/orders', 303],
    ['GET', '/orders', 200],
    ['GET', '/orders/:id', 200],
    ['GET', '/invited/:secret', 404],
    ['GET', '/*', 404],
  ]);
  const text = JSON.stringify(entries);
  for (const secret of [...secrets, encodeURIComponent(secrets[3]!), '27-010']) expect(text).not.toContain(secret);
});

test('an answer, its page and its lines in the log have one name, a new one for each; of a proxy only what is one', async () => {
  const { app, database, entries } = await logged();
  vi.spyOn(database, 'read').mockRejectedValue(new TypeError('the store is gone'));
  const broken = await app.request('/changes');
  const name = broken.headers.get('X-Request-Id')!;
  expect([broken.status, await broken.text()]).toEqual([
    500,
    expect.stringContaining(`In the log it is request ${name}.`),
  ]);
  expect(entries).toMatchObject([
    { request: name, fault: expect.stringMatching(/^TypeError: the store is gone\n +at /) },
    { request: name, route: '/changes', status: 500 },
  ]);
  const called = async (by: string) =>
    (await app.request('/healthz', { headers: { 'X-Request-Id': by } })).headers.get('X-Request-Id');
  expect(await called('proxy-17')).toBe('proxy-17');
  for (const by of ['two words', 'x'.repeat(65), '']) expect(await called(by)).toMatch(/^[\da-f]{8}-[\da-f-]{27}$/);
  expect(await called('')).not.toBe(name);
});
