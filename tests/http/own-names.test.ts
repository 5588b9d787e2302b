import { describe, expect, test } from 'vitest';
import { createApp } from '../../src/http/app.ts';
import { type Door, ONE_DESK } from '../../src/http/own-names.ts';
import { behindDoor, OWNER } from '../support/behind-door.ts';
import { screensOver } from '../support/screens.ts';
import { yardContext } from '../support/yard-context.ts';

const CLEANED = '/moulds/900%20no.%201/damaged';

/** The screens behind a door, asked as a browser at an address would. */
const behind = async (door: Partial<Door>) => {
  const { database, now } = await yardContext();
  const app = createApp({ database, now: () => now, door: { ...ONE_DESK, ...door } });
  const ask = (path: string, headers: Record<string, string>) => app.request(path, { headers });
  return { ask };
};

const OURS = [
  'localhost',
  'localhost:3000',
  '127.0.0.1:3000',
  '127.0.0.9',
  '[::1]:3000',
  'rota.localhost',
  'LOCALHOST',
];
const STRANGE = [
  'evil.example',
  'localhost.evil.example:3000',
  '192.168.1.20',
  '127.0.0.1.evil.example',
  '0.0.0.0',
  'a b',
  'x@localhost',
  '',
];

describe('one desk', () => {
  test('answers to the names of its own machine', async () => {
    const { get } = await screensOver();
    for (const host of OURS) expect([host, (await get('/who', { Host: host })).status]).toEqual([host, 200]);
  });

  test('answers nothing to any other, and takes nothing', async () => {
    const { get, post } = await screensOver();
    for (const host of STRANGE) {
      const asked = await get('/orders', { Host: host });
      expect([host, asked.status]).toEqual([host, 421]);
      expect(await asked.text()).toMatch(/does not go by that name.*nothing was changed/);
      const sent = await post(CLEANED, {}, { Host: host, Origin: `http://${host}`, 'Sec-Fetch-Site': 'same-origin' });
      expect([host, sent.status]).toEqual([host, 421]);
      expect((await get('/assets/styles.css', { Host: host })).status).toBe(421);
    }
    expect(await (await get('/changes')).text()).not.toContain('marked damaged');
  });

  test('answers to nobody whose request line names another host than its header does', async () => {
    const { app } = await screensOver();
    expect((await app.request('http://evil.example/orders', { headers: { Host: 'localhost' } })).status).toBe(421);
  });

  test('is nothing that a proxy leads to without a word: whoever comes by it is not at this desk', async () => {
    const { get } = await screensOver();
    for (const header of ['X-Forwarded-For', 'Forwarded', 'X-Forwarded-Host']) {
      const answer = await get('/orders', { Host: '127.0.0.1:3000', [header]: 'for=1.2.3.4' });
      expect(answer.status).toBe(421);
      expect(await answer.text()).toContain('PUBLIC_ADDRESS');
    }
  });
});

describe('a server with names of its own', () => {
  test('answers to these, by any port, to its addresses, and to no other', async () => {
    const { ask } = await behind({ hosts: ['rota.example'], addresses: () => ['192.168.1.20', 'fd00::20'] });
    for (const host of [
      'rota.example',
      'Rota.Example:8443',
      'rota.example.',
      '192.168.1.20:3000',
      '[fd00::20]:3000',
      'localhost',
    ])
      expect([host, (await ask('/orders', { Host: host })).status]).toEqual([host, 200]);
    for (const host of ['other.example', 'a.rota.example', 'rota.example.evil', '192.168.1.21'])
      expect([host, (await ask('/orders', { Host: host })).status]).toEqual([host, 421]);
  });

  test('takes forms through a proxy that asks by another name, from its public address only', async () => {
    const { database, now } = await yardContext();
    const { get: ask, post, signedIn } = await behindDoor(database, { now }, { publicAddress: 'https://rota.example' });
    const send = (path: string, headers: Record<string, string>) => post(path, {}, headers);
    const proxied = { Host: '127.0.0.1:3000', 'X-Forwarded-For': '203.0.113.7', ...(await signedIn(OWNER)) };
    for (const origin of ['https://evil.example', 'http://rota.example', 'https://rota.example:444', 'null'])
      expect([origin, (await send(CLEANED, { ...proxied, Origin: origin })).status]).toEqual([origin, 403]);
    expect(await (await ask('/changes', proxied)).text()).not.toContain('marked damaged');
    expect((await send(CLEANED, { ...proxied, Origin: 'https://rota.example' })).status).toBe(303);
    expect(await (await ask('/changes', proxied)).text()).toContain('marked damaged');
    expect((await ask('/orders', { ...proxied, Host: 'rota.example' })).status).toBe(200);
  });

  test('shows its public address to copy, and is asked by https alone where that is one', async () => {
    const { ask } = await behind({ publicAddress: 'https://rota.example' });
    const phone = await ask('/phone', { Host: '127.0.0.1:3000' });
    expect(await phone.text()).toContain('https://rota.example/today</textarea>');
    expect(phone.headers.get('Strict-Transport-Security')).toBe('max-age=31536000');
    const plain = await (await behind({ publicAddress: 'http://rota.example' })).ask('/phone', {
      Host: 'rota.example',
    });
    expect(plain.headers.get('Strict-Transport-Security')).toBe(null);
  });
});
