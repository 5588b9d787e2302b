import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { planWithMemory, planYard } from '../src/engine/plan.ts';
import { quoteOrder } from '../src/engine/quote/quote.ts';
import { keepOfPlan } from '../src/engine/standing/keep-of-plan.ts';
import { runScript } from './support/run-script.ts';
import { smallYard } from './support/small-yard.ts';
import { temporaryFolder } from './support/temporary-folder.ts';

const rota = (...args: string[]) => runScript('src/cli.ts', ...args);

const order = { id: 'new', lines: [{ kit: 'pair', quantity: 1 }] };

/** A folder with files of this content, and the path of each. */
const files = <N extends string>(contents: Record<N, unknown>): Record<N, string> => {
  const folder = temporaryFolder();
  const write = ([name, content]: [string, unknown]) => {
    const path = join(folder, name);
    writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
    return [name, path];
  };
  return Object.fromEntries(Object.entries(contents).map(write)) as Record<N, string>;
};

describe('rota plan', () => {
  test('writes the plan file and nothing else', async () => {
    const { yard } = files({ yard: smallYard() });
    const { code, stdout, stderr } = await rota('plan', yard, '--effort', 'quick');
    expect([code, stderr]).toEqual([0, '']);
    const { memory, ...plan } = JSON.parse(stdout);
    const { orders, ...rest } = JSON.parse(JSON.stringify(planYard(smallYard(), { effort: 'quick' })));
    expect(plan).toEqual({ ...rest, orders: orders.map((one: object) => ({ ...one, soonestOn: '2027-04-10' })) });
    expect(memory.sequence).toEqual(smallYard().orders.map(({ id }) => id));
  });

  test('pours what is to stand ready behind all orders, and says what of it is not there', async () => {
    const { yard } = files({ yard: smallYard() });
    const [plain, ready, wrong] = await Promise.all([
      rota('plan', yard, '--effort', 'quick'),
      rota('plan', yard, '--effort', 'quick', '--ready', 'kit:pair=1', '--ready', 'casting:panel-900=1'),
      rota('plan', yard, '--ready', 'kit:trough=1', '--ready', 'pair'),
    ]);
    const [without, behind] = [plain, ready].map(({ stdout }) => JSON.parse(stdout));
    expect(behind.orders).toEqual(without.orders);
    expect(behind.pours.length - without.pours.length).toBe(3);
    expect([wrong.code, wrong.stdout]).toEqual([2, '']);
    expect(wrong.stderr.trimEnd().split('\n')).toEqual([
      'ready[0]: no kit named "trough"',
      'ready[1]: "pair" is not written as kit:ID=COUNT or casting:ID=COUNT',
    ]);
  });

  test('says every fault of the yard file on a line of its own, beginning with its path', async () => {
    const [first, ...others] = smallYard().moulds;
    const { yard } = files({
      yard: { ...smallYard(), moulds: [{ ...first, setFor: 'x' }, ...others], closed: ['2027-02-30'] },
    });
    const { code, stdout, stderr } = await rota('plan', yard);
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr.trimEnd().split('\n').sort()).toEqual([
      'closed[0]: is no date that exists (YYYY-MM-DD)',
      'moulds[0].setFor: no casting named "x"',
    ]);
  });

  test('says what is wrong with a file that is no JSON, cannot be read or is not there', async () => {
    const { broken } = files({ broken: '{\n"format": ' });
    const folder = temporaryFolder();
    mkdirSync(join(folder, 'sub'));
    const results = await Promise.all([
      rota('plan', broken),
      rota('plan', folder),
      rota('plan', join(folder, 'none.json')),
    ]);
    expect(results.map(({ code, stdout }) => [code, stdout])).toEqual([2, 2, 2].map((code) => [code, '']));
    const lines = results.map(({ stderr }) => stderr.trimEnd().split('\n'));
    expect(lines.map(({ length }) => length)).toEqual([1, 1, 1]);
    expect(lines[0]?.[0]).toMatch(/^file: .*broken" is no JSON/);
    expect(lines[1]?.[0]).toMatch(/^file: .* cannot be read/);
    expect(lines[2]?.[0]).toMatch(/^file: there is no file /);
  });
});

describe('rota quote', () => {
  test('writes when the order could be ready', async () => {
    const paths = files({ yard: smallYard(), order: { ...order, due: '2027-04-10' } });
    const { code, stdout, stderr } = await rota('quote', paths.yard, '--order', paths.order, '--effort', 'quick');
    expect([code, stderr]).toEqual([0, '']);
    const { plan, memory } = planWithMemory(smallYard(), { effort: 'quick' });
    const from = { limits: true, memory, standing: keepOfPlan(plan) };
    const answer = JSON.stringify(quoteOrder(smallYard(), { ...order, weight: 1 }, { ...from, longer: 'look' }));
    expect(JSON.parse(stdout)).toEqual(JSON.parse(answer));
    const written = files({ plan: (await rota('plan', paths.yard, '--effort', 'quick')).stdout });
    expect((await rota('quote', paths.yard, '--order', paths.order, '--beside', written.plan)).stdout).toBe(stdout);
  });

  test('says the faults of the order file by their paths in it, and of two missing files both', async () => {
    const paths = files({ yard: smallYard(), order: { id: '27-001', lines: [{ kit: 'none', quantity: 1 }] } });
    const wrong = await rota('quote', paths.yard, '--order', paths.order);
    expect(wrong).toMatchObject({ code: 2, stdout: '' });
    expect(wrong.stderr).toBe('id: "27-001" is given twice\nlines[0].kit: no kit named "none"\n');
    const missing = await rota('quote', 'none.json', '--order', 'nor-this.json');
    expect(missing.stderr).toBe('file: there is no file "none.json"\nfile: there is no file "nor-this.json"\n');
  });
});

test('wrong use is answered with one line that says how to use it', async () => {
  const uses = [
    [],
    ['paint', 'yard.json'],
    ['plan', 'a', 'b'],
    ['plan', 'a', '--effort', 'some'],
    ['quote', 'a'],
    ['plan', 'a', '--beside', 'b'],
    ['--colour'],
  ];
  for (const { code, stdout, stderr } of await Promise.all(uses.map((args) => rota(...args)))) {
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(/^command: [^\n]+ Use: rota plan \[YARD\.json\][^\n]+\n$/);
  }
});

test('asked for help it says all of its commands, one a line', async () => {
  const asked = await Promise.all([rota('--help'), rota('help')]);
  for (const { code, stdout, stderr } of asked) {
    expect([code, stderr]).toEqual([0, '']);
    expect(stdout.split('\n').map((line) => line.split(' ').slice(0, 2).join(' '))).toEqual(
      ['plan', 'quote', 'owner', 'backup', 'verify', 'restore', 'export', 'import']
        .map((name) => `rota ${name}`)
        .concat(''),
    );
  }
});
