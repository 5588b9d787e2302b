import { expect, test } from 'vitest';
import { openOrders } from '../../db/stores/order-store.ts';
import { databaseBefore } from '../support/database-before.ts';
import { temporaryDatabase } from '../support/temporary-database.ts';

const order = (id: string, position: number, packedAt: string | null): string =>
  `insert into orders (id, position, status, weight, packedAt)
   values ('${id}', ${position}, 'open', 3, ${packedAt === null ? 'null' : `'${packedAt}'`})`;

test('orders of a file that knew of no packing in parts are packed or not, as they were', async () => {
  const at = '2027-04-10T12:00:00+01:00';
  const url = await databaseBefore('packedMinutes', [order('27-001', 0, null), order('27-002', 1, at)]);
  const database = await temporaryDatabase(url);
  expect(await database.read(openOrders)).toMatchObject([
    { id: '27-001', packedAt: null, packedMinutes: null },
    { id: '27-002', packedAt: at, packedMinutes: null },
  ]);
});
