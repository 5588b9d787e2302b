import { expect, test } from 'vitest';
import { customersOfOrders, nextNumber, nextOrderId, orderById, updateOrder } from '../../../db/stores/order-store.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { smallYard } from '../../support/small-yard.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';

test.each<[string, string[], string]>([
  ['the first of a year', [], '27-001'],
  ['after the highest, whatever their order', ['27-003', '27-014', '27-002'], '27-015'],
  ['numbers of other years do not count', ['26-099', '28-050', '27-002'], '27-003'],
  // Read in from a file an order may be called anything.
  ['what only looks like a number does not count', ['27-garden', '27-012b', '27-', '127-050', '27-002'], '27-003'],
  ['more than a thousand a year', ['27-999'], '27-1000'],
])('the next number: %s', (_, ids, next) => expect(nextNumber(ids, '2027-04-08')).toBe(next));

test('the number of an order that was cancelled is not given again', async () => {
  const database = await temporaryDatabase();
  await database.write(async (tx) => {
    await replaceYard(tx, smallYard());
    await updateOrder(tx, '27-001', { status: 'cancelled' });
  });
  expect(await database.read((tx) => nextOrderId(tx, '2027-04-08'))).toBe('27-002');
  expect(await database.read((tx) => nextOrderId(tx, '2028-01-02'))).toBe('28-001');
});

test('whose an order was is known when it is handed over too; nobody, and no order, is left out', async () => {
  const database = await temporaryDatabase();
  const [order] = smallYard().orders;
  await database.write(async (tx) => {
    await replaceYard(
      tx,
      smallYard({
        orders: [
          { ...order!, customer: 'School garden' },
          { ...order!, id: '27-002', customer: undefined },
        ],
      }),
    );
    await updateOrder(tx, '27-001', { status: 'handed over' });
  });
  const whose = (ids: string[]) => database.read((tx) => customersOfOrders(tx, ids));
  expect([...(await whose(['27-001', '27-002', '27-009']))]).toEqual([['27-001', 'School garden']]);
  expect([...(await whose([]))]).toEqual([]);
});

test('the date that was given first stays on record, whatever is given later', async () => {
  const database = await temporaryDatabase();
  const [order] = smallYard().orders;
  const first = async (patch: Parameters<typeof updateOrder>[2]) => {
    await database.write((tx) => updateOrder(tx, '27-001', patch));
    return (await database.read((tx) => orderById(tx, '27-001')))?.firstPromisedOn;
  };
  await database.write((tx) => replaceYard(tx, smallYard({ orders: [{ ...order!, due: '2027-04-17' }] })));
  expect(await first({ promisedOn: '2027-04-24' })).toBe('2027-04-17');
  expect(await first({ promisedOn: null })).toBe('2027-04-17');
  // Given before it was kept down.
  await first({ promisedOn: '2027-05-01', firstPromisedOn: null });
  expect(await first({ note: 'gate' })).toBeNull();
  expect(await first({ promisedOn: '2027-05-08' })).toBe('2027-05-01');
  // None was: the first is the one that is given.
  await first({ promisedOn: null, firstPromisedOn: null });
  expect(await first({ promisedOn: '2027-05-15' })).toBe('2027-05-15');
});
