import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { faultsOfFile } from '../db/backup.ts';
import { openDatabase } from '../db/open.ts';
import { photoFolder, photosBeside } from '../db/photo-folder.ts';
import { backUpIfDue } from '../src/nightly-backup.ts';
import { temporaryFolder } from './support/temporary-folder.ts';

const DAYS = ['2027-04-05', '2027-04-06', '2027-04-07', '2027-04-08'];

test('one is made each night, in a thread, and the newest are kept', async () => {
  const folder = temporaryFolder();
  const path = join(folder, 'yard.db');
  const database = await openDatabase({ url: `file:${path}` });
  await photoFolder(photosBeside(path)).keep(new Uint8Array([0xff, 0xd8, 0xff]));
  const told: string[] = [];
  const parts = { path, folder: join(folder, 'nights'), kept: 2, tell: (words: string) => void told.push(words) };
  await backUpIfDue({ ...parts, now: () => '2027-04-05T01:59:00Z' });
  expect(existsSync(parts.folder)).toBe(false);
  await backUpIfDue({ ...parts, now: () => '2027-04-05T02:00:00Z' });
  expect(readdirSync(parts.folder)).toEqual(['mould-rota-2027-04-05.db', 'photos']);
  expect(readdirSync(join(parts.folder, 'photos'))).toHaveLength(1);
  expect(await faultsOfFile(join(parts.folder, 'mould-rota-2027-04-05.db'))).toEqual([]);
  writeFileSync(join(parts.folder, 'mine.db'), '');
  const made: string[] = [];
  const backUp = async ({ to }: { to: string }) => {
    made.push(to);
    writeFileSync(to, 'a backup');
  };
  for (const day of DAYS) await backUpIfDue({ ...parts, backUp, now: () => `${day}T09:00:00Z` });
  expect(made).toHaveLength(3);
  expect(readdirSync(parts.folder)).toEqual([
    ...['mine.db', 'mould-rota-2027-04-07.db', 'mould-rota-2027-04-08.db', 'photos'],
  ]);
  expect(told).toEqual([]);
  await database.close();
}, 60_000);

test('one that cannot be made is told of, and none goes for it', async () => {
  const folder = temporaryFolder();
  for (const day of DAYS) writeFileSync(join(folder, `mould-rota-${day}.db`), '');
  const told: string[] = [];
  const backUp = () => Promise.reject(new Error('the disk is full'));
  await backUpIfDue({
    path: 'yard.db',
    folder,
    kept: 1,
    now: () => '2027-04-09T09:00:00Z',
    tell: (words) => void told.push(words),
    backUp,
  });
  expect(told).toEqual([`No backup was made in ${folder}: the disk is full`]);
  expect(readdirSync(folder)).toHaveLength(4);
});
