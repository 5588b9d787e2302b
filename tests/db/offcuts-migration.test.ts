import { expect, test } from 'vitest';
import { recentChanges } from '../../db/stores/change-store.ts';
import { materialsInOrder } from '../../db/stores/material-store.ts';
import { offcutsByMaterial } from '../../db/stores/offcut-store.ts';
import { revision } from '../../db/stores/yard-store.ts';
import { databaseBefore } from '../support/database-before.ts';
import { temporaryDatabase } from '../support/temporary-database.ts';

const stock = (id: string, onHand: number, stickMm: number | null): string =>
  `insert into materials (id, position, name, unit, onHand, pack, minimum, stickMm, kerfMm)
   values ('${id}', 0, '${id}', 'stick', ${onHand}, 1, 0, ${stickMm ?? 'null'}, 2)`;
const cut = (material: string, lengthMm: number): string =>
  `insert into kitCuts (position, kit, material, lengthMm, count) values (0, 'pair', '${material}', ${lengthMm}, 4)`;
const rows = [
  "insert into kits (id, position, name, packMinutes) values ('pair', 0, 'Pair', 0)",
  'insert into revisions (id, revision) values (1, 7)',
];

// By hand: 1.399 of 3000 is one, and 0.399 x 3000 = 1197 of another.
test('a share of a stick becomes an offcut of its length where that is of use, and no change is silent', async () => {
  const shares = [
    stock('pipe', 1.399, 3000),
    stock('rod', 2.1, 3000),
    stock('bar', 0.4, 3000),
    stock('tube', 0.9999999, 3000),
    stock('sand', 1.5, null),
  ];
  const asTyped = "insert into typedFigures (kind, id, figure, typed) values ('material', 'pipe', 'onHand', '1.4')";
  const url = await databaseBefore('offcuts', [
    ...rows,
    ...shares,
    ...[cut('pipe', 190), cut('rod', 301), cut('tube', 190), asTyped],
  ]);
  const database = await temporaryDatabase(url);
  const found = await database.read(async (tx) => ({
    onHand: (await materialsInOrder(tx)).map(({ id, onHand }) => [id, onHand]),
    offcuts: await offcutsByMaterial(tx),
    words: (await recentChanges(tx, 9)).map(({ words }) => words).sort(),
    revision: await revision(tx),
  }));
  expect(Object.fromEntries(found.onHand)).toEqual({ pipe: 1, rod: 2, bar: 0, tube: 1, sand: 1.5 });
  expect([...found.offcuts]).toEqual([['pipe', [{ lengthMm: 1197, count: 1 }]]]);
  expect(found.words).toEqual([
    'bar: 0.4 of one is no longer counted. That is too short for anything that is cut from it',
    'pipe: what is left of an opened one is an offcut of 1197 mm now. It was counted as 0.4 of one; look at it once',
    'rod: 0.1 of one is no longer counted. That is too short for anything that is cut from it',
  ]);
  // The plan was made of other numbers.
  expect(found.revision).toBe(8);
});

test('whole sticks are left as they are', async () => {
  const database = await temporaryDatabase(
    await databaseBefore('offcuts', [...rows, stock('rod', 3, 3000), cut('rod', 300)]),
  );
  expect(await database.read(revision)).toBe(7);
  expect(await database.read((tx) => recentChanges(tx, 9))).toEqual([]);
});
