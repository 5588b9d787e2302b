import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { clearPhotos, copyPhotos, photoFolder, photosBeside } from '../../db/photo-folder.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';

/** Of "abc", by FIPS 180-4 (the example of its SHA-256). */
const ABC = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
const abc = new TextEncoder().encode('abc');

test('a photo is kept once, by what it is, for its owner alone', async () => {
  const folder = join(temporaryFolder(), 'photos');
  const photos = photoFolder(folder);
  expect(await photos.read(ABC)).toBe(null);
  expect(await photos.keep(abc)).toBe(ABC);
  expect(await photos.keep(abc)).toBe(ABC);
  expect(readdirSync(folder)).toEqual([ABC]);
  expect(statSync(join(folder, ABC)).mode & 0o777).toBe(0o600);
  expect(statSync(folder).mode & 0o777).toBe(0o700);
  expect(await photos.read(ABC)).toEqual(abc);
});

test('nothing else of the machine is read', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'yard.db'), 'secret');
  for (const name of ['../yard.db', 'yard.db', '', `${ABC}/../yard.db`])
    expect(await photoFolder(join(folder, 'photos')).read(name)).toBe(null);
});

test('those that are not there yet are copied, and nothing else', async () => {
  const [from, to] = [join(temporaryFolder(), 'photos'), join(temporaryFolder(), 'photos')];
  expect(copyPhotos(from, to)).toBe(0);
  await photoFolder(from).keep(abc);
  writeFileSync(join(from, 'note.txt'), 'mine');
  mkdirSync(to);
  expect([copyPhotos(from, to), copyPhotos(from, to)]).toEqual([1, 1]);
  expect(readdirSync(to)).toEqual([ABC]);
  expect(readFileSync(join(to, ABC), 'utf8')).toBe('abc');
  expect(statSync(join(to, ABC)).mode & 0o777).toBe(0o600);
  expect(photosBeside('/yard/data/mould-rota.db')).toBe('/yard/data/photos');
});

test('those that nothing names are cleared away in time, and none beside a second database', async () => {
  const file = join(temporaryFolder(), 'yard.db');
  const photos = photoFolder(photosBeside(file));
  await photos.keep(abc);
  const old = new Date('2020-04-05T08:00:00Z');
  utimesSync(join(photosBeside(file), ABC), old, old);
  const clear = (named: string[], before = old.getTime() + 1) => clearPhotos(file, new Set(named), before);
  expect([clear([ABC]), clear([], old.getTime())]).toEqual([0, 0]);
  const second = join(file, '..', 'other.db');
  writeFileSync(second, '');
  expect(clear([])).toBe(0);
  rmSync(second);
  // Kept again, it is as good as new.
  await photos.keep(abc);
  expect(clear([])).toBe(0);
  expect(clear([], Date.now() + 60_000)).toBe(1);
  expect(await photos.read(ABC)).toBe(null);
});
