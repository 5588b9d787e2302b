import { expect, test } from 'vitest';
import { orderById } from '../../../db/stores/order-store.ts';
import type { OrderLine } from '../../../shared/order.ts';
import { canGoInParts } from '../../../src/usecases/orders/open-order.ts';
import { showOrder } from '../../../src/usecases/orders/show-order.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/* The loading list led to a form that the page of the order does not have. */
test.each<[OrderLine[], boolean]>([
  [[{ casting: 'panel-900', quantity: 2 }], true],
  [[{ kit: 'pair', quantity: 1 }], false],
  [[{ material: 'rod', quantity: 5 }], false],
  [
    [
      { casting: 'panel-900', quantity: 1 },
      { material: 'rod', quantity: 1 },
    ],
    true,
  ],
])('of %j some can go out before the rest: %s, and its page has the form just then', async (lines, can) => {
  const context = await yardContext(smallYard({ orders: [{ id: '27-001', weight: 1, lines }] }));
  const order = await context.database.read((tx) => orderById(tx, '27-001'));
  expect(canGoInParts(order!)).toBe(can);
  expect(((await showOrder(context, '27-001'))?.partable ?? []).length > 0).toBe(can);
});
