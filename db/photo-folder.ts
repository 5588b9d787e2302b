import { createHash, randomUUID } from 'node:crypto';
import { chmodSync, copyFileSync, existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { mkdir, open, readFile, rename, utimes } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/** Photos of pieces, by what they are called: the SHA-256 of their bytes. */
export interface PhotoFolder {
  /** Keeps a photo, for its owner alone; what it is called from then on. */
  keep(bytes: Uint8Array): Promise<string>;
  /** The bytes of one, or null where it is not there. */
  read(name: string): Promise<Uint8Array<ArrayBuffer> | null>;
}

const NAME = /^[0-9a-f]{64}$/;

/** Where the photos of a database file lie, and those of a backup of it: in a folder beside it. */
export const photosBeside = (file: string): string => join(dirname(file), 'photos');

const makeFolder = { recursive: true, mode: 0o700 } as const;

const isMissing = (error: unknown): boolean => (error as NodeJS.ErrnoException).code === 'ENOENT';

/** Written beside and renamed, so that nobody ever reads half a photo. */
const written = async (folder: string, name: string, bytes: Uint8Array): Promise<void> => {
  const part = join(folder, `${randomUUID()}.part`);
  const file = await open(part, 'wx', 0o600);
  try {
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
  await rename(part, join(folder, name));
};

/** The photos in a folder, which is made with the first of them. */
export const photoFolder = (folder: string): PhotoFolder => ({
  keep: async (bytes) => {
    const name = createHash('sha256').update(bytes).digest('hex');
    await mkdir(folder, makeFolder);
    // One that lies there unused is as good as new from now on: it is not cleared away meanwhile.
    if (existsSync(join(folder, name))) await utimes(join(folder, name), new Date(), new Date());
    else await written(folder, name, bytes);
    return name;
  },
  read: async (name) => {
    if (!NAME.test(name)) return null;
    try {
      return new Uint8Array(await readFile(join(folder, name)));
    } catch (error) {
      if (isMissing(error)) return null;
      throw error;
    }
  },
});

const namesIn = (folder: string): string[] =>
  existsSync(folder) ? readdirSync(folder).filter((name) => NAME.test(name)) : [];

/** Copies photos to another folder that are not there yet; how many there are then of those in the first one. */
export const copyPhotos = (from: string, to: string): number => {
  const names = namesIn(from);
  if (names.length === 0 || from === to) return names.length;
  mkdirSync(to, makeFolder);
  const there = new Set(namesIn(to));
  for (const name of names.filter((one) => !there.has(one))) {
    const part = join(to, `${name}.part`);
    rmSync(part, { force: true });
    copyFileSync(join(from, name), part);
    chmodSync(part, 0o600);
    renameSync(part, join(to, name));
  }
  return names.length;
};

const DATABASE = /\.(db|sqlite3?)$/;

/**
 * Clears away the photos beside a database that it does not name any more, and that have lain there since before an instant
 * (milliseconds since 1970); how many. None where another database lies in that folder: they may be its own.
 */
export const clearPhotos = (file: string, named: ReadonlySet<string>, before: number): number => {
  const folder = photosBeside(file);
  const others = readdirSync(dirname(file)).filter((name) => DATABASE.test(name) && name !== basename(file));
  if (others.length > 0) return 0;
  const unused = namesIn(folder).filter((name) => !named.has(name) && statSync(join(folder, name)).mtimeMs < before);
  for (const name of unused) rmSync(join(folder, name));
  return unused.length;
};
