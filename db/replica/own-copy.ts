import { chmodSync, existsSync, mkdirSync, mkdtempSync, rmSync, statSync, utimesSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { createClient } from '@libsql/client';
import { isBusy } from '../busy.ts';

/** Where a replica lies. */
export interface OwnCopy {
  path: string;
  /** When the server was last heard of, in ms since 1970; `hear` says that it was just now. */
  heardAt(): number;
  hear(): number;
  /** Others may have it from now on; one that was for this time only is gone. */
  leave(): void;
}

/** What libSQL keeps beside a replica: how far it is. */
const infoOf = (path: string): string => `${path}-client_wal_index`;

/** Whether a file is a replica of a server's database, which that alone writes to. */
export const isReplica = (path: string): boolean => existsSync(infoOf(path));

/** For its owner alone: customers stand in it. */
export const keepCopyToOwner = (path: string): void => {
  for (const one of ['', '-wal', '-shm', '-client_wal_index']
    .map((end) => path + end)
    .filter((name) => existsSync(name)))
    chmodSync(one, 0o600);
};

const hearing = (path: string): Pick<OwnCopy, 'heardAt' | 'hear'> => ({
  heardAt: () => statSync(infoOf(path)).mtimeMs,
  hear: () => {
    const now = Date.now();
    // Kept beside the copy, for a start without the server.
    utimesSync(infoOf(path), now / 1000, now / 1000);
    return now;
  },
});

/** Held for as long as a process has the replica open, and let go by the system however that ends. */
const held = async (path: string) => {
  const client = createClient({ url: `file:${path}-held`, timeout: 0, concurrency: 1 });
  try {
    const open = await client.transaction('write');
    return () => {
      open.close();
      client.close();
    };
  } catch (error) {
    client.close();
    if (isBusy(error))
      throw new Error('another process keeps its copy of the server there. Name another file for this one');
    throw error;
  }
};

/** A replica that is kept. Throws, in words, where the file is a database of its own, or another process has it. */
const keptCopy = async (path: string): Promise<OwnCopy> => {
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  if (existsSync(path) && !isReplica(path))
    throw new Error(
      'the file is a database of its own and no copy of a server. It was left as it is. Name a new file for the copy; what is in this one goes to the server by "rota export --archive" and "rota import"',
    );
  return { path, ...hearing(path), leave: await held(path) };
};

/** A replica for as long as this process runs. */
const copyForNow = (): OwnCopy => {
  const folder = mkdtempSync(join(tmpdir(), 'mould-rota-'));
  const path = join(folder, 'copy.db');
  return { path, ...hearing(path), leave: () => rmSync(folder, { recursive: true, force: true }) };
};

export const ownCopy = async (path: string | null): Promise<OwnCopy> => (path === null ? copyForNow() : keptCopy(path));
