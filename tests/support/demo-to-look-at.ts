import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type ServerType, serve } from '@hono/node-server';
import { afterAll, beforeAll } from 'vitest';
import { type Database, openDatabase, type Tx } from '../../db/open.ts';
import { DEMO_NOW, screensOn, withDemo } from './screens.ts';

/** Serves one demo to all tests of a file, its plan made once: for tests that only look at pages. Gives its address. `set`: what is otherwise in it. */
export const demoToLookAt = (set: (tx: Tx) => Promise<void> = async () => undefined): (() => string) => {
  const folder = mkdtempSync(join(tmpdir(), 'yard-'));
  let database: Database;
  let server: ServerType;
  let url = '';
  beforeAll(async () => {
    database = await openDatabase({ url: `file:${join(folder, 'yard.db')}` });
    await database.write(withDemo);
    await database.write(set);
    const { app } = screensOn(database, DEMO_NOW);
    await new Promise<void>((resolve) => {
      server = serve({ fetch: app.fetch, hostname: '127.0.0.1', port: 0 }, ({ port }) => {
        url = `http://127.0.0.1:${port}`;
        resolve();
      });
    });
  });
  afterAll(async () => {
    server.close();
    await database.close();
    rmSync(folder, { recursive: true, force: true });
  });
  return () => url;
};
