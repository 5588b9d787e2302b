import { existsSync, readdirSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const project = fileURLToPath(new URL('../', import.meta.url));
const built = `${project}dist/main.js`;

const SOURCES = ['src', 'shared', 'db', 'views', 'package.json'];

const changedAt = (path) => {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(stat.mtimeMs, ...readdirSync(path).map((name) => changedAt(`${path}/${name}`)));
};

/** Sources that are not there were left out where it was installed: what is built is all there is. */
const isOld = () =>
  Math.max(...SOURCES.filter((name) => existsSync(project + name)).map((name) => changedAt(project + name))) >
  statSync(built).mtimeMs;

/** Without what builds it, left out where only the program is installed, what is built is all there is. */
const orAsItIs = (error) => {
  if (error.code !== 'ERR_MODULE_NOT_FOUND') throw error;
  if (existsSync(built)) return;
  process.stderr.write('The program is not built yet: run "npm ci" and "npm run build" first.\n');
  process.exit(1);
};

/** Builds the program where it is not built yet, or its sources are newer. */
export const buildWhenOld = async () => {
  if (!existsSync(built) || isOld()) await import('./build.mjs').catch(orAsItIs);
};
