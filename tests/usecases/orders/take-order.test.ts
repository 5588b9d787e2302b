import { describe, expect, test } from 'vitest';
import { orderById } from '../../../db/stores/order-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { takeOrder } from '../../../src/usecases/orders/take-order.ts';
import type { OrderDraft } from '../../../src/usecases/typed/order-form.ts';
import { BLANK_DRAFT } from '../../support/blank-draft.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { doAnyway } from '../../support/saving.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const draft = (changes: Partial<OrderDraft> = {}): OrderDraft => ({
  ...BLANK_DRAFT,
  customer: 'Allotment 12',
  wantedOn: '2027-04-17',
  lines: [{ row: 0, line: { casting: 'panel-900', quantity: 3 } }],
  ...changes,
});

test('an order gets the next number of the year, its weight by whether it can slip, and pours of its own', async () => {
  const context = await yardContext();
  const { words, value, plan } = doneOf(await doAnyway(context, takeOrder(draft({ slip: 'not' }))));
  expect(words).toBe('Order 27-002 for Allotment 12 taken');
  expect(await context.database.read((tx) => orderById(tx, value.id))).toMatchObject({
    ...{ status: 'open', weight: 6, wantedOn: '2027-04-17', promisedOn: null, note: null },
    lines: [{ casting: 'panel-900', quantity: 3 }],
  });
  expect(plan.pours.filter(({ order }) => order === value.id)).toHaveLength(3);
});

test('undone, it is gone, and its number is free', async () => {
  const context = await yardContext();
  const { change } = doneOf(await doAnyway(context, takeOrder(draft())));
  doneOf(await undoChange(context, change));
  expect(await context.database.read((tx) => orderById(tx, '27-002'))).toBeNull();
  expect(doneOf(await doAnyway(context, takeOrder(draft()))).value.id).toBe('27-002');
});

test('of parts, which are bought and not made, it may ask for more than 200', async () => {
  const context = await yardContext();
  const rods = (quantity: number) => draft({ lines: [{ row: 0, line: { material: 'rod', quantity } }] });
  const { value } = doneOf(await doAnyway(context, takeOrder(rods(5000))));
  expect((await context.database.read((tx) => orderById(tx, value.id)))?.lines).toEqual([
    { material: 'rod', quantity: 5000 },
  ]);
  expect(refusalOf(await doAnyway(context, takeOrder(rods(1_000_001))))).toMatch(
    /^quantity0: 1,000,000 is the most one line/,
  );
});

describe('is refused at its field', () => {
  const lines = (...quantities: number[]) =>
    quantities.map((quantity, row) => ({ row, line: { casting: 'panel-900', quantity } }));

  test.each<[Partial<OrderDraft>, RegExp]>([
    [{ lines: [] }, /^what0: Choose what is ordered/],
    [{ lines: [{ row: 2, line: { kit: 'gone', quantity: 1 } }] }, /^what2: That is no longer made here/],
    [{ lines: lines(1, 0) }, /^quantity1: Has to be more than 0/],
    [{ lines: lines(201) }, /^quantity0: 200 is the most one line can ask for/],
    [{ wantedOn: '2029-04-07' }, /^wantedOn: That is further off than is planned/],
    [{ unread: [{ path: 'wantedOn', message: 'No day.' }] }, /^wantedOn: No day\.$/],
  ])('%j', async (changes, why) => {
    const context = await yardContext();
    expect(refusalOf(await doAnyway(context, takeOrder(draft(changes))))).toMatch(why);
    expect(await context.database.read((tx) => orderById(tx, '27-002'))).toBeNull();
  });

  // 10 lines of 10,000 panels are all that a plan is made for; the small yard's own order is the first to go.
  test('with the row that makes it more than can be planned in all', async () => {
    const panels = Array.from({ length: 10 }, () => ({ casting: 'panel-900', quantity: 10_000 }));
    panels[9] = { casting: 'panel-900', quantity: 9_995 };
    const context = await yardContext(smallYard({ orders: [{ id: '27-001', lines: panels }] }));
    expect(refusalOf(await doAnyway(context, takeOrder(draft({ lines: lines(5, 1) }))))).toBe(
      'quantity1: That is more than can be planned here.',
    );
  });
});
