import { cpSync, existsSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { basename } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const project = fileURLToPath(new URL('../', import.meta.url));

/** The server, the command line, and every worker beside them: a worker is loaded by its address and so needs its own bundle. */
const entries = [
  ...readdirSync(`${project}src`)
    .filter((name) => /^(main|cli|(.+-)?worker)\.ts$/.test(name))
    .map((name) => `src/${name}`),
  'db/replica/replica-worker.ts',
];

/** Built beside it and put in its place whole: of two that build at once nobody runs half of it. */
const dist = `${project}dist`;
const own = `${dist}.${process.pid}`;

await build({
  absWorkingDir: project,
  entryPoints: entries.map((path) => ({ in: path, out: basename(path, '.ts') })),
  outdir: own,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  packages: 'external',
  tsconfig: 'tsconfig.json',
  logLevel: 'warning',
});

/** What pages are drawn with, without what only people read; beside the server, which looks for it there first. */
const assets = `${project}views/assets`;
cpSync(assets, `${own}/assets`, { recursive: true });
await build({
  absWorkingDir: project,
  entryPoints: readdirSync(assets)
    .filter((name) => /\.(css|js)$/.test(name))
    .map((name) => `views/assets/${name}`),
  outdir: `${own}/assets`,
  minify: true,
  target: 'es2022',
  logLevel: 'warning',
});

rmSync(dist, { recursive: true, force: true });
try {
  renameSync(own, dist);
} catch (error) {
  // Somebody else put theirs there meanwhile, of the same sources.
  rmSync(own, { recursive: true, force: true });
  if (!existsSync(dist)) throw error;
}
