import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readOrderFor } from '../shared/order-file.ts';
import { readYardFile, type YardFile } from '../shared/yard-file.ts';
import { quoteOrder } from '../src/engine/quote/quote.ts';
import { refereePlan } from '../src/engine/referee.ts';
import { planInFile, readPlanBeside } from '../src/plan-beside.ts';
import { undoChange } from '../src/usecases/changes/undo-change.ts';
import { computeWithoutThread } from '../src/usecases/core/computations.ts';
import type { UseCaseContext } from '../src/usecases/core/context.ts';
import { askWhen } from '../src/usecases/first/ask-when.ts';
import { markMould } from '../src/usecases/moulds/mark-mould.ts';
import { planToAsk } from '../src/usecases/plan/plan-to-ask.ts';
import { audit } from './contract/audit-plan.mjs';
import { doneOf } from './support/outcomes.ts';
import { randomYard } from './support/random-yard.ts';
import { runScript } from './support/run-script.ts';
import { smallYard } from './support/small-yard.ts';
import { temporaryFolder } from './support/temporary-folder.ts';
import { yardContext } from './support/yard-context.ts';

const example = (): YardFile => {
  const read = readYardFile(JSON.parse(readFileSync('tests/contract/example.yard.json', 'utf8')));
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.yard;
};

/** Two of the first piece that a mould of the yard makes. */
const lineOf = (yard: YardFile) => ({ casting: yard.moulds[0]!.makes[0]!.casting, quantity: 2 });

const dates = ({
  earliestOn,
  promiseOn,
  ifFirstOn,
}: Record<'earliestOn' | 'promiseOn' | 'ifFirstOn', string | null>) => ({
  earliestOn,
  promiseOn,
  ifFirstOn,
});

/** Threads that do it here, and at once: a longer search is over before anybody asks again. */
const atOnce: NonNullable<UseCaseContext['background']> = {
  planMade: () => {},
  improving: () => false,
  compute: computeWithoutThread,
  computeForRequest: computeWithoutThread,
  ponder: computeWithoutThread,
};

/** What the page answers; the files of the yard and the plan that it was asked beside; and what is answered to those. */
const asked = async (context: UseCaseContext, line: ReturnType<typeof lineOf>) => {
  // Asked once more when the longer search is over, as a page does that was left alone.
  await askWhen({ ...context, background: atOnce }, [{ row: 0, line }]);
  await new Promise((resolve) => setImmediate(resolve));
  const answer = doneOf(await askWhen({ ...context, background: atOnce }, [{ row: 0, line }]));
  expect(answer.isLooking).toBe(false);
  const page = dates(answer);
  const { yard, plan, memory } = await planToAsk(context);
  const files = { yard: JSON.stringify(yard), plan: JSON.stringify({ ...plan, memory }) };
  const read = readYardFile(JSON.parse(files.yard));
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const order = readOrderFor(read.yard, { id: 'asked', lines: [line] });
  const beside = readPlanBeside(read.yard, JSON.parse(files.plan));
  if (!order.ok || !beside.ok) throw new Error(JSON.stringify([order, beside]));
  return { page, command: dates(quoteOrder(read.yard, order.order, { ...beside.value, longer: 'look' })), files };
};

describe('an order asked about beside a plan', () => {
  it('is answered by page and command line alike, twice, and after a change that was undone', {
    timeout: 120_000,
  }, async () => {
    const yards = [smallYard(), ...[3, 7, 11].map((seed) => randomYard(seed, 'small'))];
    for (const [i, yard] of yards.entries()) {
      const context = await yardContext(yard);
      const line = lineOf(yard);
      const first = await asked(context, line);
      expect(first.command, `yard ${i}`).toEqual(first.page);
      expect(await asked(context, line), `yard ${i}`).toEqual(first);
      const mould = yard.moulds.find(({ condition }) => condition === 'ready' || condition === 'dirty')!;
      const { change } = doneOf(
        await markMould(context, mould.id, 'damaged', { note: '', repairedOn: null, cameOut: 'good' }),
      );
      doneOf(await undoChange(context, change));
      const again = await asked(context, line);
      expect([again.page, again.command], `yard ${i}`).toEqual([first.page, first.page]);
    }
  });

  it('is answered by the command line from the files alone', { timeout: 60_000 }, async () => {
    const yard = example();
    const context = await yardContext(yard);
    const { page, files } = await asked(context, lineOf(yard));
    const folder = temporaryFolder();
    const path = (name: string, text: string): string => {
      writeFileSync(join(folder, name), text);
      return join(folder, name);
    };
    const order = path('order', JSON.stringify({ id: 'asked', lines: [lineOf(yard)] }));
    const names = ['quote', path('yard', files.yard), '--order', order, '--beside', path('plan', files.plan)];
    const { code, stdout, stderr } = await runScript('src/cli.ts', ...names);
    expect([code, stderr]).toEqual([0, '']);
    expect(dates(JSON.parse(stdout))).toEqual(page);
  });
});

describe('the file of a plan', () => {
  it('has how the plan was come by, and is read with it', () => {
    const plan = planInFile(smallYard(), 'quick');
    const read = readPlanBeside(smallYard(), JSON.parse(JSON.stringify(plan)));
    expect(read).toMatchObject({ ok: true, value: { memory: plan.memory, standing: { batches: plan.batches } } });
  });

  it('says of each order the day before which no plan completes it, which is proven where it is its own', () => {
    let proven = 0;
    for (let seed = 0; seed < 25; seed++) {
      const yard = randomYard(seed);
      const plan = planInFile(yard, 'quick');
      expect([...audit(yard, plan).faults, ...refereePlan(yard, plan)], `seed ${seed}`).toEqual([]);
      proven += plan.orders.filter(({ completesOn, soonestOn }) => completesOn === soonestOn).length;
    }
    expect(proven).toBeGreaterThan(10);
    // One panel to set up, mix, fill and strip is ready on the first Saturday, and nothing is sooner.
    const one = smallYard({ orders: [{ id: 'one', weight: 1, lines: [{ casting: 'panel-900', quantity: 1 }] }] });
    expect(planInFile(one, 'quick').orders[0]).toMatchObject({ completesOn: '2027-04-10', soonestOn: '2027-04-10' });
  });

  it('is refused where it is none, or names what the yard has not, by the path in it', () => {
    const plan = planInFile(smallYard(), 'quick');
    const [pour, ...pours] = plan.pours;
    const faults = (input: unknown) => {
      const read = readPlanBeside(smallYard(), input);
      return read.ok ? [] : read.faults;
    };
    expect(faults({ ...plan, pours: [{ ...pour, mould: 'x' }, ...pours] })).toContainEqual({
      path: 'pours[0].mould',
      message: 'no mould named "x"',
    });
    expect(faults({ ...plan, memory: { sequence: ['a', 'a'], choices: {}, inShift: [] } })).toEqual([
      { path: 'memory.sequence', message: 'names an order twice' },
    ]);
    expect(faults({ format: 'mould-rota/yard' })).toContainEqual({
      path: 'format',
      message: 'has to be "mould-rota/plan"',
    });
  });

  it('keeps to our own choices where it has others', () => {
    const plan = planInFile(smallYard(), 'quick');
    const choices = { leastFill: true, unheardOf: 3, waitMinutes: 15 };
    const read = readPlanBeside(smallYard(), { ...plan, memory: { ...plan.memory!, choices } });
    const known = read.ok ? read.value.memory!.choices : null;
    expect(known).toMatchObject({ leastFill: 0.6, waitMinutes: 15 });
    expect(known).not.toHaveProperty('unheardOf');
  });
});
