import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { type Browser, chromium } from 'playwright-core';
import manifest from '../../package.json' with { type: 'json' };

const run = promisify(execFile);
const projectFolder = fileURLToPath(new URL('../../', import.meta.url));
const systemChromium = '/usr/bin/chromium';

/** `npm ci` empties node_modules, so an unpacked browser never outlives the package it came from. */
const unpackedFolder = `${projectFolder}node_modules/.cache/chromium-${manifest.devDependencies['@sparticuz/chromium']}`;

const flags = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/**
 * Only the fonts of the package: a page then has the same line breaks on every machine, and a bare one has no fonts.
 * Relative to the settings themselves, so that a project folder that is moved keeps them.
 */
const fontSettings = `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir prefix="relative">fonts</dir>
</fontconfig>
`;

/**
 * Unpacks in a child process, because the package unpacks into TMPDIR and decides by the environment whether to bring its
 * own copies of the libraries that a bare Debian lacks.
 */
const unpackInto = async (folder: string): Promise<void> => {
  await mkdir(folder, { recursive: true });
  const script = `import chromium from '@sparticuz/chromium'; await chromium.executablePath();`;
  const env = { ...process.env, TMPDIR: folder, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs22.x' };
  await run(process.execPath, ['--input-type=module', '--eval', script], { cwd: projectFolder, env });
  await writeFile(`${folder}/fonts.conf`, fontSettings);
};

/** Unpacks beside the final folder and renames: two test files that begin at once never see half a browser. */
const unpackOnce = async (): Promise<void> => {
  if (existsSync(unpackedFolder)) return;
  const own = `${unpackedFolder}.${process.pid}`;
  try {
    await unpackInto(own);
    await rename(own, unpackedFolder).catch((fault: unknown) => {
      if (!existsSync(unpackedFolder)) throw fault;
    });
  } finally {
    await rm(own, { recursive: true, force: true });
  }
};

const launchUnpacked = async (args: readonly string[]): Promise<Browser> => {
  await unpackOnce();
  const env = {
    ...process.env,
    LD_LIBRARY_PATH: [`${unpackedFolder}/al2023/lib`, process.env['LD_LIBRARY_PATH']].filter(Boolean).join(':'),
    FONTCONFIG_FILE: `${unpackedFolder}/fonts.conf`,
  };
  return chromium.launch({ executablePath: `${unpackedFolder}/chromium`, args: [...args], env });
};

/**
 * A headless Chromium: the system's where there is one, otherwise the one from the package. The caller closes it. `debugPort` is where
 * another program may drive it too.
 */
export const launchBrowser = (debugPort?: number): Promise<Browser> => {
  const args = debugPort === undefined ? flags : [...flags, `--remote-debugging-port=${debugPort}`];
  return existsSync(systemChromium) ? chromium.launch({ executablePath: systemChromium, args }) : launchUnpacked(args);
};
