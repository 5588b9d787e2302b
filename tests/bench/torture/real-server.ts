import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Gives it the clock. */
const SET_CLOCK = new URL('./set-clock.mjs', import.meta.url).href;
const root = fileURLToPath(new URL('../../..', import.meta.url));

/** The program as it is started every day, a process of its own on a database file, but by a clock that is set from here. */
export interface RealServer {
  /** Where the database is. */
  databaseUrl: string;
  request(path: string, init?: RequestInit): Promise<Response>;
  start(): Promise<void>;
  /** Ends it in the middle of whatever it does, as a power cut would; over once it is gone. */
  kill(): Promise<void>;
  setClock(instant: string): void;
  /** What it wrote to its error output in all its lives. */
  complaints(): string;
}

const SAID = /Mould Rota is at (http:\S+)/;

const addressSaid = async (child: ChildProcess): Promise<string> => {
  let written = '';
  child.stdout!.setEncoding('utf8').on('data', (text: string) => (written += text));
  for (;;) {
    const said = SAID.exec(written)?.[1];
    if (said) return said;
    if (child.exitCode !== null) throw new Error(`The server ended: ${written}`);
    await Promise.race([once(child.stdout!, 'data'), once(child, 'exit')]);
  }
};

/** A server that is not started yet, with its files in a folder. */
export const realServer = (folder: string): RealServer => {
  const clock = join(folder, 'clock');
  const databaseUrl = `file:${join(folder, 'yard.db')}`;
  let [address, complaints] = ['', ''];
  let child: ChildProcess | null = null;
  return {
    databaseUrl,
    setClock: (instant) => writeFileSync(clock, instant),
    complaints: () => complaints,
    // A connection of its own for each: one that is kept may be closed just as it is written to.
    request: (path, { headers, ...init } = {}) =>
      fetch(`${address}${path}`, { redirect: 'manual', ...init, headers: { ...headers, connection: 'close' } }),
    start: async () => {
      child = spawn(process.execPath, ['--import', SET_CLOCK, '--import', 'tsx', 'src/main.ts'], {
        cwd: root,
        env: { PATH: process.env.PATH, CLOCK_FILE: clock, DATABASE_URL: databaseUrl, PORT: '0' },
        stdio: ['ignore', 'pipe', 'pipe'],
      });
      child.stderr!.setEncoding('utf8').on('data', (text: string) => (complaints += text));
      address = await addressSaid(child);
    },
    kill: async () => {
      if (!child || child.exitCode !== null) return;
      const gone = once(child, 'exit');
      child.kill('SIGKILL');
      await gone;
    },
  };
};
