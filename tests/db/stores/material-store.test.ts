import { expect, test } from 'vitest';
import { materialById } from '../../../db/stores/material-store.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { smallYard } from '../../support/small-yard.ts';
import { moreOf } from '../../support/stock-set.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';

// More may be used than the stock book knew of: then it was wrong, and nothing is left. Less than nothing there never is.
test.each([
  [3, 23],
  [-5, 15],
  [-20, 0],
  [-20.5, 0],
])('twenty bags and %d are %d', async (more, left) => {
  const database = await temporaryDatabase();
  await database.write(async (tx) => {
    await replaceYard(tx, smallYard());
    await moreOf(tx, 'mortar', more);
  });
  expect((await database.read((tx) => materialById(tx, 'mortar')))?.onHand).toBe(left);
  expect((await database.read((tx) => materialById(tx, 'rod')))?.onHand).toBe(3);
});
