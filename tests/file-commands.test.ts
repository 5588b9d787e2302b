import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createClient } from '@libsql/client';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { seedDemo } from '../db/demo/larch-row.ts';
import { openDatabase } from '../db/open.ts';
import { setKept } from '../db/stores/kept-ready-store.ts';
import { replaceYard } from '../db/stores/replace-yard.ts';
import { startScript } from './support/run-script.ts';
import { smallYard } from './support/small-yard.ts';
import { temporaryFolder } from './support/temporary-folder.ts';

/** As it was written, less what was in its moulds: by the clock of this machine that is still to come. */
const example = JSON.stringify({
  ...JSON.parse(readFileSync(new URL('./contract/example.yard.json', import.meta.url), 'utf8')),
  inMould: [],
});

const databaseIn = (folder: string) => `file:${join(folder, 'yard.db')}`;

const rotaIn = (folder: string, atEnd?: (end: () => void) => void) => ({
  run: (...args: string[]) => startScript('src/cli.ts', args, { DATABASE_URL: databaseIn(folder) }, atEnd).ended,
  file: (name: string, content: string | Uint8Array): string => {
    const path = join(folder, name);
    writeFileSync(path, content);
    return path;
  },
});

/** Every command is a process of its own, and a busy machine starts them slowly. */
const PATIENCE_MS = 120_000;

describe('rota import and rota export', { timeout: PATIENCE_MS }, () => {
  /** Waits for a database that somebody else holds, for as long as it will, while the other tests are at work. */
  let waiting: Promise<{ code: number | null; stdout: string; stderr: string }>;
  let letGo: () => Promise<void>;
  const held = mkdtempSync(join(tmpdir(), 'yard-'));
  const ends: (() => void)[] = [];

  beforeAll(async () => {
    const { run, file } = rotaIn(held, (end) => ends.push(end));
    const yard = file('example.yard.json', example);
    expect((await run('import', yard)).code).toBe(0);
    const other = createClient({ url: databaseIn(held) });
    const writing = await other.transaction('write');
    letGo = async () => {
      await writing.rollback();
      other.close();
    };
    waiting = run('import', yard);
  }, PATIENCE_MS);
  afterAll(() => {
    for (const end of ends) end();
    rmSync(held, { recursive: true, force: true });
  });

  test('a yard goes in and comes out, an archive goes on to another database and comes out the same', async () => {
    const [one, other] = [rotaIn(temporaryFolder()), rotaIn(temporaryFolder())];
    const yard = one.file('example.yard.json', example);
    const tried = await one.run('import', yard, '--try');
    expect([tried.code, tried.stderr]).toEqual([0, '']);
    expect(tried.stdout).toMatch(/^Orders: new: .*\n[\s\S]*Nothing was loaded\.\n$/);
    expect((await one.run('export')).stderr).toBe('DATABASE_URL: the database holds no yard\n');
    expect((await one.run('import', yard)).stdout).toMatch(/All of it is loaded\.\n$/);
    const out = JSON.parse((await one.run('export')).stdout);
    expect(out.moulds.map(({ id }: { id: string }) => id)).toEqual(
      JSON.parse(example).moulds.map(({ id }: { id: string }) => id),
    );
    const archive = (await one.run('export', '--archive')).stdout;
    expect((await other.run('import', other.file('a.archive.json', archive))).code).toBe(0);
    const now = (text: string) => text.replace(/"now": "[^"]+"/, '"now": ""');
    expect(now((await other.run('export', '--archive')).stdout)).toBe(now(archive));
    expect((await other.run('import', other.file('a.archive.json', archive))).stdout).toMatch(/nothing to load\.\n$/);
  });

  test('faults are a line each on standard error, and nothing is written', async () => {
    const folder = temporaryFolder();
    const { run, file } = rotaIn(folder);
    const database = await openDatabase({ url: databaseIn(folder) });
    const now = new Date().toISOString();
    await database.write((tx) => seedDemo(tx, now.slice(0, 10), `${now.slice(0, 16)}:00Z`));
    await database.close();
    const before = (await run('export', '--csv', 'stock')).stdout;
    const csv = await run(
      'import',
      file('s.csv', 'material,unit,in the yard\nNew sand,kg,-2\nFast-setting mortar 25 kg,bag,x\n'),
    );
    expect([csv.code, csv.stdout]).toEqual([2, '']);
    expect(csv.stderr).toMatch(
      /^row 2, column in the yard: -2 is below 0\nrow 3, column in the yard: "x" is no number/,
    );
    const orders = file('o.csv', `order,asked for,promised\n,9 x Herb square 450 x 450,${now.slice(0, 10)}\n`);
    expect((await run('import', orders, '--try')).stdout).toMatch(
      new RegExp(
        `\\nNot kept: \\d\\d-\\d+: promised ${now.slice(0, 10)}, by plan \\d{4}-\\d\\d-\\d\\d\\nNothing was loaded`,
      ),
    );
    const broken = await run('import', file('b.json', '{"format": "mould-rota/yard"'));
    expect([broken.code, broken.stderr]).toEqual([
      2,
      'file: The file breaks off before its end: part of it is missing. Get it once more, whole.\n',
    ]);
    const faulty = await run('import', file('f.json', '{"format": "mould-rota/yard", "version": 1}'));
    expect(faulty.stderr.split('\n')).toContain('moulds: is missing');
    expect((await run('import', 'none.json')).stderr).toBe('file: there is no file "none.json"\n');
    expect((await run('export', '--csv', 'stock')).stdout).toBe(before);
  });

  test('wrong use is said, and how to use it', async () => {
    const { run } = rotaIn(temporaryFolder());
    for (const args of [['import'], ['export', 'file'], ['export', '--try'], ['export', '--csv', 'kits']]) {
      const { code, stderr } = await run(...args);
      expect(code).toBe(2);
      expect(stderr).toMatch(/^command: [^\n]+\n$/);
    }
  });

  test('a database that another process keeps to itself is waited for, and then given up in words', async () => {
    const { code, stdout, stderr } = await waiting;
    await letGo();
    expect([code, stdout, stderr]).toEqual([
      ...[2, ''],
      'DATABASE_URL: another process has been writing to the database all this while; nothing was changed, so try again later\n',
    ]);
    expect((await rotaIn(held).run('export')).code).toBe(0);
  });
});

test('rota plan without a file plans the yard of the database, with what is kept ready there', async () => {
  const folder = temporaryFolder();
  const database = await openDatabase({ url: databaseIn(folder) });
  await database.write(async (tx) => {
    await replaceYard(tx, smallYard({ inMould: [] }));
    await setKept(tx, { casting: 'panel-900', count: 3 });
  });
  await database.close();
  const { stdout, stderr } = await rotaIn(folder).run('plan', '--effort', 'quick');
  expect(stderr).toBe('');
  const { pours } = JSON.parse(stdout) as { pours: { order?: string }[] };
  expect(pours.filter(({ order }) => order === undefined)).toHaveLength(3);
}, 120_000);
