import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { seedDemo } from '../../../db/demo/larch-row.ts';
import { addNotice } from '../../../db/stores/change-store.ts';
import { addGuesses, setTyped } from '../../../db/stores/figure-store.ts';
import { setHabits } from '../../../db/stores/habits-store.ts';
import { addPieceToMend } from '../../../db/stores/piece-to-mend-store.ts';
import { setUnits } from '../../../db/stores/units-store.ts';
import { minuteOf } from '../../../shared/time.ts';
import { readYardFile, type YardFile, yardFile } from '../../../shared/yard-file.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { type Compute, computeWithoutThread } from '../../../src/usecases/core/computations.ts';
import type { UseCaseContext } from '../../../src/usecases/core/context.ts';
import { exportArchive, exportYard } from '../../../src/usecases/files/export-file.ts';
import { exportTable } from '../../../src/usecases/files/export-table.ts';
import { fileText } from '../../../src/usecases/files/file-text.ts';
import { loadFile, readUpload, tryFile } from '../../../src/usecases/files/load-file.ts';
import { markMould } from '../../../src/usecases/moulds/mark-mould.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { writeLateWork } from '../../../src/usecases/today/write-late-work.ts';
import { demoSaturday } from '../../support/demo-saturday.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard, type YardKind } from '../../support/random-yard.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';
import { yardContext } from '../../support/yard-context.ts';

const NOW = '2027-04-05T07:30:00Z';

const demoContext = async (): Promise<UseCaseContext> => {
  const database = await temporaryDatabase();
  await database.write((tx) => seedDemo(tx, NOW.slice(0, 10), NOW));
  return { database, now: NOW };
};

/**
 * Plans each yard as if nothing had been planned before. To what is in files it does not matter, and one random yard after
 * another has the order numbers of the one before, for whose dates seconds would be searched.
 */
const fromNothing: Compute = (kind, question) =>
  computeWithoutThread(
    kind,
    (kind === 'quick plan' ? { yard: (question as { yard: YardFile }).yard } : question) as typeof question,
  );
const plainly: NonNullable<UseCaseContext['background']> = {
  planMade: () => {},
  improving: () => false,
  compute: fromNothing,
  computeForRequest: fromNothing,
};

const fileOf = (text: string, now: string) => {
  const read = readUpload(new TextEncoder().encode(text), now);
  if (!read.ok) throw new Error(JSON.stringify(read.faults.slice(0, 5)));
  return read.value;
};

const readIn = async (context: UseCaseContext, text: string): Promise<number> => {
  const outcome = await loadFile(context, fileOf(text, context.now));
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults.slice(0, 5)));
  return outcome.value.change;
};

const example = (): YardFile => {
  const read = readYardFile(
    JSON.parse(readFileSync(new URL('../../contract/example.yard.json', import.meta.url), 'utf8')),
  );
  if (!read.ok) throw new Error('the example has faults');
  return read.yard;
};

/** In the order of their clocks: no yard holds what is poured later than its now. */
const yardsOf = (kind: YardKind, count: number): YardFile[] =>
  yardSeeds(count, 1)
    .map((seed) => randomYard(seed, kind))
    .sort((a, b) => minuteOf(a.yard.now) - minuteOf(b.yard.now));

describe('a yard file, out, in and out again, is the same to the byte', () => {
  test('of the demo, over another yard', async () => {
    const text = (await exportYard(await demoContext())).text;
    const other = { ...(await yardContext()), now: NOW };
    await readIn(other, text);
    expect((await exportYard(other)).text).toBe(text);
  });

  test('of the example, over the demo, which undoing brings back', async () => {
    const yard = example();
    const context = { ...(await demoContext()), now: yard.yard.now };
    const before = (await exportYard(context)).text;
    const text = fileText(yardFile.parse(yard));
    const change = await readIn(context, text);
    expect((await exportYard(context)).text).toBe(text);
    expect((await undoChange(context, change)).ok).toBe(true);
    expect((await exportYard(context)).text).toBe(before);
  });

  test.each<YardKind>(['small', 'tight-rack', 'cold-spring', 'typical', 'odd'])(
    'of random yards, one over the other (%s)',
    { timeout: 60_000 },
    async (kind) => {
      const { database } = await yardContext();
      for (const yard of yardsOf(kind, 6)) {
        const context = { database, now: yard.yard.now, background: plainly };
        const text = fileText(yardFile.parse(yard));
        await readIn(context, text);
        expect((await exportYard(context)).text).toBe(text);
      }
    },
  );
});

