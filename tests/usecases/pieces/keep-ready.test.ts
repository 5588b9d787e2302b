import { describe, expect, test } from 'vitest';
import type { OrderLine } from '../../../shared/order.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import type { UseCaseContext } from '../../../src/usecases/core/context.ts';
import { takeOrder } from '../../../src/usecases/orders/take-order.ts';
import { keepReady, keptTyped } from '../../../src/usecases/pieces/keep-ready.ts';
import { showPieces } from '../../../src/usecases/pieces/show-pieces.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import type { OrderDraft } from '../../../src/usecases/typed/order-form.ts';
import { removeEntry } from '../../../src/usecases/yard/remove-entry.ts';
import { archived } from '../../support/archived.ts';
import { BLANK_DRAFT } from '../../support/blank-draft.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { doAnyway, savedAnyway } from '../../support/saving.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const PAIRS = { what: 'kit:pair', count: 2 };

const draftOf = (line: OrderLine): OrderDraft => ({
  ...BLANK_DRAFT,
  customer: 'Allotment',
  promisedOn: null,
  lines: [{ row: 0, line }],
});

const stockOf = async (context: UseCaseContext) => {
  const { plan } = await currentPlan(context);
  return plan.pours.filter(({ order }) => order === undefined).length;
};

const readyOf = async (context: UseCaseContext) => {
  const { plan } = await currentPlan(context);
  return plan.orders.map(({ id, completesOn }) => [id, completesOn]);
};

describe('two kits that are to stand ready', () => {
  test('are poured for nobody, and move no order; undone, nothing is poured for them', async () => {
    const context = await yardContext();
    const before = await readyOf(context);
    const { change, words } = doneOf(await keepReady(context, PAIRS));
    expect(words).toBe('Pair of panels: 2 to stand ready');
    expect(await stockOf(context)).toBe(4);
    expect(await readyOf(context)).toEqual(before);
    const { kept } = await showPieces(context);
    expect(kept).toMatchObject([{ name: 'Pair of panels', count: 2, there: 0, readyOn: expect.any(String) }]);
    doneOf(await undoChange(context, change));
    expect(await stockOf(context)).toBe(0);
    expect((await showPieces(context)).kept).toEqual([]);
  });

  test('count what stands there for nobody, and are replenished once an order takes it', async () => {
    const context = await yardContext(smallYard({ finished: [{ casting: 'panel-900', count: 6 }] }));
    doneOf(await keepReady(context, PAIRS));
    expect(await stockOf(context)).toBe(0);
    expect((await showPieces(context)).kept).toMatchObject([{ there: 2 }]);
    const { value } = doneOf(await doAnyway(context, takeOrder(draftOf({ kit: 'pair', quantity: 1 }))));
    expect(await readyOf(context)).toContainEqual([value.id, '2027-04-10']);
    expect(await stockOf(context)).toBe(2);
  });

  test('are no longer poured where an order comes that needs the time', async () => {
    const context = await yardContext();
    doneOf(await keepReady(context, PAIRS));
    const without = await yardContext();
    doneOf(await doAnyway(context, takeOrder(draftOf({ casting: 'panel-900', quantity: 9 }))));
    doneOf(await doAnyway(without, takeOrder(draftOf({ casting: 'panel-900', quantity: 9 }))));
    expect(await readyOf(context)).toEqual(await readyOf(without));
  });

  test('go with an archive, and go away with the kit', async () => {
    const context = await yardContext(smallYard({ orders: [] }));
    doneOf(await keepReady(context, PAIRS));
    doneOf(await keepReady(context, { what: 'casting:panel-900', count: 1 }));
    const { other, text, again } = await archived(context);
    expect(again).toBe(text);
    expect(await stockOf(other)).toBe(5);
    await savedAnyway(other, removeEntry('kit', 'pair'));
    expect((await showPieces(other)).kept).toMatchObject([{ what: 'casting:panel-900', count: 1 }]);
  });
});

test('what is no kit and no piece is refused, and what is no number', async () => {
  const context = await yardContext();
  expect(refusalOf(await keepReady(context, { what: 'material:rod', count: 1 }))).toContain('Choose a kit or a piece.');
  expect(keptTyped({ what: 'kit:pair', ready: 'two' })).toMatchObject({ ok: false });
  expect(keptTyped({ what: 'kit:pair', ready: '51' })).toMatchObject({ ok: false });
});
