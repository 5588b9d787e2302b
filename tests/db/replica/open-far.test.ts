import { generateKeyPairSync, sign } from 'node:crypto';
import { mkdtempSync, rmSync, utimesSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createClient } from '@libsql/client';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { PrimaryAway } from '../../../db/away.ts';
import { type Database, type DatabaseAddress, openDatabase, type Tx } from '../../../db/open.ts';
import { materialById } from '../../../db/stores/material-store.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { type DatabaseServer, databaseServerIn } from '../../support/database-server.ts';
import { startScript } from '../../support/run-script.ts';
import { screensOn, textOf } from '../../support/screens.ts';
import { type SlowLine, slowLine } from '../../support/slow-line.ts';
import { smallYard } from '../../support/small-yard.ts';
import { countedNow } from '../../support/stock-set.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';

/** How many round trips a change may take, planning and its undo record included. */
const MOST_TRIPS = 8;

const { now } = smallYard().yard;
const DAMAGED = `/moulds/${encodeURIComponent('900 no. 1')}/damaged`;
const folder = mkdtempSync(join(tmpdir(), 'yard-'));
const atEnd: (() => unknown)[] = [() => rmSync(folder, { recursive: true, force: true })];
let server: DatabaseServer;
/** Whoever comes without it is not let in (RFC 8037: a JWT by Ed25519). */
let token: string;
const coded = (part: object) => Buffer.from(JSON.stringify(part)).toString('base64url');
const LOOK_MS = 200;
const kept = () => ({ url: `file:${folder}/kept.db`, syncUrl: line.url, token, lookEveryMs: LOOK_MS });
let line: SlowLine;
/** Two desks; the second is at the end of a line that is watched. */
let [desk, other]: [Database, Database] = [null as never, null as never];

beforeAll(async () => {
  const { publicKey, privateKey } = generateKeyPairSync('ed25519');
  const said = `${coded({ alg: 'EdDSA', typ: 'JWT' })}.${coded({})}`;
  token = `${said}.${sign(null, Buffer.from(said), privateKey).toString('base64url')}`;
  const key = publicKey.export({ format: 'jwk' }).x ?? '';
  server = await databaseServerIn(folder, (end) => atEnd.push(end), { SQLD_AUTH_JWT_KEY: key });
  await server.start();
  line = await slowLine(server.url);
  desk = await openDatabase({ url: server.url, token, patienceMs: 0, lookEveryMs: LOOK_MS });
  other = await openDatabase(kept());
  await desk.write((tx) => replaceYard(tx, smallYard()));
});

afterAll(async () => {
  await desk.close();
  await other.close();
  line.close();
  for (const end of atEnd.reverse()) end();
});

const bagsIn = async (tx: Tx) => (await materialById(tx, 'mortar'))?.onHand ?? Number.NaN;
const bagsAt = (database: Database) => database.read(bagsIn);
const oneMore = (database: Database) => database.write(async (tx) => countedNow(tx, 'mortar', (await bagsIn(tx)) + 1));
const seenAt = (database: Database, bags: number) =>
  vi.waitFor(async () => expect(await bagsAt(database)).toBe(bags), { timeout: 20_000, interval: 50 });

/** What a change came to by its address: its number. */
const changeOf = (answer: Response) => Number(/done=(\d+)/.exec(answer.headers.get('Location') ?? '')?.[1]);

