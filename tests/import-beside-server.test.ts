import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { startScript } from './support/run-script.ts';
import { textOf } from './support/screens.ts';
import { temporaryFolder } from './support/temporary-folder.ts';

/** The server and each command start from their sources, which takes a busy machine a while. */
const PATIENCE_MS = 180_000;

test('what a command reads in while the server runs shows at once, and both go on writing', {
  timeout: PATIENCE_MS,
}, async () => {
  const folder = temporaryFolder();
  const env = { DATABASE_URL: `file:${join(folder, 'yard.db')}`, PORT: '0' };
  const server = startScript('src/main.ts', [], env);
  await server.said('Mould Rota is at http://127.0.0.1:');
  const address = /http:\S+/.exec(server.written.stdout)?.[0] ?? '';
  const get = (path: string) => fetch(`${address}${path}`);
  const rota = (...args: string[]) => startScript('src/cli.ts', args, env).ended;
  expect(await textOf(await get('/moulds'))).toContain('450 no. 1');

  const yard = JSON.parse((await rota('export')).stdout);
  const without = {
    ...yard,
    yard: { ...yard.yard, name: 'Hazel Lane' },
    moulds: yard.moulds.filter(({ id }: { id: string }) => !id.startsWith('450')),
    inMould: yard.inMould.filter(({ mould }: { mould: string }) => !mould.startsWith('450')),
  };
  const file = join(folder, 'without.yard.json');
  writeFileSync(file, JSON.stringify(without));
  // Pages go on being asked for while it is read in.
  const [imported, ...pages] = await Promise.all([
    rota('import', file),
    ...['/', '/today', '/orders', '/buying', '/turns'].map(get),
  ]);
  expect(imported).toMatchObject({ code: 0, stderr: '', stdout: expect.stringMatching(/All of it is loaded\.\n$/) });
  expect(pages.map(({ status }) => status)).toEqual([200, 200, 200, 200, 200]);

  for (const path of ['/', '/today', '/orders', '/moulds', '/buying', '/turns', '/yard', '/changes']) {
    const answer = await get(path);
    expect([path, answer.status]).toEqual([path, 200]);
    expect(await answer.text()).toContain('Hazel Lane');
  }
  expect(await textOf(await get('/moulds'))).not.toContain('450 no. 1');
  expect(await textOf(await get('/changes'))).toContain('Yard file loaded. Undo');

  // Both go on writing: a count by a page, then a list by a command, then a page once more.
  const count = (counted: string) =>
    fetch(`${address}/buying/counted`, {
      method: 'POST',
      redirect: 'manual',
      headers: { Origin: address },
      body: new URLSearchParams({ material: 'citric-acid', counted, line: '3' }),
    });
  expect((await count('650')).status).toBe(303);
  const list = join(folder, 'stock.csv');
  writeFileSync(list, 'material,unit,in the yard\nCitric acid,g,640\n');
  expect((await rota('import', list)).code).toBe(0);
  expect(await textOf(await get('/buying'))).toContain('640 g in the yard');
  expect((await count('630')).status).toBe(303);
  expect(await textOf(await get('/buying'))).toContain('630 g in the yard');

  server.stop();
  expect(await server.ended).toMatchObject({ code: 0, stderr: '' });
});
