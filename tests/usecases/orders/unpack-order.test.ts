import { expect, test } from 'vitest';
import { finishedPieces } from '../../../db/stores/finished-store.ts';
import { orderById } from '../../../db/stores/order-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { packOrder } from '../../../src/usecases/orders/pack-order.ts';
import { unpackOrder } from '../../../src/usecases/orders/unpack-order.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { plannedYard } from '../../support/planned-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const packed = async () => {
  const context = await yardContext(plannedYard({ finished: [{ casting: 'panel-900', count: 3 }] }));
  doneOf(await packOrder(context, '27-001', { evenShort: false }));
  return context;
};

test('its pieces are set aside for it, and it can be packed again', async () => {
  const context = await packed();
  expect(doneOf(await unpackOrder(context, '27-001')).words).toBe('Unpacked for School garden');
  expect(await context.database.read(finishedPieces)).toMatchObject([
    { count: 1, order: null },
    { count: 2, order: '27-001', readyAt: null },
  ]);
  expect((await context.database.read((tx) => orderById(tx, '27-001')))?.packedAt).toBeNull();
  doneOf(await packOrder(context, '27-001', { evenShort: false }));
});

test('undone, it is packed as it was', async () => {
  const context = await packed();
  const before = await context.database.read((tx) => orderById(tx, '27-001'));
  doneOf(await undoChange(context, doneOf(await unpackOrder(context, '27-001')).change));
  expect(await context.database.read((tx) => orderById(tx, '27-001'))).toEqual(before);
  expect(await context.database.read(finishedPieces)).toMatchObject([{ count: 1, order: null }]);
});

test('what is not packed, or not there, is refused', async () => {
  const context = await yardContext(plannedYard());
  expect(refusalOf(await unpackOrder(context, '27-001'))).toMatch(/^order: Order 27-001 is not packed/);
  expect(refusalOf(await unpackOrder(context, '27-009'))).toMatch(/^order: There is no order 27-009/);
});
