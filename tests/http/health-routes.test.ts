import { expect, test } from 'vitest';
import { createApp } from '../../src/http/app.ts';
import { screensOver } from '../support/screens.ts';

test('a program that runs and can read its data says so, and nothing else', async () => {
  const { get } = await screensOver();
  for (const path of ['/healthz', '/readyz']) {
    const answer = await get(path);
    expect([path, answer.status, await answer.text()]).toEqual([path, 200, 'ok\n']);
  }
});

test('one whose database is gone runs and is not ready', async () => {
  const gone = () => Promise.reject(new Error('gone'));
  const database = { read: gone, write: gone, commits: () => 0, written: gone, minutesAway: () => null, close: gone };
  const app = createApp({ database, now: () => '2027-04-05T07:30:00Z' });
  expect((await app.request('/healthz')).status).toBe(200);
  const ready = await app.request('/readyz');
  expect([ready.status, await ready.text()]).toEqual([503, 'The database cannot be read.\n']);
});
