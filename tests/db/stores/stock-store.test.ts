import { describe, expect, test } from 'vitest';
import type { Tx } from '../../../db/open.ts';
import { applyArchive } from '../../../db/stores/apply-archive.ts';
import { applyYardFile } from '../../../db/stores/apply-yard-file.ts';
import { loadArchive } from '../../../db/stores/archive-of.ts';
import { writeEntries } from '../../../db/stores/book-store.ts';
import { putRowsBack } from '../../../db/stores/captured-store.ts';
import { beginChange, endChange } from '../../../db/stores/change-store.ts';
import { makeRoomInLog } from '../../../db/stores/log-store.ts';
import { addIncoming, markArrived } from '../../../db/stores/material-store.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { stockLinesOf } from '../../../db/stores/stock-lines.ts';
import { moveInStock, setOffcuts, setOnHand, setRests, stockBook } from '../../../db/stores/stock-store.ts';
import { settleStock } from '../../../db/stores/store-rows.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { stockEntries } from '../../../db/tables/stock-entry.ts';
import type { Archive } from '../../../shared/archive.ts';
import { lotFaults } from '../../../shared/lot-references.ts';
import { isCutUp } from '../../../shared/material.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { stockFaults } from '../../../src/engine/book/stock-sums.ts';
import { anyWork, isWorked } from '../../support/any-work.ts';
import { databaseBefore } from '../../support/database-before.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { datedYard } from '../../support/random-yard/dated-stock.ts';
import { type Dice, diceOf } from '../../support/random-yard/dice.ts';
import { sheetYard } from '../../support/random-yard/sheet-yard.ts';
import { randomYard } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';
import { standingLines } from '../../support/standing-lines.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';

const NOW = '2027-04-08T09:00:00+01:00';

const bookOf = async (tx: Tx) => ({ lines: await stockBook(tx), yard: await loadYardFile(tx, NOW) });
const faultsIn = async (tx: Tx) => {
  const { lines, yard } = await bookOf(tx);
  expect(stockFaults(standingLines(lines), yard.materials)).toEqual([]);
  // A yard file that could not be read again would lock the yard.
  expect(yard.materials.flatMap((one) => lotFaults(one as never, [], undefined))).toEqual([]);
  return stockFaults(lines, yard.materials);
};

/** What a day may bring, beside work: deliveries, counts, files, an archive that is opened again. */
type StockAct = (tx: Tx, yard: YardFile, dice: Dice) => Promise<void>;

const receive: StockAct = async (tx, yard, dice) => {
  const { id: material, ...of } = dice.pick(yard.materials);
  const quantity = isCutUp(of) ? dice.whole(1, 5) : dice.whole(1, 90) / 7;
  const goods = { material, quantity, on: '2027-04-08', boughtOn: null, price: null };
  const bags = !isCutUp(of) && dice.chance(0.6) ? { useBy: dice.pick(['2027-05-02', '2027-05-09']) } : {};
  await markArrived(tx, await addIncoming(tx, goods), { on: '2027-04-08', at: NOW, ...bags });
};

const count: StockAct = async (tx, yard, dice) => {
  const { id, offcuts = [], stickMm, rests = [], inSheets } = dice.pick(yard.materials);
  const isWhole = stickMm !== undefined || inSheets === true;
  await setOnHand(tx, id, isWhole ? dice.whole(0, 4) : dice.whole(0, 60) / 7, {
    kind: 'counted',
    at: NOW,
  });
  if (stickMm !== undefined)
    await setOffcuts(tx, id, dice.chance(0.5) ? offcuts.slice(1) : [{ lengthMm: stickMm / 2, count: 2 }], {
      ...{ kind: 'counted', at: NOW },
    });
  const more = { widthMm: 300, lengthMm: 900, count: 2 };
  if (inSheets)
    await setRests(tx, id, dice.chance(0.5) ? rests.slice(1) : [...rests, more], { kind: 'counted', at: NOW });
};

const load: StockAct = (tx, yard, dice) => {
  const material = dice.pick(yard.materials);
  const { offcuts: _offcuts, rests: _rests, lots: _lots, ...rest } = { ...material, onHand: dice.whole(0, 30) };
  return applyYardFile(tx, { ...yard, materials: yard.materials.map((one) => (one === material ? rest : one)) });
};

const work: StockAct = async (tx, yard, dice) => {
  const booked = await anyWork(yard, dice, tx);
  if (booked.ok) await writeEntries(tx, booked.entries);
};

const ACTS: readonly StockAct[] = [work, work, work, receive, count, load];

const changed = async (tx: Tx, act: () => Promise<void>, room = 0): Promise<number> => {
  if (room > 0) await makeRoomInLog(tx, room);
  const change = await beginChange(tx, { at: NOW, kind: 'test' });
  await act();
  await endChange(tx, change, { words: 'A change', before: [], after: [], dropped: [] });
  return change;
};

