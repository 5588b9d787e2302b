import { cpSync, readdirSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const project = fileURLToPath(new URL('../', import.meta.url));

/** The server, and every worker beside it: a worker is loaded by its address and so needs a bundle of its own. */
const entries = readdirSync(`${project}src`).filter((name) => /^(main|(.+-)?worker)\.ts$/.test(name));

rmSync(`${project}dist`, { recursive: true, force: true });

await build({
  absWorkingDir: project,
  entryPoints: entries.map((name) => `src/${name}`),
  outdir: 'dist',
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
cpSync(assets, `${project}dist/assets`, { recursive: true });
await build({
  absWorkingDir: project,
  entryPoints: readdirSync(assets)
    .filter((name) => /\.(css|js)$/.test(name))
    .map((name) => `views/assets/${name}`),
  outdir: 'dist/assets',
  minify: true,
  target: 'es2022',
  logLevel: 'warning',
});
