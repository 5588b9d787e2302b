import { expect, test } from 'vitest';
import { materialById } from '../../../db/stores/material-store.ts';
import { countMaterial } from '../../../src/usecases/buying/count-material.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { yardContext } from '../../support/yard-context.ts';

test('the stock book says what was counted, and the record says both', async () => {
  const context = await yardContext();
  const { words, yard } = doneOf(await countMaterial(context, 'mortar', { text: '17.5' }));
  expect(words).toBe('Rapid mortar counted: 17.5 in the yard, not 20');
  expect(yard.materials[0]?.onHand).toBe(17.5);
});

test.each([
  ['gravel', '3', 'material: That material is not in the stock book.'],
  ['mortar', '', 'counted: How much is there? Write a number.'],
  ['mortar', 'many', /^counted: /],
  ['mortar', '20', 'counted: The stock book says so already. Nothing was changed.'],
])('%s counted as "%s" is refused', async (material, text, why) => {
  const context = await yardContext();
  expect(refusalOf(await countMaterial(context, material, { text }))).toMatch(why);
  expect((await context.database.read((tx) => materialById(tx, 'mortar')))?.onHand).toBe(20);
});