/** The demo with a bit of everything that only an archive holds. */
const livedIn = async (): Promise<UseCaseContext> => {
  const context = await demoContext();
  const marked = await markMould(context, '600 no. 1', 'damaged', { note: 'Split', repairedOn: null, cameOut: 'good' });
  if (!marked.ok) throw new Error('not marked');
  await undoChange(context, marked.value.change);
  await markMould(context, '1200 no. 1', 'sealed', { note: '', repairedOn: null, cameOut: 'good' });
  await context.database.write(async (tx) => {
    await setUnits(tx, 'US');
    await setHabits(tx, { currency: 'USD', weekStart: 'SU' });
    await addGuesses(tx, [{ kind: 'mix', id: 'thin', figure: 'demouldMinutes' }]);
    await setTyped(tx, { kind: 'casting', id: 'panel-900', figure: 'kg' }, '29 3/4 lb');
    await addPieceToMend(tx, {
      ...{
        casting: 'panel-900',
        mould: '900 no. 1',
        filledAt: '2027-04-03T10:00:00Z',
        strippedAt: NOW,
        reason: 'crack',
      },
    });
    await addNotice(tx, { at: NOW, words: 'Tell Ann', change: marked.value.change });
  });
  return context;
};

describe('an archive', () => {
  test('goes in over a yard whose late work was written down, and that is undone', async () => {
    const { context, late } = await demoSaturday();
    await late('13:40');
    expect((await writeLateWork(context('13:45'))).ok).toBe(true);
    const before = (await exportArchive(context('13:47'))).text;
    const change = await readIn(context('13:47'), (await exportArchive(await livedIn())).text);
    expect((await undoChange(context('13:47'), change)).ok).toBe(true);
    const after = JSON.parse((await exportArchive(context('13:47'))).text);
    expect(fileText({ ...after, log: { ...after.log, changes: after.log.changes.slice(0, -1) } })).toBe(before);
  });

  /* In the middle of a session of which nothing is recorded, and after it. */
  test.each(['11:50', '15:30'])('brings what is not recorded at %s, and the same is asked about', async (clock) => {
    const day = await demoSaturday();
    const asked = async (context: UseCaseContext) => {
      const { late, begun, overdue } = await showToday(context);
      return {
        late: late.flatMap(({ lines }) => lines.map(({ name }) => name)),
        begun: begun.map(({ name }) => name),
        overdue,
      };
    };
    const before = await asked(day.context(clock));
    expect([...before.late, ...before.overdue].length).toBeGreaterThan(10);
    const { text } = await exportArchive(day.context(clock));
    const context = { database: await temporaryDatabase(), now: day.context(clock).now };
    await readIn(context, text);
    expect(await asked(context)).toEqual(before);
    const sizes = (all: string) =>
      Object.entries(JSON.parse(all).unanswered).map(([list, entries]) => [list, (entries as []).length]);
    expect(sizes((await exportArchive(context)).text)).toEqual(sizes(text));
    const recorded = async (one: UseCaseContext) => {
      if (clock > '14:00') expect((await writeLateWork(one)).ok).toBe(true);
      const { materials, inMould, moulds } = JSON.parse((await exportYard(one)).text);
      return { materials, inMould, moulds };
    };
    expect(await recorded(context)).toEqual(await recorded(day.context(clock)));
  });

  test('says where work that is not recorded names what is not there', async () => {
    const day = await demoSaturday();
    const file = JSON.parse((await exportArchive(day.context('11:50'))).text);
    file.unanswered.pours[0].mould = 'gone';
    const read = readUpload(new TextEncoder().encode(JSON.stringify(file)), day.context('11:50').now);
    expect(read.ok ? [] : read.faults).toEqual([
      { path: 'unanswered.pours[0].mould', message: 'there is no "gone" among the moulds' },
    ]);
  });

  test('goes in over another yard and comes out the same to the byte; undone, all is as it was', async () => {
    const text = (await exportArchive(await livedIn())).text;
    expect(JSON.parse(text).log.changes).toHaveLength(2);
    const other = { ...(await yardContext()), now: NOW };
    await markMould(other, '900 no. 1', 'damaged', { note: '', repairedOn: null, cameOut: null });
    const before = (await exportArchive(other)).text;
    const change = await readIn(other, text);
    expect((await exportArchive(other)).text).toBe(text);
    expect((await undoChange(other, change)).ok).toBe(true);
    const after = JSON.parse((await exportArchive(other)).text);
    const { undo, rest } = { undo: after.log.changes.at(-1), rest: after.log.changes.slice(0, -1) };
    expect(undo.words).toBe('Undone: Archive loaded');
    expect(fileText({ ...after, log: { ...after.log, changes: rest } })).toBe(before);
  });

  test('goes into a database that holds nothing', async () => {
    const text = (await exportArchive(await livedIn())).text;
    const context = { database: await temporaryDatabase(), now: NOW };
    await readIn(context, text);
    expect((await exportArchive(context)).text).toBe(text);
  });

  test.each<YardKind>(['small', 'typical', 'odd'])('of random yards (%s)', async (kind) => {
    const { database } = await yardContext();
    for (const yard of yardsOf(kind, 4)) {
      const context = { database, now: yard.yard.now, background: plainly };
      const one = { ...(await yardContext(yard)), background: plainly };
      const text = (await exportArchive(one)).text;
      await readIn(context, text);
      expect((await exportArchive(context)).text).toBe(text);
    }
  });

  test('says of what it refers to and does not have where that is', async () => {
    const file = JSON.parse((await exportArchive(await livedIn())).text);
    file.orders[0].customer = 99;
    file.customers[1].id = file.customers[0].id;
    file.log.changes[0].undoneBy = 7;
    file.log.notices[0].change = 8;
    file.guesses.push(file.guesses[0]);
    file.moulds[0].note = 3;
    file.toMend[0].casting = 'gone';
    const read = readUpload(new TextEncoder().encode(JSON.stringify(file)), NOW);
    const paths = read.ok ? [] : read.faults.map(({ path }) => path);
    expect(paths).toEqual(
      expect.arrayContaining([
        ...['orders[0].customer', 'customers[1].id', 'log.changes[0].undoneBy', 'log.notices[0].change'],
        ...['guesses[1]', 'moulds[0].note', 'toMend[0].casting'],
      ]),
    );
  });
});

