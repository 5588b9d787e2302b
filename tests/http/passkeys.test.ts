import { describe, expect, test } from 'vitest';
import { addPasskey, addPerson, passkeysOf } from '../../db/stores/access-store.ts';
import type { Door } from '../../src/http/own-names.ts';
import { passkeyPlace } from '../../src/usecases/access/passkeys.ts';
import { makeOwner } from '../../src/usecases/access/sign-in.ts';
import { behindDoor, OWNER } from '../support/behind-door.ts';
import { textOf } from '../support/screens.ts';
import { yardContext } from '../support/yard-context.ts';

test('passkeys are made for a name by https, or for localhost, and for no other address', () => {
  const https = { origin: 'https://rota.example', host: 'rota.example' };
  expect(passkeyPlace('https://rota.example/rota/')).toEqual(https);
  expect(passkeyPlace('http://localhost:3000/')).toEqual({ origin: 'http://localhost:3000', host: 'localhost' });
  for (const address of [
    'http://rota.example/',
    'http://192.168.1.20:3000/',
    'https://192.168.1.20/',
    'http://127.0.0.1/',
  ])
    expect([address, passkeyPlace(address)]).toEqual([address, null]);
  for (const address of ['http://[::1]:3000/', 'https://[fd00::1]/']) expect(passkeyPlace(address)).toBe(null);
});

const doorWith = async (door: Partial<Door> = {}) => {
  const { database, now } = await yardContext();
  const clock = { now };
  const screens = await behindDoor(database, clock, door);
  const add = (person: number, credential: string) =>
    database.write((tx) =>
      addPasskey(tx, { person, name: 'Phone', credential, publicKey: 'a', counter: 0, madeAt: now }),
    );
  return { ...screens, owner: await screens.signedIn(OWNER), database, now, clock, add };
};

describe("passkeys of one's own", () => {
  test('are asked for by whoever knows the password, tried no oftener than at the door', async () => {
    const { post, owner } = await doorWith();
    const ask = (own: string) => post('/password/passkeys', { device: 'Phone', own }, owner);
    const refused = await ask('another one');
    expect([refused.status, await textOf(refused)]).toEqual([
      422,
      expect.stringContaining('That is not your password'),
    ]);
    const html = await (await ask(OWNER.password)).text();
    const options = JSON.parse(/data-options="([^"]+)"/.exec(html)![1]!.replaceAll('&quot;', '"'));
    expect(options).toMatchObject({ rp: { id: 'localhost' }, user: { name: OWNER.name } });
    expect(options.authenticatorSelection).toMatchObject({ residentKey: 'required', userVerification: 'required' });
    // A name that cannot be is no try of a password, and at the door the same are counted.
    const named = (device: string) => post('/password/passkeys', { device, own: OWNER.password }, owner);
    for (let n = 0; n < 6; n += 1) expect(await textOf(await named('x'.repeat(99)))).not.toContain('Too many tries');
    for (let n = 0; n < 3; n += 1) await ask('another one');
    for (let n = 0; n < 2; n += 1) await post('/sign-in', { ...OWNER, password: 'another one' });
    expect(await textOf(await ask(OWNER.password))).toContain('Too many tries. Wait a minute.');
    expect(await textOf(await post('/sign-in', OWNER))).toContain('Too many tries. Wait a minute.');
  });

  test('are neither made nor offered where no browser has any, and the page says so', async () => {
    const { get, post, owner } = await doorWith({ publicAddress: 'http://rota.example' });
    expect(await textOf(await get('/password', owner))).toContain('only for a name by https');
    expect(await (await get('/sign-in')).text()).not.toContain('passkey"');
    expect((await post('/password/passkeys', { own: OWNER.password }, owner)).status).toBe(422);
    expect((await post('/sign-in/passkey', { answer: '{}' })).status).toBe(401);
  });

  test('are listed and taken off by their owner alone, and gone with an owner made anew', async () => {
    const { get, post, owner, database, now, add } = await doorWith();
    const other = await database.write((tx) =>
      addPerson(tx, { name: 'Ben', role: 'yard', passwordHash: null, madeAt: now }),
    );
    await add(1, 'hers');
    await add(other, 'his');
    const html = await (await get('/password', owner)).text();
    expect(html.match(/Take off the passkey Phone/g)).toHaveLength(1);
    const off = (id: number) => post('/password/passkeys/removed', { passkey: String(id) }, owner);
    for (const id of [2, 1]) expect((await off(id)).status).toBe(303);
    expect(await database.read((tx) => passkeysOf(tx, 1))).toEqual([]);
    expect(await database.read((tx) => passkeysOf(tx, other))).toHaveLength(1);
    await add(1, 'hers again');
    await makeOwner({ database, now }, OWNER.name, 'four other words of hers');
    expect(await database.read((tx) => passkeysOf(tx, 1))).toEqual([]);
  });

  test('that answer to a page of more than five minutes ago are asked for again', async () => {
    const { get, post, add, clock, now } = await doorWith();
    await add(1, 'hers');
    const html = await (await get('/sign-in')).text();
    const { challenge } = JSON.parse(/data-options="([^"]+)"/.exec(html)![1]!.replaceAll('&quot;', '"'));
    const client = { type: 'webauthn.get', challenge, origin: 'http://localhost' };
    const clientDataJSON = Buffer.from(JSON.stringify(client)).toString('base64url');
    const response = { clientDataJSON, authenticatorData: 'AA', signature: 'AA' };
    const answer = JSON.stringify({ id: 'hers', rawId: 'hers', type: 'public-key', response });
    clock.now = new Date(Date.parse(now) + 360_000).toISOString();
    const refused = await textOf(await post('/sign-in/passkey', { answer }));
    expect(refused).toContain('This page was open for too long. Try again');
    expect(refused).not.toContain('not known here');
  });

  test('that were not made here let nobody in, whatever is sent', async () => {
    const { post, owner, add, database } = await doorWith();
    await add(1, 'hers');
    const response = { clientDataJSON: 'e30', authenticatorData: 'AA', signature: 'AA', attestationObject: 'oA' };
    for (const answer of [
      '',
      'no JSON',
      'null',
      '[]',
      '{}',
      '{"id":7}',
      ...['hers', 'unknown'].map((id) => JSON.stringify({ id, rawId: id, type: 'public-key', response })),
    ]) {
      const refused = await post('/sign-in/passkey', { answer });
      expect([answer, refused.status, refused.headers.get('Set-Cookie')]).toEqual([answer, 401, null]);
      expect(await textOf(refused)).toContain('That passkey is not known here');
      expect((await post('/password/passkeys/made', { device: 'Phone', answer }, owner)).status).toBe(422);
    }
    expect(await database.read((tx) => passkeysOf(tx, 1))).toHaveLength(1);
  });
});
