import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));

export interface Running {
  /** Everything written so far. */
  written: { stdout: string; stderr: string };
  /** Waits for a piece of text on standard output. */
  said(text: string): Promise<void>;
  /** Asks it to end, as the system does. */
  stop(): void;
  /** Ends it in the middle of whatever it does, as a power cut would. */
  kill(): void;
  ended: Promise<{ code: number | null; stdout: string; stderr: string }>;
}

/** What is built is started so, which was done before all tests; everything else from its source. */
const BUILT: Readonly<Record<string, string>> = { 'src/main.ts': 'src/start.mjs', 'src/cli.ts': 'src/rota.mjs' };

/** Starts a script of this project as a process of its own; it is gone when the test is over, or whenever `atEnd` says. */
export const startScript = (
  script: string,
  args: string[],
  env: Record<string, string> = {},
  atEnd: (end: () => void) => void = onTestFinished,
): Running => {
  const child = spawn(process.execPath, [...(BUILT[script] ? [BUILT[script]] : ['--import', 'tsx', script]), ...args], {
    cwd: root,
    env: { PATH: process.env.PATH, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  atEnd(() => void child.kill('SIGKILL'));
  const written = { stdout: '', stderr: '' };
  child.stdout.setEncoding('utf8').on('data', (text: string) => (written.stdout += text));
  child.stderr.setEncoding('utf8').on('data', (text: string) => (written.stderr += text));
  const said = async (text: string) => {
    while (!written.stdout.includes(text)) await once(child.stdout, 'data');
  };
  const ended = once(child, 'close').then(([code]) => ({ code, ...written }));
  return {
    ...{ written, said, ended },
    stop: () => void child.kill('SIGTERM'),
    kill: () => void child.kill('SIGKILL'),
  };
};

export const runScript = (script: string, ...args: string[]) => startScript(script, args).ended;
