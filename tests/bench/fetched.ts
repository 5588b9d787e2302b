import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const FOLDER = fileURLToPath(new URL('../../node_modules/.cache/bench', import.meta.url));

/**
 * The folder of a package of the npm registry that only a bench needs, fetched once: too large, or too fond of a newer Node,
 * to be among what every `npm ci` installs. Its scripts are not run.
 */
export const fetched = (name: string, version: string): string => {
  const folder = `${FOLDER}/${name}-${version}`;
  if (!existsSync(folder)) {
    const own = `${folder}.${process.pid}`;
    mkdirSync(own, { recursive: true });
    try {
      const install = ['install', '--prefix', own, '--no-save', '--no-audit', '--no-fund', '--ignore-scripts'];
      execFileSync('npm', [...install, `${name}@${version}`], { stdio: ['ignore', 'ignore', 'inherit'] });
      renameSync(own, folder);
    } finally {
      rmSync(own, { recursive: true, force: true });
    }
  }
  return `${folder}/node_modules/${name}`;
};
