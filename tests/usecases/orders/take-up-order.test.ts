import { expect, test } from 'vitest';
import { orderById, updateOrder } from '../../../db/stores/order-store.ts';
import { cancelOrder } from '../../../src/usecases/orders/cancel-order.ts';
import { saveOrder } from '../../../src/usecases/orders/save-order.ts';
import { showOrder } from '../../../src/usecases/orders/show-order.ts';
import { takeUpOrder } from '../../../src/usecases/orders/take-up-order.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { doAnyway } from '../../support/saving.ts';
import { yardContext } from '../../support/yard-context.ts';

const cancelled = async () => {
  const context = await yardContext();
  await context.database.write((tx) => updateOrder(tx, '27-001', { note: 'Gate code 4', heldUntil: '2027-04-20' }));
  doneOf(await cancelOrder(context, '27-001'));
  return context;
};
const on = (promisedOn: string | null) => takeUpOrder('27-001', { promisedOn, next: {} });

test('an order that was cancelled is open again as it was, with the date given now', async () => {
  const context = await cancelled();
  const { words, plan } = doneOf(await doAnyway(context, on('2027-04-17')));
  expect(words).toBe('Order 27-001 taken up again (School garden)');
  expect(await context.database.read((tx) => orderById(tx, '27-001'))).toMatchObject({
    ...{ status: 'open', note: 'Gate code 4', promisedOn: '2027-04-17', heldUntil: null },
    ...{ customer: { name: 'School garden' }, lines: [{ kit: 'pair', quantity: 1 }] },
  });
  expect(plan.orders).toMatchObject([{ id: '27-001', completesOn: '2027-04-10' }]);
});

test('it may be taken up without a date', async () => {
  const context = await cancelled();
  doneOf(await doAnyway(context, on(null)));
  expect((await context.database.read((tx) => orderById(tx, '27-001')))?.promisedOn).toBeNull();
});

test('its page has the date of today, and a date that is not kept is asked about', async () => {
  const context = await cancelled();
  expect((await showOrder(context, '27-001'))?.again).toEqual({ promiseOn: '2027-04-10' });
  const saved = await saveOrder(context, on('2027-04-08'), undefined);
  expect(saved).toMatchObject({
    kind: 'moves',
    effect: { unkept: [{ promisedOn: '2027-04-08', readyOn: '2027-04-10' }], insteadOn: '2027-04-10' },
  });
  expect((await context.database.read((tx) => orderById(tx, '27-001')))?.status).toBe('cancelled');
});

test('one that lapsed is taken up as well; one that is open, handed over or not there is not', async () => {
  const context = await yardContext();
  expect(refusalOf(await doAnyway(context, on(null)))).toBe('order: Order 27-001 is open. Nothing was changed.');
  expect((await showOrder(context, '27-001'))?.again).toBeNull();
  await context.database.write((tx) => updateOrder(tx, '27-001', { status: 'handed over' }));
  expect(refusalOf(await doAnyway(context, on(null)))).toMatch(/^order: Order 27-001 is handed over/);
  await context.database.write((tx) => updateOrder(tx, '27-001', { status: 'lapsed' }));
  expect(refusalOf(await doAnyway(context, on(null)))).toBe('done');
  expect(refusalOf(await doAnyway(context, takeUpOrder('27-009', { promisedOn: null, next: {} })))).toBe(
    'order: There is no order 27-009.',
  );
});
