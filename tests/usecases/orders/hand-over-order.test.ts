import { expect, test } from 'vitest';
import { orderById, updateOrder } from '../../../db/stores/order-store.ts';
import { recentWorkRecords } from '../../../db/stores/work-record-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { handOverOrder } from '../../../src/usecases/orders/hand-over-order.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const withPanels = (count: number) => yardContext(smallYard({ finished: [{ casting: 'panel-900', count }] }));
const stockOf = async ({ database, now }: Awaited<ReturnType<typeof yardContext>>) => {
  const { finished, materials } = await database.read((tx) => loadYardFile(tx, now));
  const rod = materials.find(({ id }) => id === 'rod');
  const rests = rod?.offcuts?.map(({ lengthMm }) => lengthMm) ?? [];
  return { panels: finished.reduce((sum, { count }) => sum + count, 0), rod: rod?.onHand, rests };
};

// Two panels, and two rods of 300 mm with a saw cut of 3 each: 606 of the 3000 mm of a stick.
test('an order that was not packed takes its pieces and cut lengths from stock as it goes', async () => {
  const context = await withPanels(3);
  const { words } = doneOf(await handOverOrder(context, '27-001', { evenShort: false }));
  expect(words).toBe('Order 27-001 handed over (School garden)');
  expect(await context.database.read((tx) => orderById(tx, '27-001'))).toMatchObject({
    ...{ status: 'handed over', handedOverOn: '2027-04-08', heldUntil: null },
  });
  expect(await stockOf(context)).toEqual({ panels: 1, rod: 2, rests: [2394] });
});

test('what left the stock when it was packed does not leave it twice', async () => {
  const context = await withPanels(3);
  await context.database.write((tx) => updateOrder(tx, '27-001', { packedAt: context.now }));
  doneOf(await handOverOrder(context, '27-001', { evenShort: false }));
  expect(await stockOf(context)).toEqual({ panels: 3, rod: 3, rests: [] });
  // Which pieces it has was recorded when it was packed.
  const records = await context.database.read(recentWorkRecords);
  expect(records.filter(({ kind }) => kind === 'packed')).toEqual([]);
});

test('where the stock book is short it is refused in words, unless the maker has counted', async () => {
  const context = await withPanels(1);
  expect(refusalOf(await handOverOrder(context, '27-001', { evenShort: false }))).toMatch(
    /^evenShort: By the stock book these are not in the yard yet: .*Nothing was handed over\.$/,
  );
  expect(await stockOf(context)).toEqual({ panels: 1, rod: 3, rests: [] });
  doneOf(await handOverOrder(context, '27-001', { evenShort: true }));
  expect((await stockOf(context)).panels).toBe(0);
});