describe('trying', () => {
  test('says what would change and whose days would move, and changes nothing', async () => {
    const context = await livedIn();
    const before = (await exportArchive(context)).text;
    const file = JSON.parse((await exportYard(context)).text);
    file.moulds = file.moulds.filter(({ id }: { id: string }) => !id.startsWith('900'));
    file.closed.push('2027-05-01');
    const tried = await tryFile(context, fileOf(JSON.stringify(file), NOW));
    if (!tried.ok) throw new Error(JSON.stringify(tried.faults));
    const of = (what: string) => tried.value.differences.find((one) => one.what === what);
    expect(of('Moulds')?.gone).toEqual(['900 no. 1', '900 no. 2', '900 no. 3'].filter((id) => before.includes(id)));
    expect(of('Days off')?.added).toEqual(['Sat 1 May 2027']);
    expect(tried.value.moved.length).toBeGreaterThan(0);
    expect((await exportArchive(context)).text).toBe(before);
  });
  test('sees what no figure shows: another order of a list, what hours are for', async () => {
    const context = await livedIn();
    const file = (await exportYard(context)).text;
    const differences = async (change: (yard: YardFile) => unknown) => {
      const yard: YardFile = JSON.parse(file);
      change(yard);
      const tried = await tryFile(context, fileOf(JSON.stringify(yard), NOW));
      return tried.ok ? tried.value.differences.map(({ what, added, gone }) => [what, added, gone]) : tried.faults;
    };
    expect(await differences(({ moulds }) => moulds.reverse())).toEqual([['Lists', [], []]]);
    const only = await differences(({ work }) => {
      if (work[0]) work[0].allows = ['prep', 'strip'];
    });
    expect(only).toEqual([
      [
        'Hours',
        [expect.stringMatching(/^Sat, .*, only setting up, stripping, from Sat /)],
        [expect.stringMatching(/^Sat, /)],
      ],
    ]);
  });
});

