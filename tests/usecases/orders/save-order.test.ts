import { describe, expect, test } from 'vitest';
import { recentChanges } from '../../../db/stores/change-store.ts';
import { orderById, updateOrder } from '../../../db/stores/order-store.ts';
import { bumpRevision } from '../../../db/stores/yard-store.ts';
import type { UseCaseContext } from '../../../src/usecases/core/context.ts';
import { editOrder } from '../../../src/usecases/orders/edit-order.ts';
import { holdOrder } from '../../../src/usecases/orders/hold-order.ts';
import { promiseOrder } from '../../../src/usecases/orders/promise-order.ts';
import { type OrderEdit, saveOrder } from '../../../src/usecases/orders/save-order.ts';
import { takeOrder } from '../../../src/usecases/orders/take-order.ts';
import type { Effect } from '../../../src/usecases/plan/save-edit.ts';
import type { OrderDraft } from '../../../src/usecases/typed/order-form.ts';
import { BLANK_DRAFT } from '../../support/blank-draft.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/** Two pairs take two Saturdays of the small yard. */
const pairs = (quantity: number, changes: Partial<OrderDraft> = {}): OrderDraft => ({
  ...BLANK_DRAFT,
  customer: 'Ann Moran',
  lines: [{ row: 0, line: { kit: 'pair', quantity } }],
  ...changes,
});

const effectOf = async <T>(context: UseCaseContext, edit: OrderEdit<T>): Promise<Effect | null> => {
  const saved = await saveOrder(context, edit, undefined);
  if (saved.kind === 'refused') throw new Error(JSON.stringify(saved.faults));
  return saved.kind === 'moves' ? saved.effect : null;
};

const stored = ({ database }: UseCaseContext, id: string) => database.read((tx) => orderById(tx, id));

describe('an order that is taken', () => {
  test('with a date that the plan keeps is taken at once', async () => {
    const context = await yardContext();
    const saved = await saveOrder(context, takeOrder(pairs(1, { promisedOn: '2027-04-24' })), undefined);
    expect(saved).toMatchObject({ kind: 'saved', value: { id: '27-002' } });
  });

  test('with a date that cannot be kept is asked about, with the date that could be given, and not saved', async () => {
    const context = await yardContext();
    const take = takeOrder(pairs(4, { promisedOn: '2027-04-10' }));
    const effect = await effectOf(context, take);
    expect(effect).toMatchObject({
      moved: [],
      unkept: [{ order: '27-002', customer: 'Ann Moran', promisedOn: '2027-04-10', reason: null }],
      passed: [],
    });
    expect(effect?.insteadOn).toBe(effect?.unkept[0]?.readyOn);
    expect(await stored(context, '27-002')).toBeNull();
    expect(await context.database.read((tx) => recentChanges(tx, 5))).toEqual([]);
    // Another effect than this one is no answer.
    expect(await saveOrder(context, take, '27-002 2027-04-10 not before 2027-04-10')).toMatchObject({ kind: 'moves' });
    expect(await saveOrder(context, take, effect?.seen)).toMatchObject({ kind: 'saved', value: { id: '27-002' } });
    expect(await stored(context, '27-002')).toMatchObject({ promisedOn: '2027-04-10' });
  });

  test('with the date that could be given instead is taken at once', async () => {
    const context = await yardContext();
    const effect = await effectOf(context, takeOrder(pairs(4, { promisedOn: '2027-04-10' })));
    expect(await effectOf(context, takeOrder(pairs(4, { promisedOn: effect?.insteadOn ?? null })))).toBeNull();
  });

  test('that cannot be made at all says why', async () => {
    const moulds = smallYard().moulds.map((mould) => ({ ...mould, condition: 'retired' as const }));
    const context = await yardContext(smallYard({ moulds }));
    const effect = await effectOf(context, takeOrder(pairs(1, { promisedOn: '2027-04-24' })));
    expect(effect?.unkept).toMatchObject([{ readyOn: null, reason: expect.stringContaining('no usable mould') }]);
    expect(effect?.insteadOn).toBeNull();
  });

  test('without a date is asked about for nothing', async () => {
    const context = await yardContext();
    expect(await effectOf(context, takeOrder(pairs(20)))).toBeNull();
  });
});

