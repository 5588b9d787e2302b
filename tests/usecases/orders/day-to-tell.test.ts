import { expect, test } from 'vitest';
import { updateOrder } from '../../../db/stores/order-store.ts';
import { bumpRevision } from '../../../db/stores/yard-store.ts';
import { dayInHandToTell } from '../../../src/usecases/orders/day-to-tell.ts';
import { showOrder } from '../../../src/usecases/orders/show-order.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const keeping = (sessionsInHand: number) => {
  const yard = smallYard();
  return { ...yard, yard: { ...yard.yard, sessionsInHand } };
};

// Saturdays are the sessions and the days of hand-over: what is complete on the 10th is told for the 17th, or the 24th.
test('the day to tell comes so many sessions after the day by plan', () => {
  const complete = '2027-04-10T11:00:00+01:00';
  expect(dayInHandToTell(keeping(0), complete)).toBeNull();
  expect(dayInHandToTell(keeping(1), complete)).toEqual({ on: '2027-04-17', sessionsInHand: 1 });
  expect(dayInHandToTell(keeping(2), complete)).toEqual({ on: '2027-04-24', sessionsInHand: 2 });
  expect(dayInHandToTell(keeping(1), '2027-06-05T11:00:00+01:00')).toBeNull();
});

test('an order has it on its page until it is promised', async () => {
  const context = await yardContext(keeping(1));
  expect((await showOrder(context, '27-001'))?.tell).toBeNull();
  await context.database.write(async (tx) => {
    await updateOrder(tx, '27-001', { promisedOn: null });
    await bumpRevision(tx);
  });
  expect((await showOrder(context, '27-001'))?.tell).toEqual({ on: '2027-04-17', sessionsInHand: 1 });
});
