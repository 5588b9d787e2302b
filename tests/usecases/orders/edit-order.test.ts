import { expect, test } from 'vitest';
import { orderById, updateOrder } from '../../../db/stores/order-store.ts';
import { cancelOrder } from '../../../src/usecases/orders/cancel-order.ts';
import { editOrder } from '../../../src/usecases/orders/edit-order.ts';
import type { OrderDraft } from '../../../src/usecases/typed/order-form.ts';
import { BLANK_DRAFT } from '../../support/blank-draft.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { doAnyway } from '../../support/saving.ts';
import { yardContext } from '../../support/yard-context.ts';

const draft = (changes: Partial<OrderDraft> = {}): OrderDraft => ({
  ...BLANK_DRAFT,
  customer: 'School garden',
  wantedOn: '2027-04-24',
  lines: [{ row: 0, line: { casting: 'panel-900', quantity: 1 } }],
  ...changes,
});

test('an order is written anew under its number, and planned as it is now', async () => {
  const context = await yardContext();
  const { words, plan } = doneOf(await doAnyway(context, editOrder('27-001', draft({ note: 'Ring first' }))));
  expect(words).toBe('Order 27-001 changed');
  expect(await context.database.read((tx) => orderById(tx, '27-001'))).toMatchObject({
    ...{ wantedOn: '2027-04-24', note: 'Ring first', weight: 3 },
    lines: [{ casting: 'panel-900', quantity: 1 }],
  });
  expect(plan.pours.filter(({ order }) => order === '27-001')).toHaveLength(1);
});

test('a weight between two answers stays while the answer does', async () => {
  const context = await yardContext();
  await context.database.write((tx) => updateOrder(tx, '27-001', { weight: 4.5 }));
  const weight = async () => (await context.database.read((tx) => orderById(tx, '27-001')))?.weight;
  doneOf(await doAnyway(context, editOrder('27-001', draft())));
  expect(await weight()).toBe(4.5);
  doneOf(await doAnyway(context, editOrder('27-001', draft({ slip: 'yes' }))));
  expect(await weight()).toBe(1);
});

test('a day that was promised may have passed, and is not asked about again; another that has passed is', async () => {
  const context = await yardContext();
  await context.database.write((tx) => updateOrder(tx, '27-001', { promisedOn: '2027-04-06' }));
  const passedOf = async (promisedOn: string) =>
    doneOf(await doAnyway(context, editOrder('27-001', draft({ promisedOn })))).value.passed;
  expect(await passedOf('2027-04-06')).toEqual([]);
  expect(await passedOf('2027-04-07')).toEqual([{ field: 'promisedOn', on: '2027-04-07', next: null }]);
});

test('one that is not there, or no longer open, is refused', async () => {
  const context = await yardContext();
  expect(refusalOf(await doAnyway(context, editOrder('27-009', draft())))).toBe('order: There is no order 27-009.');
  doneOf(await cancelOrder(context, '27-001'));
  expect(refusalOf(await doAnyway(context, editOrder('27-001', draft())))).toMatch(/^order: /);
});