describe('an order that is there', () => {
  const promise = (id: string, promisedOn: string) => promiseOrder(id, { promisedOn, next: {} });
  const pair = (id: string, customer: string, weight = 1) => ({
    ...{ id, customer, weight, lines: [{ kit: 'pair', quantity: 2 }] },
  });
  /** Two pairs each: the first one's customer asked for the 17th and was told nothing, the others named no day. */
  const threeOrders = async () => {
    const orders = [pair('27-001', 'School garden'), pair('27-002', 'Pat Dunne', 6), pair('27-003', 'Tom Keane')];
    const context = await yardContext(smallYard({ orders }));
    await context.database.write(async (tx) => {
      await updateOrder(tx, '27-001', { wantedOn: '2027-04-17' });
      await bumpRevision(tx);
    });
    return context;
  };

  test('promised a day that makes another later names it, from day to day', async () => {
    const context = await threeOrders();
    const effect = await effectOf(context, promise('27-002', '2027-04-17'));
    expect(effect).toMatchObject({
      moved: [{ order: '27-001', customer: 'School garden', from: '2027-04-17', to: '2027-04-24', promisedOn: null }],
      unkept: [],
      insteadOn: '2027-04-24',
    });
    expect((await stored(context, '27-002'))?.promisedOn).toBeNull();
    expect(await saveOrder(context, promise('27-002', '2027-04-17'), effect?.seen)).toMatchObject({ kind: 'saved' });
    expect((await stored(context, '27-002'))?.promisedOn).toBe('2027-04-17');
  });

  test('is held for a day that cannot be kept only once that is seen', async () => {
    const context = await yardContext();
    const order = pairs(4, { promisedOn: '2027-05-29' });
    await saveOrder(context, takeOrder(order), undefined);
    const hold = holdOrder('27-002', { promisedOn: '2027-04-10', heldUntil: '2027-04-12', next: {} });
    expect(await effectOf(context, hold)).toMatchObject({ unkept: [{ order: '27-002', promisedOn: '2027-04-10' }] });
    expect((await stored(context, '27-002'))?.heldUntil).toBeNull();
  });

  test('asked for more than its promised date allows is asked about; changed otherwise it is not, late as it is', async () => {
    const context = await yardContext();
    const edit = (quantity: number, note: string) =>
      editOrder('27-001', pairs(quantity, { customer: 'School garden', promisedOn: '2027-04-10', note }));
    const effect = await effectOf(context, edit(6, ''));
    expect(effect?.unkept).toMatchObject([{ order: '27-001', customer: 'School garden', promisedOn: '2027-04-10' }]);
    expect(await saveOrder(context, edit(6, ''), effect?.seen)).toMatchObject({ kind: 'saved' });
    expect(await effectOf(context, edit(6, 'Gate code 4'))).toBeNull();
  });

  test('promised a day gone by is asked about, with the next such day where no year was typed', async () => {
    const context = await yardContext();
    const days = { promisedOn: '2027-04-07', next: { promisedOn: '2028-04-07' } };
    expect(await effectOf(context, promiseOrder('27-001', days))).toMatchObject({
      passed: [{ field: 'promisedOn', on: '2027-04-07', next: '2028-04-07' }],
      unkept: [{ promisedOn: '2027-04-07', readyOn: '2027-04-10' }],
    });
    const wanted = { ...pairs(1), wantedOn: '2027-04-01' };
    expect(await effectOf(context, takeOrder(wanted))).toMatchObject({
      passed: [{ field: 'wantedOn', on: '2027-04-01', next: null }],
      unkept: [],
    });
  });
});
