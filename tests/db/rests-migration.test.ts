import { expect, test } from 'vitest';
import { materialsInOrder } from '../../db/stores/material-store.ts';
import { stockBook } from '../../db/stores/stock-store.ts';
import { databaseBefore } from '../support/database-before.ts';
import { temporaryDatabase } from '../support/temporary-database.ts';

test('rests of sheets that were written down are in the stock book from now on, and mesh counts as it did', async () => {
  const rests = JSON.stringify([
    { widthMm: 1000, lengthMm: 900, count: 1 },
    { widthMm: 412.5, lengthMm: 600, count: 2 },
  ]);
  const url = await databaseBefore('inSheets', [
    `insert into materials (id, position, name, unit, onHand, pack, minimum, kerfMm, sheetWidthMm, sheetLengthMm, rests)
     values ('mesh', 0, 'Mesh', 'm2', 0.9, 1, 0, 0, 1000, 6000, '${rests}')`,
    `insert into materials (id, position, name, unit, onHand, pack, minimum, kerfMm)
     values ('sand', 1, 'Sand', 'kg', 40, 1, 0, 0)`,
  ]);
  const database = await temporaryDatabase(url);
  const found = await database.read(async (tx) => ({
    lines: (await stockBook(tx)).map(({ at: _at, ...line }) => line),
    inSheets: (await materialsInOrder(tx)).map((one) => one.inSheets),
  }));
  const opening = { material: 'mesh', kind: 'opening' };
  expect(found.lines).toEqual([
    { ...opening, quantity: 1, widthMm: 1000, lengthMm: 900 },
    { ...opening, quantity: 2, widthMm: 412.5, lengthMm: 600 },
  ]);
  expect(found.inSheets).toEqual([null, null]);
});
