import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createRequire } from 'node:module';
import { type AddressInfo, createServer } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';
import { onTestFinished } from 'vitest';

/** A libSQL server, as a process of its own. */
export interface DatabaseServer {
  /** Where it listens; the same when it is started again. */
  url: string;
  start(): Promise<void>;
  /** Ends it in the middle of whatever it does, as a power cut would. */
  kill(): Promise<void>;
}

/** The binary comes in a package for each kind of machine; what `sqld` has of its own leads nowhere. */
const binary = createRequire(import.meta.url).resolve(`@sqld/${process.platform}-${process.arch}/sqld`);

const freePort = async (): Promise<number> => {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  server.close();
  await once(server, 'close');
  return port;
};

const isUp = (url: string): Promise<boolean> =>
  fetch(`${url}/health`).then(
    ({ ok }) => ok,
    () => false,
  );

/** A server over a folder, not started yet; `atEnd` says when it is to be gone. */
export const databaseServerIn = async (
  folder: string,
  atEnd: (end: () => void) => void = onTestFinished,
  env: Record<string, string> = {},
): Promise<DatabaseServer> => {
  const port = await freePort();
  const url = `http://127.0.0.1:${port}`;
  let child: ChildProcess | null = null;
  atEnd(() => void child?.kill('SIGKILL'));
  return {
    url,
    start: async () => {
      const words = ['--db-path', `${folder}/server.sqld`, '--http-listen-addr', `127.0.0.1:${port}`, '--no-welcome'];
      child = spawn(binary, words, { stdio: 'ignore', env });
      while (!(await isUp(url))) await pause(20);
    },
    kill: async () => {
      if (!child) return;
      const gone = once(child, 'exit');
      child.kill('SIGKILL');
      await gone;
    },
  };
};