describe('a CSV', () => {
  test.each(['orders', 'moulds', 'stock'] as const)(
    'of %s says what is there, whichever way it writes numbers',
    async (kind) => {
      for (const seed of yardSeeds(4, 1)) {
        const yard = randomYard(seed, seed % 2 ? 'typical' : 'odd');
        const context = { ...(await yardContext(yard)), background: plainly };
        for (const sign of ['points', 'commas'] as const) {
          const { text } = await exportTable(context, kind, sign);
          const read = readUpload(new TextEncoder().encode(text), context.now);
          if (!read.ok) {
            expect(read.faults[0]?.message).toMatch(/no row under them/);
            continue;
          }
          const tried = await tryFile(context, read.value);
          expect(tried.ok ? tried.value.differences : tried.faults).toEqual([
            { path: 'same', message: expect.stringContaining('nothing to load') },
          ]);
        }
      }
    },
  );

  test('that would leave a yard no plan can be made of is refused', async () => {
    const context = await demoContext();
    const file = fileOf('mould,makes,set for\nNew one,Panel 900,Panel 1200\n', NOW);
    const tried = await tryFile(context, file);
    expect(tried).toEqual({
      ok: false,
      faults: [{ path: 'row 2, column set for', message: 'is not among what the mould makes' }],
    });
  });

  test('of moulds changes those that are there, adds the others and takes none away', async () => {
    const context = await demoContext();
    const before: YardFile = JSON.parse((await exportYard(context)).text);
    await readIn(
      context,
      'MOULD\tMakes\tCondition\tturns since sealing coat\tnote\n900 no. 1\tPanel 900; Panel 600 (12)\tdamaged\t4\tRail\n=cmd\tpanel-600\t\t\t\n',
    );
    const after: YardFile = JSON.parse((await exportYard(context)).text);
    expect(after.moulds).toHaveLength(before.moulds.length + 1);
    expect(after.moulds.find(({ id }) => id === '900 no. 1')).toMatchObject({
      makes: [
        { casting: 'panel-900', changeMinutes: 0 },
        { casting: 'panel-600', changeMinutes: 12 },
      ],
      ...{ setFor: 'panel-900', condition: 'damaged', turnsSinceOil: 4, prepped: false },
    });
    expect(after.moulds.at(-1)).toMatchObject({
      id: '=cmd',
      setFor: 'panel-600',
      condition: 'ready',
      turnsSinceOil: 0,
    });
    expect((await exportTable(context, 'moulds', 'points')).text).toContain(
      "\r\n'=cmd,Panel 600,Panel 600,clean,0,,\r\n",
    );
  });

  test('of stock counts in the unit of the row, keeps what it has no column for, and names what it cannot read', async () => {
    const context = await demoContext();
    const before: YardFile = JSON.parse((await exportYard(context)).text);
    const first = before.materials[0];
    await readIn(
      context,
      `material;unit;in the yard;price\n${first?.name};${first?.unit};7,5;\nCoarse sand;kg;2 lb;0,4\n`,
    );
    const after: YardFile = JSON.parse((await exportYard(context)).text);
    const { unitPrice: _price, ...rest } = first ?? {};
    expect(after.materials[0]).toEqual({ ...rest, onHand: 7.5 });
    expect(after.materials.at(-1)).toMatchObject({
      id: 'coarse-sand',
      unit: 'kg',
      onHand: 0.90718474,
      unitPrice: 0.4,
      pack: 1,
    });
    const wrong = fileOf('material,unit,in the yard,pack\nCoarse sand,bag,1,0\nGravel,,,1\nCoarse sand,kg,2,1\n', NOW);
    const tried = await tryFile(context, wrong);
    expect(tried.ok ? [] : tried.faults.map(({ path }) => path)).toEqual([
      ...['row 2, column unit', 'row 2, column pack', 'row 3, column unit', 'row 3, column in the yard'],
      'row 4, column material',
    ]);
  });

  test('of orders: numbers that are known are changed, new ones are given, past and packed ones are left alone', async () => {
    const context = await demoContext();
    const { orders } = JSON.parse((await exportArchive(context)).text);
    const past = orders.find(({ status }: { status: string }) => status === 'handed over').id;
    const open = orders.find(
      ({ status, promisedOn }: { status: string; promisedOn?: string }) => status === 'open' && promisedOn,
    );
    const wrong = `order,asked for\n${past},1 x Planter\n${open.id},\n${open.id},1 x Planter\n`;
    const tried = await tryFile(context, fileOf(wrong, NOW));
    expect(tried.ok ? [] : tried.faults).toEqual([
      { path: 'row 2, column order', message: `${past} is handed over. Only open orders are changed` },
      { path: 'row 3, column asked for', message: 'say how many of what, as in 2 x Planter' },
      { path: 'row 4, column order', message: `${open.id} is there twice` },
    ]);
    await readIn(context, `order,note,promised\n${open.id},Ring first,2027-06-12\n`);
    const after = JSON.parse((await exportArchive(context)).text).orders;
    expect(after.find(({ id }: { id: string }) => id === open.id)).toEqual({
      ...open,
      note: 'Ring first',
      promisedOn: '2027-06-12',
    });
    expect(after).toHaveLength(orders.length);
  });
});
