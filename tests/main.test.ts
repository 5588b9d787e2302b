import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test, vi } from 'vitest';
import { openDatabase } from '../db/open.ts';
import { openOrders } from '../db/stores/order-store.ts';
import { owner } from '../src/file-commands.ts';
import { startScript } from './support/run-script.ts';
import { temporaryFolder } from './support/temporary-folder.ts';

const start = (env: Record<string, string>) => startScript('src/main.ts', [], env);

const answers = async (address: string): Promise<number> => (await fetch(address)).status;

// Each starts the server twice from its sources, which takes a busy machine a while.
describe('the server', { timeout: 90_000 }, () => {
  test('makes its folder and file, fills them with the demo once, says where it is, and ends when asked to', async () => {
    const path = join(temporaryFolder(), 'new', 'yard.db');
    const env = { DATABASE_URL: `file:${path}`, PORT: '0' };
    const orders = [];
    for (let round = 0; round < 2; round += 1) {
      const server = start(env);
      await server.said('Mould Rota is at http://127.0.0.1:');
      const address = /http:\S+/.exec(server.written.stdout)?.[0] ?? '';
      expect(await answers(address)).toBe(200);
      server.stop();
      expect(await server.ended).toMatchObject({ code: 0, stderr: '' });
      expect(statSync(`${path}-wal`, { throwIfNoEntry: false })?.size ?? 0).toBe(0);
      const database = await openDatabase({ url: env.DATABASE_URL });
      orders.push(await database.read(openOrders));
      await database.close();
    }
    expect(orders[0]?.length).toBeGreaterThan(7);
    expect(orders[1]).toEqual(orders[0]);
  });

  test('does not start on an environment it cannot use, and says why', async () => {
    const { code, stdout, stderr } = await start({ PORT: 'high', DATABASE_URL: 'yard.db' }).ended;
    expect([code, stdout]).toEqual([1, '']);
    expect(stderr).toMatch(/^PORT has to be .*\nDATABASE_URL has to be .*\n$/);
  });

  test('for others shows a code for the first visit where nobody has a password, and none once somebody has', async () => {
    const env = { DATABASE_URL: `file:${join(temporaryFolder(), 'yard.db')}`, PORT: '0', HOST: '0.0.0.0', LOG: 'json' };
    const first = start(env);
    await first.said('Mould Rota is at');
    const [, code = ''] = /The first visit asks for this code.*: ([\dA-Z-]{14})\n/.exec(first.written.stdout) ?? [];
    const at = `http://127.0.0.1:${/is at http:\S+:(\d+)\s/.exec(first.written.stdout)?.[1]}`;
    expect(await (await fetch(`${at}/orders`)).text()).toContain('Nobody has a password here yet.');
    const body = new URLSearchParams({ code, name: 'Maria', password: 'four words nobody guesses' });
    const made = await fetch(`${at}/first-owner`, { method: 'POST', body, redirect: 'manual' });
    expect(made.status).toBe(303);
    first.stop();
    expect((await first.ended).code).toBe(0);
    expect(first.written.stdout.split(code)).toHaveLength(2);
    for (const [name, value] of Object.entries(env)) vi.stubEnv(name, value);
    onTestFinished(() => void vi.unstubAllEnvs());
    expect(await owner('Maria', 'too short')).toMatchObject({ ok: false, faults: [{ path: 'password' }] });
    expect(await owner('Maria', 'four other words of hers')).toMatchObject({ ok: true });
    const server = start(env);
    await server.said('Mould Rota is at');
    expect(server.written.stdout).not.toContain('code');
    const address = `http://127.0.0.1:${/is at http:\S+:(\d+)\s/.exec(server.written.stdout)?.[1]}`;
    expect(await answers(`${address}/orders`)).toBe(401);
    expect(await answers(`${address}/healthz`)).toBe(200);
    server.stop();
    expect((await server.ended).code).toBe(0);
  });

  test('does not start on a database that cannot be opened, or a port that is taken', async () => {
    const folder = temporaryFolder();
    const noFile = await start({ DATABASE_URL: `file:${folder}` }).ended;
    expect(noFile.code).toBe(1);
    expect(noFile.stderr).toMatch(/^The database at file:.* cannot be opened: [^\n]*\n$/);
    const first = start({ DATABASE_URL: `file:${join(folder, 'yard.db')}`, PORT: '0' });
    await first.said('Mould Rota is at');
    const port = /:(\d+)\s/.exec(first.written.stdout)?.[1] ?? '';
    const second = await start({ DATABASE_URL: `file:${join(folder, 'yard.db')}`, PORT: port }).ended;
    expect([second.code, second.stderr]).toEqual([1, `Port ${port} is taken. Set PORT to another one.\n`]);
    first.stop();
    expect((await first.ended).code).toBe(0);
  });

  test('started by npm ends with it', async () => {
    const env = { DATABASE_URL: `file:${join(temporaryFolder(), 'yard.db')}`, PORT: '0', PATH: process.env.PATH };
    const npm = spawn('npm', ['start'], { cwd: process.cwd(), env, stdio: ['ignore', 'pipe', 'pipe'] });
    onTestFinished(() => void npm.kill('SIGKILL'));
    let written = '';
    npm.stdout.setEncoding('utf8').on('data', (text: string) => (written += text));
    while (!written.includes('Mould Rota is at')) await once(npm.stdout, 'data');
    const address = /http:\S+/.exec(written)?.[0] ?? '';
    expect((await fetch(`${address}/healthz`)).status).toBe(200);
    npm.kill('SIGTERM');
    // Its output is closed once nobody is left who could write there: the server, too.
    await once(npm.stdout, 'close');
    await expect(fetch(`${address}/healthz`)).rejects.toThrow();
  });
});
