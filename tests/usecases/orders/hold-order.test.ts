import { expect, test } from 'vitest';
import { orderById, updateOrder } from '../../../db/stores/order-store.ts';
import { holdOrder, holdUntil } from '../../../src/usecases/orders/hold-order.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { doAnyway } from '../../support/saving.ts';
import { yardContext } from '../../support/yard-context.ts';

test('a hold that begins on Monday the 5th runs to Saturday the 10th, over the end of a month too', () => {
  expect([holdUntil('2027-04-05'), holdUntil('2027-04-28')]).toEqual(['2027-04-10', '2027-05-03']);
});

test('the date and the last day of the hold are kept with the order', async () => {
  const context = await yardContext();
  const hold = { promisedOn: '2027-04-17', heldUntil: '2027-04-08' };
  expect(doneOf(await doAnyway(context, holdOrder('27-001', { ...hold, next: {} }))).words).toBe(
    'Date held for School garden',
  );
  expect(await context.database.read((tx) => orderById(tx, '27-001'))).toMatchObject(hold);
});

test.each([
  [{ promisedOn: '2027-04-17', heldUntil: null }, 'heldUntil: Say until which day it is held.'],
  [{ promisedOn: null, heldUntil: '2027-04-12' }, 'promisedOn: Say which date is held.'],
  [{ promisedOn: '2028-04-08', heldUntil: '2027-04-12' }, /^promisedOn: That is further off than is planned\./],
  [{ promisedOn: '2027-04-17', heldUntil: '2028-04-08' }, /^heldUntil: That is further off than is planned\./],
  [{ promisedOn: '2027-04-17', heldUntil: '2027-04-07' }, /^heldUntil: That day has passed\./],
])('%j is refused, and nothing is held', async (hold, why) => {
  const context = await yardContext();
  expect(refusalOf(await doAnyway(context, holdOrder('27-001', { ...hold, next: {} })))).toMatch(why);
  expect((await context.database.read((tx) => orderById(tx, '27-001')))?.heldUntil).toBe(null);
});

test('a date that has passed is asked about where it is given now, and not where it was given before', async () => {
  const context = await yardContext();
  await context.database.write((tx) => updateOrder(tx, '27-001', { promisedOn: '2027-04-06' }));
  const passedOf = async (promisedOn: string) =>
    doneOf(await doAnyway(context, holdOrder('27-001', { promisedOn, heldUntil: '2027-04-12', next: {} }))).value
      .passed;
  expect(await passedOf('2027-04-06')).toEqual([]);
  expect(await passedOf('2027-04-07')).toEqual([{ field: 'promisedOn', on: '2027-04-07', next: null }]);
});