const linesShown = async (tx: Tx): Promise<number[]> =>
  (await tx.select({ id: stockEntries.id }).from(stockEntries)).map(({ id }) => id);

/**
 * Undoes one of the last changes, if it can be; what is refused is rolled back. No line that was shown goes, but where another
 * book was put in the place of this one.
 */
const undoOne = async (
  database: Awaited<ReturnType<typeof temporaryDatabase>>,
  { changes, books }: { changes: readonly number[]; books: Set<number> },
  dice: Dice,
) => {
  const one = changes.at(-1 - dice.whole(0, 2));
  if (one === undefined) return null;
  try {
    return await database.write(async (tx) => {
      const shown = await linesShown(tx);
      const change = await changed(tx, async () => {
        if (await putRowsBack(tx, one, NOW)) throw new Error('moved on');
        await settleStock(tx, NOW);
      });
      if (books.has(one)) books.add(change);
      else expect(await linesShown(tx)).toEqual(expect.arrayContaining(shown));
      return change;
    });
  } catch (error) {
    expect((error as Error).message).toBe('moved on');
    return null;
  }
};

describe('what is in the yard is the sum of its stock book, and was never below nothing', { timeout: 60_000 }, () => {
  test.each(yardSeeds(5).filter((seed) => isWorked(randomYard(seed))))(
    'after 40 random acts in yard %i',
    async (seed) => {
      const dice = diceOf(seed);
      const database = await temporaryDatabase();
      await database.write((tx) => replaceYard(tx, sheetYard(datedYard(randomYard(seed), seed), seed)));
      const [changes, books]: [number[], Set<number>] = [[], new Set()];
      let [kept, undone]: [Archive | null, number] = [null, 0];
      for (let turn = 0; turn < 40; turn++) {
        const roll = dice.whole(0, 9);
        if (roll < 3) {
          const change = await undoOne(database, { changes, books }, dice);
          if (change !== null) changes.push(change);
          undone += change === null ? 0 : 1;
        } else
          changes.push(
            await database.write(async (tx) => {
              const archive = kept;
              if (roll === 9 && archive) {
                const change = await changed(tx, async () => undefined, archive.log.changes.length);
                await applyArchive(tx, change, archive);
                books.add(change);
                return change;
              }
              if (roll === 9) kept = await loadArchive(tx, NOW);
              const yard = await loadYardFile(tx, randomYard(seed).yard.now);
              return changed(tx, () => dice.pick(ACTS)(tx, yard, dice));
            }),
          );
        expect(await database.read(faultsIn), `turn ${turn}`).toEqual([]);
      }
      expect(undone).toBeGreaterThan(0);
    },
  );
});

const small = async () => {
  const database = await temporaryDatabase();
  await database.write((tx) => replaceYard(tx, smallYard()));
  return database;
};

test('a yard begins its stock book with what it has, and its lines say who and why', async () => {
  const database = await small();
  await database.write(async (tx) => {
    const change = await beginChange(tx, { at: NOW, kind: 'arrived', by: 'Ada' });
    await moveInStock(tx, { material: 'mortar', kind: 'received', at: NOW, quantity: 2 });
    await endChange(tx, change, { words: '', before: [], after: [], dropped: [] });
    await moveInStock(tx, { material: 'mortar', kind: 'used', at: NOW, quantity: -23 });
  });
  const { lines } = await database.read(bookOf);
  expect(lines).toEqual([
    { at: NOW, material: 'mortar', kind: 'opening', quantity: 20 },
    { at: NOW, material: 'rod', kind: 'opening', quantity: 3 },
    { at: NOW, material: 'mortar', kind: 'received', quantity: 2, by: 'Ada' },
    // One more than there was: the book takes what it has and says what it was short of.
    { at: NOW, material: 'mortar', kind: 'used', quantity: -22, beyond: 1 },
  ]);
});

// Three came and were used up, three others came: taking the first three back would have used bags that never came.
test('a delivery that was used since cannot be undone, be there as many as then or not', async () => {
  const database = await small();
  const bring = (quantity: number) =>
    database.write((tx) =>
      changed(tx, () => moveInStock(tx, { material: 'mortar', kind: 'received', at: NOW, quantity })),
    );
  const first = await bring(3);
  await bring(-3);
  const last = await bring(3);
  const back = (change: number) => database.write((tx) => putRowsBack(tx, change, NOW));
  expect(await back(first)).toEqual({ table: 'materials', key: { id: "'mortar'" } });
  expect(await back(last)).toBeNull();
  expect(await database.read(faultsIn)).toEqual([]);
});

