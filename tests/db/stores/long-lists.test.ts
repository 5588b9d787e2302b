import { expect, test } from 'vitest';
import { openOrders, pastOrders, updateOrder } from '../../../db/stores/order-store.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { inParts } from '../../../db/stores/rows.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { scaledYard } from '../../support/scaled-yard.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';

const stored = async (yard: YardFile) => {
  const database = await temporaryDatabase();
  await database.write((tx) => replaceYard(tx, yard));
  return database;
};

test.each([0, 1, 199, 200, 201, 400, 650])(
  'a list of %i is read in parts, each row once and in its order',
  async (length) => {
    const all = Array.from({ length }, (_, i) => i);
    const asked: number[] = [];
    const rows = await inParts(async (limit, offset) => {
      asked.push(limit);
      return all.slice(offset, offset + limit);
    });
    expect(rows).toEqual(all);
    expect(Math.max(...asked)).toBeLessThanOrEqual(200);
  },
);

test.each([0, 1, 200, 250, 400])('no more than %i are read of a longer list where no more are wanted', async (most) => {
  const all = Array.from({ length: 500 }, (_, i) => i);
  const rows = await inParts(async (limit, offset) => all.slice(offset, offset + limit), most);
  expect(rows).toEqual(all.slice(0, most));
});

test.each([200, 450])('a yard of %i orders comes out as it went in', async (orders) => {
  const yard = scaledYard(orders, 12);
  const database = await stored(yard);
  expect(await database.read((tx) => loadYardFile(tx, yard.yard.now))).toEqual(yard);
  const open = await database.read(openOrders);
  expect(open.map(({ id, lines }) => ({ id, lines }))).toEqual(yard.orders.map(({ id, lines }) => ({ id, lines })));
});

test('orders that are past leave with their lines, and stand among past ones, the newest first', async () => {
  const yard = scaledYard(450, 12);
  const database = await stored(yard);
  const past = yard.orders.slice(0, 250);
  await database.write(async (tx) => {
    for (const { id } of past) await updateOrder(tx, id, { status: 'handed over', handedOverOn: '2027-03-01' });
  });
  const file = await database.read((tx) => loadYardFile(tx, yard.yard.now));
  expect(file.orders).toEqual(yard.orders.slice(250));
  const ids = past.map(({ id }) => id).reverse();
  for (const most of [-1, 60, 220, 250]) {
    const read = await database.read((tx) => pastOrders(tx, most));
    expect(read.map(({ id }) => id)).toEqual(most < 0 ? ids : ids.slice(0, most));
    expect(read.at(-1)?.lines).toEqual(yard.orders.find(({ id }) => id === read.at(-1)?.id)?.lines);
  }
});
