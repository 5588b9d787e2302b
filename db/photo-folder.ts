import { createHash, randomUUID } from 'node:crypto';
import { chmodSync, copyFileSync, existsSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { mkdir, open, readFile, rename } from 'node:fs/promises';
import { dirname, join } from 'node:path';

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
    if (!existsSync(join(folder, name))) await written(folder, name, bytes);
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
