import { copyFileSync, existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { backUpFile, faultsOfFile, putInPlace } from '../db/backup.ts';
import { isBusy } from '../db/busy.ts';
import { filePath } from '../db/file-path.ts';
import { openDatabase } from '../db/open.ts';
import { copyPhotos, photosBeside } from '../db/photo-folder.ts';
import { isReplica } from '../db/replica/own-copy.ts';
import type { Fault } from '../shared/fault.ts';
import { plural } from '../shared/plural.ts';
import { type Holding, lookThrough } from './usecases/backup/look-through.ts';

type Read<T> = { ok: true; value: T } | { ok: false; faults: Fault[] };

const wrong = (path: string, ...messages: string[]): { ok: false; faults: Fault[] } => ({
  ok: false,
  faults: messages.map((message) => ({ path, message })),
});

/** An instant as it stands in the names of files: 2026-11-27T13-05-09. */
const stamp = (at: Date): string => at.toISOString().slice(0, 19).replaceAll(':', '-');

const nowMinute = (): string => `${new Date().toISOString().slice(0, 16)}:00Z`;

const NO_FILE = wrong(
  'DATABASE_URL',
  'the database is no file of this machine, so it is backed up where it is; "rota export --archive" saves all of the yard',
);

/** ", and 3 photos in backups/photos"; '' where there are none. */
const photosText = (count: number, file: string): string =>
  count === 0 ? '' : `, and ${count} ${plural(count, 'photo')} in ${photosBeside(file)}`;

/** Writes a backup of the database, with the photos beside it; the database may be in use; without a name to `backups` beside it, by the present instant. */
export const backUp = async (url: string, name: string | undefined): Promise<Read<string>> => {
  const path = filePath(url);
  if (path === null) return NO_FILE;
  const to = name ?? join(dirname(path), 'backups', `mould-rota-${stamp(new Date())}.db`);
  mkdirSync(dirname(to), { recursive: true, mode: 0o700 });
  try {
    await backUpFile(path, to);
    const photos = copyPhotos(photosBeside(path), photosBeside(to));
    return { ok: true, value: `Everything until now is in ${to}${photosText(photos, to)}.\n` };
  } catch (error) {
    return wrong('backup', (error as Error).message);
  }
};

/** Works on a copy of a file, with what was written last beside it; the file itself stays as it is to the byte. */
const onCopy = async <T>(file: string, work: (copy: string) => Promise<T>): Promise<T> => {
  const folder = mkdtempSync(join(tmpdir(), 'mould-rota-'));
  try {
    const copy = join(folder, 'copy.db');
    copyFileSync(file, copy);
    if (existsSync(`${file}-wal`)) copyFileSync(`${file}-wal`, `${copy}-wal`);
    return await work(copy);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

const held = async (copy: string): Promise<Read<Holding>> => {
  const faults = await faultsOfFile(copy);
  if (faults.length > 0) return wrong('file', ...faults);
  try {
    const database = await openDatabase({ url: `file:${copy}` });
    const holding = await lookThrough({ database, now: nowMinute() }).finally(() => database.close());
    if (holding === null) return wrong('file', 'it holds no yard');
    return holding.faults.length > 0 ? wrong('plan', ...holding.faults) : { ok: true, value: holding };
  } catch (error) {
    return wrong('file', (error as Error).message);
  }
};

/** What a file holds, or what is wrong with it. */
const looked = (file: string): Promise<Read<Holding>> =>
  existsSync(file) ? onCopy(file, held) : Promise.resolve(wrong('file', `there is no file "${file}"`));

const holdingText = ({ yardName, openOrders, last }: Holding): string =>
  `${yardName}, ${openOrders} open ${plural(openOrders, 'order')}, ${last ? `last changed ${last.at}: ${last.words}` : 'never changed'}`;

/** Says whether a file is a whole database of a yard, whose references hold and whose plan keeps the rules. */
export const verify = async (file: string): Promise<Read<string>> => {
  const found = await looked(file);
  return found.ok ? { ok: true, value: `${holdingText(found.value)}.\nAll of it is sound.\n` } : found;
};

const RUNNING = wrong('DATABASE_URL', 'Mould Rota is running on the database; nothing was changed. Stop it first');

const presentText = async (path: string): Promise<string> => {
  if (!existsSync(path)) return `There is no database at ${path} now.`;
  const present = await looked(path);
  return present.ok
    ? `Now: ${holdingText(present.value)}.`
    : `The database that is there now is not sound: ${present.faults[0]?.message}.`;
};

/** Puts a backup in the place of the database, once it was looked at; the old one is kept beside it. */
export const restore = async (url: string, file: string, sure: boolean): Promise<Read<string>> => {
  const path = filePath(url);
  if (path === null) return NO_FILE;
  if (isReplica(path))
    return wrong(
      'DATABASE_URL',
      'the file is a copy of a database server, and a backup of it goes in there: "rota export --archive" of the backup, and "rota import"',
    );
  const found = await looked(file);
  if (!found.ok) return found;
  const look = `${await presentText(path)}\nFrom the backup: ${holdingText(found.value)}.\n`;
  if (!sure) return { ok: true, value: `${look}Nothing was changed. Add --yes to put the backup in its place.\n` };
  const aside = `${path}.before-${stamp(new Date())}`;
  try {
    mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
    const kept = existsSync(path) ? `What was there is kept in ${aside}.\n` : '';
    await onCopy(file, (copy) => putInPlace(copy, path, aside));
    const photos = copyPhotos(photosBeside(file), photosBeside(path));
    const withPhotos = `The backup is in its place${photosText(photos, path)}.`;
    return { ok: true, value: `${look}${withPhotos} ${kept || '\n'}` };
  } catch (error) {
    return isBusy(error) ? RUNNING : wrong('restore', (error as Error).message);
  }
};
