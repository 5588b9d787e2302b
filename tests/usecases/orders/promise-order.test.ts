import { expect, test } from 'vitest';
import { orderById, updateOrder } from '../../../db/stores/order-store.ts';
import { promiseOrder } from '../../../src/usecases/orders/promise-order.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { yardContext } from '../../support/yard-context.ts';

test('a promise ends the hold, and is what the plan aims at', async () => {
  const context = await yardContext();
  await context.database.write((tx) =>
    updateOrder(tx, '27-001', { promisedOn: '2027-04-17', heldUntil: '2027-04-12' }),
  );
  const { words, yard } = doneOf(await promiseOrder(context, '27-001', '2027-04-24'));
  expect(words).toBe('Date promised to School garden');
  expect(yard.orders[0]?.due).toBe('2027-04-24');
  expect(await context.database.read((tx) => orderById(tx, '27-001'))).toMatchObject({
    ...{ promisedOn: '2027-04-24', heldUntil: null },
  });
});

test('a day that has passed is refused, unless it is the one promised before', async () => {
  const context = await yardContext();
  expect(refusalOf(await promiseOrder(context, '27-001', '2027-04-07'))).toMatch(/^promisedOn: That day has passed\./);
  expect(refusalOf(await promiseOrder(context, '27-001', null))).toBe('promisedOn: Give the date that is promised.');
  await context.database.write((tx) => updateOrder(tx, '27-001', { promisedOn: '2027-04-07' }));
  expect(refusalOf(await promiseOrder(context, '27-001', '2027-04-07'))).toBe('done');
});
