import { existsSync, readdirSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const project = fileURLToPath(new URL('../', import.meta.url));
const built = `${project}dist/main.js`;

const LOOK_MS = 300;

const SOURCES = ['src', 'shared', 'db', 'views', 'package.json'];

const changedAt = (path) => {
  const { isDirectory, mtimeMs } = ((stat) => ({ isDirectory: stat.isDirectory(), mtimeMs: stat.mtimeMs }))(
    statSync(path),
  );
  return isDirectory ? Math.max(mtimeMs, ...readdirSync(path).map((name) => changedAt(`${path}/${name}`))) : mtimeMs;
};

/** Sources that are not there were left out where it was installed: what is built is all there is. */
const isOld = () =>
  Math.max(...SOURCES.filter((name) => existsSync(project + name)).map((name) => changedAt(project + name))) >
  statSync(built).mtimeMs;

/** npm passes a signal on to the shell between the two, which ends and leaves the server behind: whoever ended npm meant it. */
const endWithShell = () => {
  const shell = process.ppid;
  const looking = setInterval(() => process.ppid !== shell && process.kill(process.pid, 'SIGTERM'), LOOK_MS);
  process.once('SIGTERM', () => clearInterval(looking));
  looking.unref();
};

if (process.env.npm_lifecycle_event === 'start') endWithShell();
// In this very process, so that a signal to it is one to the server.
if (!existsSync(built) || isOld()) await import('./build.mjs');
await import('../dist/main.js');
