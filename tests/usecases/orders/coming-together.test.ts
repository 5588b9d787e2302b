import { expect, test } from 'vitest';
import { goodsOfLines } from '../../../src/engine/book/goods.ts';
import { comingTogether } from '../../../src/usecases/orders/coming-together.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { DEMO_NOW, withDemo } from '../../support/screens.ts';
import { smallYard } from '../../support/small-yard.ts';
import { databaseFilled } from '../../support/temporary-database.ts';
import { yardContext } from '../../support/yard-context.ts';

test('each piece of an order is in one place, and all of them are what it is made of', async () => {
  const { plan, yard } = await currentPlan({ database: await databaseFilled(withDemo), now: DEMO_NOW });
  const all = plan.orders.map(({ id }) => {
    const { progress } = comingTogether(id, plan, yard);
    const nameOf = (casting: string) => yard.castings.find((one) => one.id === casting)!.name;
    const { lines } = yard.orders.find((order) => order.id === id)!;
    return {
      counted: Object.fromEntries(
        progress.map(({ name, inYard, curing, inMoulds, toPour }) => [name, inYard + curing + inMoulds + toPour]),
      ),
      wanted: Object.fromEntries([...goodsOfLines(lines, yard).pieces].map(([id, count]) => [nameOf(id), count])),
    };
  });
  expect(all.length).toBeGreaterThan(5);
  for (const { counted, wanted } of all) expect(counted).toEqual(wanted);
});

test('a finished piece cures until it is fit to go out, and one in a mould counts there', async () => {
  const finished = [
    { casting: 'panel-900', count: 1 },
    { casting: 'panel-900', count: 1, readyAt: '2027-04-09T08:00:00+01:00' },
  ];
  const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-03T08:00:00+01:00' }];
  const orders = [{ id: '27-001', due: '2027-04-10', lines: [{ casting: 'panel-900', quantity: 4 }] }];
  const { plan, yard } = await currentPlan(await yardContext(smallYard({ finished, inMould, orders })));
  expect(comingTogether('27-001', plan, yard)).toMatchObject({
    progress: [{ name: 'Panel 900', inYard: 1, curing: 1, inMoulds: 1, toPour: 1 }],
    inMoulds: ['900 no. 1'],
  });
});
