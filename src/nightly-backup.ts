import { existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { startThread } from '../db/start-thread.ts';

/** What a thread is told to back up. */
export interface BackupData {
  path: string;
  to: string;
}

/** Of a large database a backup takes seconds, in which nobody should wait. */
const inThread = (data: BackupData): Promise<void> =>
  new Promise((resolve, reject) => {
    const thread = startThread('backup-worker', import.meta.url, data);
    thread.once('error', reject);
    thread.once('exit', (code) => (code === 0 ? resolve() : reject(new Error(`the thread ended with ${code}`))));
  });

/** Nobody works at this hour (UTC); where it did not run then, the backup of the day is made as soon as it does. */
const NIGHT_HOUR = 2;
const LOOK_MS = 600_000;

const OURS = /^mould-rota-\d{4}-\d{2}-\d{2}\.db$/;

interface NightlyParts {
  path: string;
  folder: string;
  /** How many are kept: the newest. */
  kept: number;
  /** The present instant, as RFC 3339 writes it in UTC. */
  now: () => string;
  tell: (words: string) => void;
  backUp?: (data: BackupData) => Promise<void>;
}

const dropOldest = (folder: string, kept: number): void => {
  const oldest = readdirSync(folder)
    .filter((name) => OURS.test(name))
    .sort()
    .slice(0, -kept);
  for (const name of oldest) rmSync(join(folder, name));
};

/** Makes the backup of this day where it is time and there is none yet. Older ones go only once it is there, whole. */
export const backUpIfDue = async ({
  path,
  folder,
  kept,
  now,
  tell,
  backUp = inThread,
}: NightlyParts): Promise<void> => {
  const at = now();
  const to = join(folder, `mould-rota-${at.slice(0, 10)}.db`);
  if (Number(at.slice(11, 13)) < NIGHT_HOUR || existsSync(to)) return;
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    await backUp({ path, to });
    dropOldest(folder, kept);
  } catch (error) {
    tell(`No backup was made in ${folder}: ${(error as Error).message}`);
  }
};

/** A backup every night, for as long as the program runs. */
export const nightlyBackups = (parts: NightlyParts): void => {
  let running = false;
  const look = async () => {
    if (running) return;
    running = true;
    await backUpIfDue(parts);
    running = false;
  };
  void look();
  setInterval(look, LOOK_MS).unref();
};
