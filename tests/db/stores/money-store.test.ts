import { expect, test } from 'vitest';
import { seedDemo } from '../../../db/demo/larch-row.ts';
import {
  addPayment,
  askedAndPaid,
  costsOfMoulds,
  costsOfYard,
  moneyOfOrder,
  pricesOfKits,
  removePayment,
  setCostsOfYard,
  setMoneyOfOrder,
} from '../../../db/stores/money-store.ts';
import { ordersOfIds } from '../../../db/stores/order-store.ts';
import { readArchive } from '../../../shared/archive.ts';
import { exportArchive, exportYard } from '../../../src/usecases/files/export-file.ts';
import { loadFile, readUpload } from '../../../src/usecases/files/load-file.ts';
import { papersOf } from '../../../src/usecases/money/papers.ts';
import { sendPaper } from '../../../src/usecases/money/set-order-money.ts';
import { doneOf } from '../../support/outcomes.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';

const NOW = '2027-04-05T07:30:00Z';

const demo = async () => {
  const database = await temporaryDatabase();
  await database.write((tx) => seedDemo(tx, NOW.slice(0, 10), NOW));
  return { database, now: NOW };
};

/** The number of the school's order. */
const SCHOOL = '27-010';

test('money is kept as it was said, and what nobody said is left out', async () => {
  const { database } = await demo();
  await database.write((tx) => setCostsOfYard(tx, { wageHour: 18.5 }));
  expect(await database.read(costsOfYard)).toEqual({ wageHour: 18.5 });
  await database.write((tx) => setCostsOfYard(tx, {}));
  expect(await database.read(costsOfYard)).toEqual({});
});

test('what was paid is what came less what went back', async () => {
  const { database } = await demo();
  expect((await database.read((tx) => ordersOfIds(tx, [SCHOOL])))[0]?.customer?.name).toBe('School garden');
  await database.write(async (tx) => {
    await addPayment(tx, SCHOOL, { on: '2027-04-05', amount: 100.25, back: false, note: null });
    await addPayment(tx, SCHOOL, { on: '2027-04-05', amount: 60, back: true, note: 'One panel less' });
    await setMoneyOfOrder(tx, SCHOOL, { price: 700.5 });
  });
  const of = async () => (await database.read(askedAndPaid)).find(({ order }) => order === SCHOOL);
  expect(await of()).toEqual({ order: SCHOOL, price: 700.5, paid: 300.25 });
  const { payments, deposit } = await database.read((tx) => moneyOfOrder(tx, SCHOOL));
  expect(deposit).toBe(260);
  expect(payments.map(({ amount }) => amount)).toEqual([260, 100.25, 60]);
  await database.write((tx) => removePayment(tx, payments[1]!.id));
  expect((await of())?.paid).toBe(200);
});

test('a yard file that is loaded over it leaves it', async () => {
  const context = await demo();
  const file = JSON.parse((await exportYard(context)).text);
  const read = readUpload(new TextEncoder().encode(JSON.stringify({ ...file, closed: ['2027-12-25'] })), NOW);
  if (!read.ok) throw new Error('not read');
  const before = await context.database.read((tx) => moneyOfOrder(tx, SCHOOL));
  const loaded = await loadFile(context, read.value);
  expect(loaded.ok ? [] : loaded.faults).toEqual([]);
  expect(await context.database.read((tx) => moneyOfOrder(tx, SCHOOL))).toEqual(before);
  expect(await context.database.read(costsOfYard)).toMatchObject({ wageHour: 16 });
  expect([...(await context.database.read(pricesOfKits))]).toEqual([['planter', 440]]);
  expect((await context.database.read(costsOfMoulds)).filter(({ cost }) => cost !== null)).toEqual([
    { id: '1200 no. 3', cost: 66, costTurns: 120 },
  ]);
});

test('quotes and bills as they were sent go with an archive, and come back with it', async () => {
  const context = await demo();
  doneOf(await sendPaper(context, SCHOOL, 'quote'));
  doneOf(await sendPaper(context, SCHOOL, 'bill'));
  const papers = () => context.database.read(async (tx) => papersOf(await moneyOfOrder(tx, SCHOOL)));
  const sent = await papers();
  expect(sent.map(({ kind, number, price }) => [kind, number, price])).toEqual([
    ['quote', 1, 860],
    ['quote', 2, 880],
    ['bill', 1, 880],
  ]);
  expect(sent[2]!.payments).toEqual([{ on: expect.any(String), amount: 260, back: false, note: 'Bank' }]);
  const { text } = await exportArchive(context);
  await context.database.write((tx) => setMoneyOfOrder(tx, SCHOOL, { papers: null, quote: null }));
  expect(await papers()).toEqual([]);
  const read = readUpload(new TextEncoder().encode(text), NOW);
  if (!read.ok) throw new Error('not read');
  doneOf(await loadFile(context, read.value));
  expect(await papers()).toEqual(sent);
});

test('an archive of before there was any money is read', async () => {
  const file = JSON.parse((await exportArchive(await demo())).text);
  const { costs: _costs, orderMoney: _money, ...old } = file;
  for (const mould of old.moulds) {
    delete mould.cost;
    delete mould.costTurns;
  }
  for (const kit of old.kits) delete kit.price;
  const read = readArchive(old);
  expect(read.ok).toBe(true);
});

test('an archive says where money is of no order, or twice of one', async () => {
  const file = JSON.parse((await exportArchive(await demo())).text);
  const [first] = file.orderMoney;
  const read = readArchive({ ...file, orderMoney: [first, first, { ...first, order: '99-001' }] });
  expect(read.ok ? [] : read.faults).toEqual([
    { path: 'orderMoney[1].order', message: '27-009 is given twice' },
    { path: 'orderMoney[2].order', message: 'no order with the number 99-001' },
  ]);
});
