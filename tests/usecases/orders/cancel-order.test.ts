import { expect, test } from 'vitest';
import { orderById, updateOrder } from '../../../db/stores/order-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { cancelOrder } from '../../../src/usecases/orders/cancel-order.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

test('a cancelled order leaves the plan, and what was set aside for it is stock', async () => {
  const context = await yardContext(smallYard({ finished: [{ casting: 'panel-900', count: 1, order: '27-001' }] }));
  const { words, plan } = doneOf(await cancelOrder(context, '27-001'));
  expect(words).toBe('Order 27-001 cancelled (School garden)');
  expect([plan.orders, plan.pours]).toEqual([[], []]);
  expect((await context.database.read((tx) => orderById(tx, '27-001')))?.status).toBe('cancelled');
  const yard = await context.database.read((tx) => loadYardFile(tx, context.now));
  expect(yard.finished).toEqual([{ casting: 'panel-900', count: 1 }]);
});

test('one that is packed, cancelled already or unknown is refused, and stays as it is', async () => {
  const context = await yardContext();
  expect(refusalOf(await cancelOrder(context, '27-009'))).toBe('order: There is no order 27-009.');
  await context.database.write((tx) => updateOrder(tx, '27-001', { packedAt: context.now }));
  expect(refusalOf(await cancelOrder(context, '27-001'))).toMatch(/^order: Order 27-001 is packed\./);
  expect((await context.database.read((tx) => orderById(tx, '27-001')))?.status).toBe('open');
  await context.database.write((tx) => updateOrder(tx, '27-001', { packedAt: null, status: 'cancelled' }));
  expect(refusalOf(await cancelOrder(context, '27-001'))).toMatch(/^order: Order 27-001 was cancelled\./);
});
