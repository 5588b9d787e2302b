import { expect, test } from 'vitest';
import { openOrders } from '../../db/stores/order-store.ts';
import { currentPlan } from '../../src/usecases/plan/make-plan.ts';
import { saturday } from '../support/planned-yard.ts';
import { screensOver, textOf } from '../support/screens.ts';

const filled = { customer: 'Ann', what0: 'casting:panel-900', quantity0: '1', slip: 'yes' };

/** When an order is poured first, as a date. */
const pouredOn = async (context: Parameters<typeof currentPlan>[0], id: string): Promise<string | undefined> =>
  (await currentPlan(context)).plan.pours
    .filter(({ order }) => order === id)
    .map(({ fillStart }) => fillStart.slice(0, 10))
    .sort()[0];

test('an order that is not to be made before a day is poured from then on, and says so', async () => {
  const { get, post, textAfter, database } = await screensOver();
  const taken = await textAfter(await post('/orders', { ...filled, notBefore: '1 May' }));
  expect(taken).toContain('Not before Sat 1 May');
  const order = (await database.read((tx) => openOrders(tx))).at(-1)!;
  expect(order.notBefore).toBe('2027-05-01');
  const context = { database, now: saturday('06:00') };
  expect(await pouredOn(context, order.id)).toBe('2027-05-01');
  const csv = await (await get('/yard/files/orders.csv')).text();
  expect(csv.split('\n')[0]).toContain('wanted,not before,promised');
  expect(csv).toContain('2027-05-01');
  const edit = await (await get(`/orders/${order.id}/edit`)).text();
  expect(edit).toContain('value="Sat 1 May 2027"');
  const emptied = await post(`/orders/${order.id}/edit`, { ...filled, notBefore: '' });
  expect(await textAfter(emptied)).not.toContain('Not before');
  expect((await pouredOn(context, order.id))! < '2027-05-01').toBe(true);
});

test('such a day is refused where it does not exist or is beyond the plan', async () => {
  const { post } = await screensOver();
  for (const [notBefore, why] of [
    ['31 Apr', '31 Apr does not exist.'],
    ['1 Jan 2040', 'That is further off than is planned.'],
  ] as const) {
    const answer = await post('/orders', { ...filled, notBefore });
    expect(answer.status).toBe(422);
    expect(await textOf(answer)).toContain(why);
  }
});
