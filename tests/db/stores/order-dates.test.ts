import { expect, test } from 'vitest';
import { applyYardFile } from '../../../db/stores/apply-yard-file.ts';
import { orderById } from '../../../db/stores/order-store.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { smallYard } from '../../support/small-yard.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';

const lines = [{ kit: 'pair', quantity: 1 }];
const yardWith = (dates: Partial<YardFile['orders'][number]>): YardFile =>
  smallYard({ orders: [{ id: '27-001', lines, ...dates }] });
const DATES = { due: '2027-05-01', wanted: '2027-04-24', notBefore: '2027-04-12' };

test('the date given, the date asked for and the first day come in and go out as they are', async () => {
  const database = await temporaryDatabase();
  await database.write((tx) => replaceYard(tx, yardWith(DATES)));
  const load = () => database.read((tx) => loadYardFile(tx, yardWith({}).yard.now));
  expect((await load()).orders[0]).toMatchObject(DATES);
  expect(await database.read((tx) => orderById(tx, '27-001'))).toMatchObject({
    promisedOn: '2027-05-01',
    wantedOn: '2027-04-24',
    notBefore: '2027-04-12',
  });
  for (const dates of [{ wanted: '2027-05-08' }, { due: '2027-05-08' }, { notBefore: '2027-05-01' }, {}]) {
    await database.write((tx) => applyYardFile(tx, yardWith(dates)));
    expect((await load()).orders).toEqual(yardWith(dates).orders);
  }
});