describe('a database on a server', () => {
  test('is read and changed like a file, and what a failed write did is gone', async () => {
    expect(await desk.read((tx) => loadYardFile(tx, now))).toEqual(smallYard());
    await desk.write((tx) => countedNow(tx, 'mortar', 0.1 + 0.2));
    expect(await bagsAt(desk)).toBe(0.1 + 0.2);
    const failing = desk.write(async (tx) => {
      await countedNow(tx, 'mortar', 1);
      throw new Error('no');
    });
    await expect(failing).rejects.toThrow('no');
    expect(await bagsAt(desk)).toBe(0.1 + 0.2);
    await seenAt(other, 0.1 + 0.2);
  });

  test('takes an order, a mould that is damaged, and an undo in few round trips each; others see it, plan and all', async () => {
    const { post, textAfter } = screensOn(other, now);
    const trips: Record<string, number> = {};
    const counted = async (what: string, work: () => Promise<Response>): Promise<Response> => {
      line.roundTrips();
      const answer = await work();
      trips[what] = line.roundTrips();
      return answer;
    };
    const taken = await counted('order', () => post('/orders', { what0: 'kit:pair', quantity0: '2', customer: 'Ann' }));
    expect(await textAfter(taken)).toContain('for Ann taken');
    await counted('damaged', () => post(DAMAGED, { note: 'corner' }));
    const undone = await counted('undo', () => post('/undo', { change: String(changeOf(taken)), back: '/orders' }));
    expect(await textAfter(undone)).toContain('Undone');
    for (const [what, count] of Object.entries(trips)) expect(count, what).toBeLessThanOrEqual(MOST_TRIPS);
    expect(Object.values(trips).every((count) => count > 0)).toBe(true);
    const { get } = screensOn(desk, now);
    await vi.waitFor(async () => expect(await textOf(await get('/changes'))).toContain('Undone: Order'), {
      timeout: 20_000,
    });
    const again = await undoChange({ database: desk, now }, changeOf(undone));
    expect(again).toMatchObject({ ok: true });
    expect(await textOf(await get('/orders'))).toContain('Ann');
  });

  test('two desks, and a process that does nothing else, read and write the same number at once and lose nothing', async () => {
    await desk.write((tx) => countedNow(tx, 'mortar', 0));
    const many = async (database: Database) => {
      for (let done = 0; done < 6; done += 1) await oneMore(database);
    };
    const apart = startScript('tests/db/processes/add-one.ts', [server.url, '10', token]);
    await Promise.all([many(desk), many(other)]);
    expect(await apart.ended).toMatchObject({ code: 0, stderr: '' });
    await Promise.all([seenAt(desk, 22), seenAt(other, 22)]);
  });

  test('has once what it took while its answer was lost, and the writer hears that it has', async () => {
    const before = await bagsAt(other);
    line.loseAnswerTo('insert into \\"shipments\\"');
    await oneMore(other);
    expect(await bagsAt(other)).toBe(before + 1);
    await seenAt(desk, before + 1);
  });

  test('is not opened with a wrong token', async () => {
    const wrong = `${token.slice(0, -6)}AAAAAA`;
    await expect(openDatabase({ url: server.url, token: wrong })).rejects.toThrow('401');
  });
});

describe('a file that is to be a copy', () => {
  const refusal = (address: DatabaseAddress) =>
    openDatabase(address).then(
      () => 'opened',
      (error: Error) => error.message,
    );

  test('is left alone where it is a database of its own, and where another process has it', async () => {
    const url = `file:${temporaryFolder()}/own.db`;
    const own = await openDatabase({ url });
    await own.write((tx) => replaceYard(tx, smallYard()));
    await own.close();
    expect(await refusal({ url, syncUrl: server.url, token })).toContain('a database of its own');
    const again = await openDatabase({ url });
    expect(await bagsAt(again)).toBe(20);
    await again.close();
    expect(await refusal(kept())).toContain('another process');
  });

  test('is not written to without its server', async () => {
    expect(await refusal({ url: `file:${folder}/kept.db` })).toContain('DATABASE_SYNC_URL');
  });
});

describe('a server that is gone', () => {
  test('is waited for in plain words, and has all that it took when it is there again', async () => {
    const before = await bagsAt(desk);
    await oneMore(desk);
    await server.kill();
    await expect(oneMore(desk)).rejects.toThrow(PrimaryAway);
    expect(desk.minutesAway()).toBe(0);
    const { get, post } = screensOn(desk, now);
    const page = await (await get('/orders')).text();
    expect(page).toContain('The database server does not answer. What is shown is less than a minute old');
    const refused = await post(DAMAGED, { note: 'corner' });
    expect(refused.status).toBe(503);
    expect(await textOf(refused)).toContain('The database server does not answer. Nothing was changed.');
    // The plan of a later day is made for whoever looks, and kept by nobody.
    const later = screensOn(desk, '2027-04-12T07:00:00Z');
    expect((await later.get('/orders')).status).toBe(200);
    await expect(openDatabase({ url: server.url, token })).rejects.toThrow('no copy of it here');
    await server.start();
    await vi.waitFor(() => expect(desk.minutesAway()).toBe(null), { timeout: 20_000 });
    await oneMore(desk);
    expect(await bagsAt(desk)).toBe(before + 2);
    await seenAt(other, before + 2);
    const client = createClient({ url: server.url, authToken: token });
    expect((await client.execute('pragma integrity_check')).rows[0]?.[0]).toBe('ok');
    client.close();
  });

  test('is no reason not to start where there is a copy', async () => {
    await other.close();
    line.cut(true);
    const heard = new Date(Date.now() - 5 * 60_000);
    utimesSync(`${folder}/kept.db-client_wal_index`, heard, heard);
    other = await openDatabase(kept());
    expect(other.minutesAway()).toBe(5);
    expect(await bagsAt(other)).toBe(await bagsAt(desk));
    line.cut(false);
    await oneMore(desk);
    await seenAt(other, await bagsAt(desk));
  });
});
