import { expect, test } from 'vitest';
import { orderById, updateOrder } from '../../../db/stores/order-store.ts';
import { promiseOrder } from '../../../src/usecases/orders/promise-order.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { doAnyway } from '../../support/saving.ts';
import { yardContext } from '../../support/yard-context.ts';

test('a promise ends the hold, and is what the plan aims at', async () => {
  const context = await yardContext();
  await context.database.write((tx) =>
    updateOrder(tx, '27-001', { promisedOn: '2027-04-17', heldUntil: '2027-04-12' }),
  );
  const { words, yard } = doneOf(
    await doAnyway(context, promiseOrder('27-001', { promisedOn: '2027-04-24', next: {} })),
  );
  expect(words).toBe('Date promised to School garden');
  expect(yard.orders[0]?.due).toBe('2027-04-24');
  expect(await context.database.read((tx) => orderById(tx, '27-001'))).toMatchObject({
    ...{ promisedOn: '2027-04-24', heldUntil: null },
  });
});

test('no day, and a day beyond all that is planned, is refused', async () => {
  const context = await yardContext();
  const refused = async (promisedOn: string | null) =>
    refusalOf(await doAnyway(context, promiseOrder('27-001', { promisedOn, next: {} })));
  expect(await refused(null)).toBe('promisedOn: Give the date that is promised.');
  // The small yard is planned for 60 days: a date within a year of 8 April 2027 may be given all the same.
  expect(await refused('2028-04-07')).toBe('done');
  expect(await refused('2028-04-08')).toBe(
    'promisedOn: That is further off than is planned. The last day is Fri 7 Apr 2028.',
  );
  await context.database.write((tx) => updateOrder(tx, '27-001', { promisedOn: '2029-04-07' }));
  expect(await refused('2029-04-07')).toBe('done');
});

test('a date that has passed is asked about where it is given now, and not where it was given before', async () => {
  const context = await yardContext();
  await context.database.write((tx) => updateOrder(tx, '27-001', { promisedOn: '2027-04-06' }));
  const passedOf = async (promisedOn: string) =>
    doneOf(await doAnyway(context, promiseOrder('27-001', { promisedOn, next: {} }))).value.passed;
  expect(await passedOf('2027-04-06')).toEqual([]);
  expect(await passedOf('2027-04-07')).toEqual([{ field: 'promisedOn', on: '2027-04-07', next: null }]);
});
