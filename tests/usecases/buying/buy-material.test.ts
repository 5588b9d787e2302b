import { expect, test } from 'vitest';
import { onTheirWay } from '../../../db/stores/material-store.ts';
import { buyMaterial } from '../../../src/usecases/buying/buy-material.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { yardContext } from '../../support/yard-context.ts';

const purchase = { material: 'mortar', quantity: { text: '12' }, on: '2027-04-12', price: '240' };

test('what is bought is on its way, and the plan counts on it', async () => {
  const context = await yardContext();
  const { words, yard } = doneOf(await buyMaterial(context, purchase));
  expect(words).toMatch(/^Fast-setting mortar bought, expected on Mon /);
  expect(yard.incoming).toEqual([{ material: 'mortar', quantity: 12, on: '2027-04-12' }]);
  expect(await context.database.read(onTheirWay)).toMatchObject([
    { material: 'mortar', quantity: 12, on: '2027-04-12', boughtOn: '2027-04-08', price: 240, arrivedOn: null },
  ]);
});

test.each([
  [{ material: 'gravel' }, 'material: Choose what was bought from the list.'],
  [{ quantity: { text: 'some' } }, /^quantity: /],
  [{ quantity: { text: '0' } }, /^quantity: /],
  [{ on: '2027-02-30' }, /^on: /],
  [{ price: 'dear' }, /^price: /],
  [{ material: 'rod', quantity: { text: '2.5' } }, 'quantity: It comes in whole ones. Write a whole number.'],
])('%j is refused, and nothing is on its way', async (wrong, why) => {
  const context = await yardContext();
  expect(refusalOf(await buyMaterial(context, { ...purchase, ...wrong }))).toMatch(why);
  expect(await context.database.read(onTheirWay)).toEqual([]);
});
