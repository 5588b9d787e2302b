import { describe, expect, test } from 'vitest';
import { addPayment, moneyOfOrder, setMoneyOfOrder } from '../../../db/stores/money-store.ts';
import { openOrders, updateOrder } from '../../../db/stores/order-store.ts';
import type { OrderLine } from '../../../shared/order.ts';
import { longestPacking } from '../../../src/engine/calendar/longest-packing.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { parcelsOf } from '../../../src/usecases/orders/parcels.ts';
import { showOrder } from '../../../src/usecases/orders/show-order.ts';
import { splitOrder } from '../../../src/usecases/orders/split-order.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

describe('the longest packing', () => {
  const hours = (...windows: [string, string, ('pack' | 'batch')[]][]) =>
    smallYard({
      work: windows.map(([start, end, allows]) => ({
        ...{ rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start, end, allows },
      })),
    });

  test('is of the hours in which somebody packs, one after another', () => {
    expect(longestPacking(smallYard())).toBe(240);
    expect(longestPacking(hours(['08:00', '10:00', ['pack']], ['10:00', '13:00', ['pack', 'batch']]))).toBe(300);
    expect(longestPacking(hours(['08:00', '10:00', ['pack']], ['10:00', '16:00', ['batch']]))).toBe(120);
    expect(longestPacking(hours(['08:00', '10:00', ['batch']]))).toBe(0);
  });

  test('leaves setting up and clearing up out', () => {
    const { yard } = smallYard();
    expect(longestPacking(smallYard({ yard: { ...yard, setUpMinutes: 10, clearUpMinutes: 15 } }))).toBe(215);
  });
});

describe('parcels', () => {
  const kits = (packMinutes: number) => ({ kits: smallYard().kits.map((kit) => ({ ...kit, packMinutes })) });
  const pairs = (quantity: number): OrderLine => ({ kit: 'pair', quantity });

  test('are of whole kits, as many as there is time for', () => {
    expect(parcelsOf([pairs(5)], kits(60), 150)).toEqual([[pairs(2)], [pairs(2)], [pairs(1)]]);
    expect(parcelsOf([pairs(2)], kits(60), 150)).toEqual([[pairs(2)]]);
  });

  test('have what takes no packing in the first', () => {
    const panel = { casting: 'panel-900', quantity: 9 };
    expect(parcelsOf([pairs(3), panel], kits(60), 150)).toEqual([[pairs(2), panel], [pairs(1)]]);
  });

  test('cannot be made of a kit that takes longer by itself', () => {
    expect(parcelsOf([pairs(1)], kits(160), 150)).toBeNull();
  });
});

/** Three pairs take 6 hours to pack, and Saturdays have 4: two pairs fit, and not three. */
const tooLong = () =>
  yardContext(
    smallYard({
      kits: smallYard().kits.map((kit) => ({ ...kit, packMinutes: 120 })),
      orders: [{ id: '27-001', customer: 'School garden', due: '2027-06-05', lines: [{ kit: 'pair', quantity: 3 }] }],
    }),
  );

test('an order too large to be packed in one session is packed in one each once it is split', async () => {
  const context = await tooLong();
  await context.database.write((tx) =>
    updateOrder(tx, '27-001', { note: 'Gate code 4', takenAt: '2027-04-01T09:00:00Z' }),
  );
  const before = await showOrder(context, '27-001');
  expect(before).toMatchObject({ parcels: 2, order: { readyOn: '2027-05-01', reason: null } });
  expect(before?.order.packings.length).toBeGreaterThan(1);
  const { words, plan } = doneOf(await splitOrder(context, '27-001'));
  expect(words).toBe('Order 27-001 split: the rest is 27-002');
  expect(await context.database.read(openOrders)).toMatchObject([
    {
      id: '27-001',
      takenAt: '2027-04-01T09:00:00Z',
      note: 'Gate code 4',
      promisedOn: '2027-06-05',
      lines: [{ kit: 'pair', quantity: 2 }],
    },
    {
      ...{ id: '27-002', takenAt: context.now, note: 'Part 2 of 27-001. Gate code 4', promisedOn: '2027-06-05' },
      ...{ customer: { name: 'School garden' }, lines: [{ kit: 'pair', quantity: 1 }] },
    },
  ]);
  expect(plan.orders.map(({ packs }) => packs)).toEqual([undefined, undefined]);
  expect((await showOrder(context, '27-001'))?.parcels).toBeNull();
});

// Four pieces and two: of 100.00 two thirds are 66.67 to the cent, of 50.01 they are 33.34, of a cost of 40.05 they are 26.70.
test('the price of an order that is split, what was paid of it and its estimate are shared by its pieces, to the cent', async () => {
  const context = await tooLong();
  const { database } = context;
  const paid = { on: '2027-04-02', back: false, note: 'Bank' };
  await database.write(async (tx) => {
    const estimate = { at: '2027-04-01T09:00:00Z', parts: { work: 40.05 } };
    await setMoneyOfOrder(tx, '27-001', { price: 100, deposit: 30, estimate });
    await addPayment(tx, '27-001', { ...paid, amount: 50.01 });
  });
  const moneyOf = async (id: string) => {
    const { price, deposit, estimate, payments } = await database.read((tx) => moneyOfOrder(tx, id));
    return { price, deposit, work: estimate?.parts.work, payments: payments.map(({ id: _id, ...one }) => one) };
  };
  const before = await moneyOf('27-001');
  const { change } = doneOf(await splitOrder(context, '27-001'));
  expect(await moneyOf('27-001')).toEqual({
    ...{ price: 66.67, deposit: 20, work: 26.7, payments: [{ ...paid, amount: 33.34 }] },
  });
  expect(await moneyOf('27-002')).toEqual({
    ...{ price: 33.33, deposit: 10, work: 13.35, payments: [{ ...paid, amount: 16.67 }] },
  });
  doneOf(await undoChange(context, change));
  expect(await moneyOf('27-001')).toEqual(before);
});

test('one that is planned as it is, or is not there, is not split', async () => {
  const context = await yardContext();
  expect((await showOrder(context, '27-001'))?.parcels).toBeNull();
  expect(refusalOf(await splitOrder(context, '27-001'))).toMatch(/^order: Order 27-001 does not have to be split/);
  expect(refusalOf(await splitOrder(context, '27-009'))).toBe('order: There is no order 27-009.');
});
