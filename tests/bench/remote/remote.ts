import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { openDatabase } from '../../../db/open.ts';
import { materialById } from '../../../db/stores/material-store.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { type DatabaseServer, databaseServerIn } from '../../support/database-server.ts';
import { slowLine } from '../../support/slow-line.ts';
import { smallYard } from '../../support/small-yard.ts';
import { countedNow } from '../../support/stock-set.ts';
import { ms, type Row } from '../table.ts';
import { mainChanges } from './changes.ts';

/** What a line takes there and back. */
const DELAY_MS = 80;
const ADDED = 500;
const KILLED_AFTER_MS = 4_000;
const AWAY_MS = 1_000;

const withServer = async <T>(work: (server: DatabaseServer, folder: string) => Promise<T>): Promise<T> => {
  const folder = mkdtempSync(join(tmpdir(), 'remote-'));
  const ends: (() => void)[] = [() => rmSync(folder, { recursive: true, force: true })];
  try {
    const server = await databaseServerIn(folder, (end) => ends.unshift(end));
    await server.start();
    return await work(server, folder);
  } finally {
    for (const end of ends) end();
  }
};

/** Round trips and time of the main changes behind a slow line, beside the time that the same takes on a file. */
export const remoteChangeRows = (): Promise<Row[]> =>
  withServer(async ({ url }, folder) => {
    const line = await slowLine(url, DELAY_MS);
    const near = await mainChanges(`file:${folder}/near.db`, () => 0);
    const far = await mainChanges(line.url, line.roundTrips);
    line.close();
    return far.map(({ what, trips, ms: took }, at) => ({
      what,
      figure: `${trips} round trips, ${ms(took)}`,
      aim: `on a file ${ms(near[at]?.ms ?? Number.NaN)}; aim: 8 round trips, 1 s a change, 0.3 s a page`,
    }));
  });

const adding = async (url: string): Promise<number> => {
  const script = fileURLToPath(new URL('../../db/processes/add-one.ts', import.meta.url));
  const words = ['--import', 'tsx', script, url, String(ADDED)];
  const child = spawn(process.execPath, words, { stdio: ['ignore', 'ignore', 'inherit'] });
  return (await once(child, 'exit'))[0] as number;
};

/** Two processes that read a number, add one and write it, again and again, by one server that is killed meanwhile. */
export const remoteLossRows = (): Promise<Row[]> =>
  withServer(async (server) => {
    const database = await openDatabase({ url: server.url });
    await database.write((tx) => replaceYard(tx, smallYard()));
    await database.write((tx) => countedNow(tx, 'mortar', 0));
    const begun = performance.now();
    const both = Promise.all([adding(server.url), adding(server.url)]);
    await pause(KILLED_AFTER_MS);
    await server.kill();
    await pause(AWAY_MS);
    await server.start();
    const codes = await both;
    const seconds = Math.round((performance.now() - begun) / 1000);
    const count = await database.write(async (tx) => (await materialById(tx, 'mortar'))?.onHand ?? Number.NaN);
    await database.close();
    return [
      {
        what: `two processes, each adds one ${ADDED} times, the server killed once`,
        figure: `${count} of ${2 * ADDED}, in ${seconds} s`,
        aim: `aim: all; ended with ${codes.join(' and ')}`,
      },
    ];
  });
