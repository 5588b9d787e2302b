import { expect, test } from 'vitest';
import { orderById } from '../../../db/stores/order-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { handOverPartOf } from '../../../src/usecases/orders/hand-over-part.ts';
import { showOrder } from '../../../src/usecases/orders/show-order.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { archived } from '../../support/archived.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/** Three pairs are wanted by the 17th, a rod too; four panels are there, two of them set aside for this order. */
const ofThree = () =>
  yardContext(
    smallYard({
      finished: [
        { casting: 'panel-900', count: 2, order: '27-001' },
        { casting: 'panel-900', count: 2 },
      ],
      orders: [
        {
          ...{ id: '27-001', customer: 'School garden', due: '2027-04-17' },
          lines: [
            { kit: 'pair', quantity: 3 },
            { material: 'rod', quantity: 1 },
          ],
        },
      ],
    }),
  );
type Context = Awaited<ReturnType<typeof ofThree>>;

const panelsIn = async ({ database, now }: Context) => {
  const { finished } = await database.read((tx) => loadYardFile(tx, now));
  return finished.reduce((sum, { count }) => sum + count, 0);
};

test('some of an order goes out as an order of its own, and the rest keeps its number and its date', async () => {
  const context = await ofThree();
  const { value, words, change } = doneOf(await handOverPartOf(context, '27-001', { part0: '1' }));
  expect(words).toBe('1 part of order 27-001 handed over as 27-002 (School garden)');
  const [part, rest] = await context.database.read(async (tx) => [
    await orderById(tx, value.part),
    await orderById(tx, '27-001'),
  ]);
  expect(part).toMatchObject({
    ...{ status: 'handed over', handedOverOn: '2027-04-08', partOf: '27-001', promisedOn: '2027-04-17' },
    lines: [{ kit: 'pair', quantity: 1 }],
  });
  expect(rest).toMatchObject({
    ...{ status: 'open', promisedOn: '2027-04-17' },
    lines: [
      { kit: 'pair', quantity: 2 },
      { material: 'rod', quantity: 1 },
    ],
  });
  expect(await panelsIn(context)).toBe(2);
  const { plan } = await currentPlan(context);
  expect(plan.orders).toMatchObject([{ id: '27-001', daysLate: 0 }]);
  expect(plan.pours.filter(({ order }) => order === '27-001')).toHaveLength(2);
  expect((await showOrder(context, '27-001'))?.parts).toMatchObject([{ id: '27-002', on: '2027-04-08' }]);

  doneOf(await undoChange(context, change));
  expect(await panelsIn(context)).toBe(4);
  expect((await context.database.read((tx) => orderById(tx, '27-001')))?.lines[0]?.quantity).toBe(3);
  expect(await context.database.read((tx) => orderById(tx, '27-002'))).toBeNull();
});

test('goes with an archive', async () => {
  const context = await ofThree();
  doneOf(await handOverPartOf(context, '27-001', { part0: '2' }));
  const { other, text, again } = await archived(context);
  expect(again).toBe(text);
  expect((await showOrder(other, '27-001'))?.parts).toMatchObject([{ id: '27-002' }]);
});

test.each([
  [{}, 'part: Nothing was chosen to go out.'],
  [{ part0: '0' }, 'part: Nothing was chosen to go out.'],
  [{ part0: 'one' }, 'part0: How many go out?'],
  [{ part0: '4' }, 'part0: There are only 3 in the order.'],
  [{ part0: '3' }, 'evenShort: By the stock book these are not in the yard yet: 2 × Panel 900.'],
])('%o is refused, and nothing is changed', async (fields, message) => {
  const context = await ofThree();
  expect(refusalOf(await handOverPartOf(context, '27-001', fields))).toContain(message);
  expect(await panelsIn(context)).toBe(4);
  expect(await context.database.read((tx) => orderById(tx, '27-002'))).toBeNull();
});

test('all of an order is no part of it', async () => {
  const context = await yardContext(smallYard({ finished: [{ casting: 'panel-900', count: 2 }] }));
  expect(refusalOf(await handOverPartOf(context, '27-001', { part0: '1' }))).toContain('That is all of order 27-001');
});