test('what is undone, done again and undone again stays in the book, each time with who and when', async () => {
  const database = await small();
  const act = (by: string, work: (tx: Tx) => Promise<unknown>): Promise<number> =>
    database.write(async (tx) => {
      const change = await beginChange(tx, { at: NOW, kind: 'test', by });
      expect(await work(tx)).toBeFalsy();
      await endChange(tx, change, { words: 'A change', before: [], after: [], dropped: [] });
      return change;
    });
  const at = (hour: string): string => NOW.replace('T09', `T${hour}`);
  const used = await act('Ada', (tx) =>
    moveInStock(tx, { material: 'mortar', kind: 'used', at: NOW, quantity: -2, useBy: '2027-05-02' }),
  );
  const undone = await act('Bo', (tx) => putRowsBack(tx, used, at('10')));
  const lines = (tx: Tx) => stockLinesOf(tx, 'mortar', 9, undefined);
  expect(await database.read(lines)).toMatchObject([
    { kind: 'used', quantity: 2, useBy: '2027-05-02', at: at('10'), by: 'Bo', left: 20, standing: 'undoes' },
    { kind: 'used', quantity: -2, useBy: '2027-05-02', at: NOW, by: 'Ada', left: 18, standing: 'undone' },
    { kind: 'opening', quantity: 20, left: 20, standing: 'stands' },
  ]);
  await act('Ada', (tx) => putRowsBack(tx, undone, at('11')));
  expect((await database.read(lines)).map(({ standing: one, left }) => [one, left])).toEqual([
    ...[
      ['again', 18],
      ['undoes', 20],
      ['stands', 18],
      ['stands', 20],
    ],
  ]);
  // What was done before it can be undone once it is undone itself: lines that cancel out are as good as none.
  const before = await act('Ada', (tx) => putRowsBack(tx, used, at('12')));
  const archive = await database.read((tx) => loadArchive(tx, NOW));
  expect(archive.stockBook?.map(({ ofLine }) => ofLine)).toEqual([undefined, undefined, undefined, 2, 2, 2]);
  await database.write(async (tx) => {
    await makeRoomInLog(tx, archive.log.changes.length);
    const change = await beginChange(tx, { at: NOW, kind: 'test' });
    await applyArchive(tx, change, archive);
    await endChange(tx, change, { words: 'A change', before: [], after: [], dropped: [] });
  });
  expect((await database.read((tx) => loadArchive(tx, NOW))).stockBook).toEqual(archive.stockBook);
  expect((await database.read(lines)).map(({ standing: one }) => one).slice(0, 4)).toEqual([
    ...['undoes', 'again', 'undoes', 'undone'],
  ]);
  expect(before).toBeGreaterThan(undone);
});

test('what was bought before can be undone once its use is', async () => {
  const database = await small();
  const move = (quantity: number): Promise<number> =>
    database.write((tx) =>
      changed(tx, () => moveInStock(tx, { material: 'mortar', kind: 'counted', at: NOW, quantity })),
    );
  const back = (change: number) =>
    database.write((tx) => changed(tx, async () => void expect(await putRowsBack(tx, change, NOW)).toBeNull()));
  const [bought, used] = [await move(3), await move(-2)];
  await back(used);
  await back(bought);
  expect(await database.read(faultsIn)).toEqual([]);
  const written = (await database.read(bookOf)).lines.filter(({ material }) => material === 'mortar');
  expect(written.map(({ quantity, ofLine }) => [quantity, ofLine])).toEqual([
    ...[
      [20, undefined],
      [3, undefined],
      [-2, undefined],
      [2, 3],
      [-3, 2],
    ],
  ]);
});

test('a database of before there was a stock book loses nothing, nor does undoing what was done in it', async () => {
  const stock = (id: string, onHand: number): string =>
    `insert into materials (id, position, name, unit, onHand, pack, minimum, kerfMm, shortBy, stickMm)
     values ('${id}', 0, '${id}', 'stick', ${onHand}, 1, 0, 2, 0, 3000)`;
  const old = [
    ...[stock('rod', 2), stock('bar', 0), "insert into offcuts values ('rod', 900, 2)"],
    "insert into changes values (1, '2027-04-08T08:00:00Z', 'counted', 'Counted', '[]', '[]', null, null, null)",
  ];
  const [was, is] = [5, 2].map((onHand) => JSON.stringify({ id: "'rod'", onHand: `${onHand}.0` }));
  old.push(
    `insert into rowChanges values (1, 1, 'materials', '${was!.replaceAll("'", "''")}', '${is!.replaceAll("'", "''")}')`,
  );
  const database = await temporaryDatabase(await databaseBefore('stockEntries', old));
  const linesNow = async () => (await database.read(stockBook)).map(({ at: _at, ...line }) => line);
  const begun = [
    { material: 'rod', kind: 'opening', quantity: 2 },
    { material: 'rod', kind: 'opening', quantity: 2, lengthMm: 900 },
  ];
  expect(await linesNow()).toEqual(begun);
  await database.write(async (tx) => {
    expect(await putRowsBack(tx, 1, NOW)).toBeNull();
    await settleStock(tx, NOW, { reason: 'Undone' });
  });
  expect(await linesNow()).toEqual([...begun, { material: 'rod', kind: 'corrected', quantity: 3, reason: 'Undone' }]);
});
