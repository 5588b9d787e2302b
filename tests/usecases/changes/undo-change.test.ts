import { sql } from 'drizzle-orm';
import { describe, expect, test } from 'vitest';
import { CAPTURED_TABLES } from '../../../db/capture.ts';
import type { Tx } from '../../../db/open.ts';
import { changeById } from '../../../db/stores/change-store.ts';
import { customerNamed } from '../../../db/stores/customer-store.ts';
import { addFinished } from '../../../db/stores/finished-store.ts';
import { addIncoming, markArrived } from '../../../db/stores/material-store.ts';
import { addMould, emptyMould, fillMould, updateMould } from '../../../db/stores/mould-store.ts';
import { addOrder, freeSetAside, nextOrderId, replaceLines, updateOrder } from '../../../db/stores/order-store.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { stockSums } from '../../../db/stores/stock-store.ts';
import { addExtra, replaceDay } from '../../../db/stores/work-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { done, type UseCaseContext } from '../../../src/usecases/core/context.ts';
import { changing } from '../../../src/usecases/plan/changing.ts';
import { smallYard } from '../../support/small-yard.ts';
import { countedNow, moreOf } from '../../support/stock-set.ts';
import { yardContext } from '../../support/yard-context.ts';

/** Lines of the stock book stay when they are undone, and others say so; what was undone comes to nothing. */
const STAYS = 'stockEntries';

/** Everything that a change may write, as it lies in the tables; of the stock book what it comes to. */
const everything = ({ database }: UseCaseContext) =>
  database.read(async (tx) => {
    const sums = (await stockSums(tx)).map((sum) => ({ ...sum, quantity: Math.round(sum.quantity * 1e6) }));
    const tables: unknown[] = [sums.filter(({ quantity }) => quantity !== 0)];
    for (const { name, keys } of [...CAPTURED_TABLES.values()].filter((table) => table.name !== STAYS))
      tables.push([
        name,
        await tx.all(sql.raw(`select * from "${name}" order by ${keys.map((key) => `"${key}"`).join(', ')}`)),
      ]);
    return tables;
  });

const change = async (
  context: UseCaseContext,
  work: (tx: Tx) => Promise<void>,
  words = 'A change',
): Promise<number> => {
  const outcome = await changing(context, { kind: 'test', words }, async (tx) => {
    await work(tx);
    return done(null);
  });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  return outcome.value.change;
};

const takeOrder = async (tx: Tx, now: string): Promise<string> => {
  const id = await nextOrderId(tx, '2027-04-08');
  const customerId = await customerNamed(tx, "O'Hara", '01 234', 'gate code "7"');
  const dates = { wantedOn: '2027-05-01', notBefore: null, promisedOn: null, heldUntil: null };
  await addOrder(tx, {
    id,
    customerId,
    ...dates,
    weight: 1,
    note: null,
    address: null,
    takenAt: now,
    lines: [{ kit: 'pair', quantity: 2 }],
  });
  return id;
};

describe('undoing a change', () => {
  test('puts back whatever it added, altered and took away, to the last bit', async () => {
    const context = await yardContext(
      smallYard({
        inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-03T10:00:00+01:00', order: '27-001' }],
        extra: [{ date: '2027-04-16', start: '09:00', end: '12:00' }],
      }),
    );
    await change(context, (tx) => countedNow(tx, 'mortar', 0.1 + 0.2));
    const before = await everything(context);
    const id = await change(context, async (tx) => {
      const order = await takeOrder(tx, context.now);
      await replaceLines(tx, order, [{ casting: 'panel-900', quantity: 1 }]);
      await updateOrder(tx, '27-001', { status: 'cancelled' });
      await freeSetAside(tx, '27-001');
      await moreOf(tx, 'mortar', 1.1);
      await markArrived(
        tx,
        await addIncoming(tx, { material: 'rod', quantity: 2, on: '2027-04-08', boughtOn: null, price: 1.1 }),
        { on: '2027-04-08', at: '2027-04-08T07:00:00Z' },
      );
      await emptyMould(tx, '900 no. 1');
      await updateMould(tx, '900 no. 1', { condition: 'damaged', damageNote: "corner's gone" });
      await fillMould(tx, { mould: '900 no. 2', casting: 'panel-900', filledAt: context.now, order });
      await addFinished(tx, { casting: 'panel-900', count: 1, readyAt: null, order });
      for (const mould of smallYard().moulds) await addMould(tx, { ...mould, id: `${mould.id} b` });
      await replaceDay(tx, '2027-04-16', []);
      await addExtra(tx, { date: '2027-04-18', start: '10:00', end: '11:00', crew: 1, allows: ['pack'] });
    });
    expect(await everything(context)).not.toEqual(before);
    expect(await undoChange(context, id)).toMatchObject({ ok: true, value: { value: { undone: id } } });
    expect(await everything(context)).toEqual(before);
  });

  test('even when it put another yard in place of the old one', async () => {
    const context = await yardContext();
    const before = await everything(context);
    const id = await change(context, (tx) => replaceYard(tx, smallYard({ orders: [], closed: ['2027-04-10'] })));
    expect(await everything(context)).not.toEqual(before);
    expect(await undoChange(context, id)).toMatchObject({ ok: true });
    expect(await everything(context)).toEqual(before);
  });

  test('moves promises back and can itself be undone', async () => {
    const context = await yardContext();
    const id = await change(context, (tx) => replaceDay(tx, '2027-04-10', []), 'No work on Sat 10 Apr');
    const after = await everything(context);
    const undo = await undoChange(context, id);
    if (!undo.ok) throw new Error(JSON.stringify(undo.faults));
    expect(undo.value.words).toBe('Undone: No work on Sat 10 Apr');
    expect(undo.value.moved).toMatchObject([{ order: '27-001', from: '2027-04-17', to: '2027-04-10' }]);
    expect((await context.database.read((tx) => changeById(tx, id)))?.undoneBy).toBe(undo.value.change);
    expect(await undoChange(context, undo.value.change)).toMatchObject({ ok: true });
    expect(await everything(context)).toEqual(after);
    expect((await context.database.read((tx) => changeById(tx, id)))?.undoneBy).toBe(null);
    expect(await undoChange(context, id)).toMatchObject({ ok: true });
  });
});

describe('undoing is refused', () => {
  const refused = (message: string) => ({ ok: false, faults: [{ path: 'change', message }] });

  test('when what it wrote has been changed since, and then nothing is undone', async () => {
    const context = await yardContext();
    const first = await change(context, async (tx) => {
      await countedNow(tx, 'mortar', 7);
      await updateMould(tx, '900 no. 2', { condition: 'dirty' });
    });
    await change(context, (tx) => updateMould(tx, '900 no. 2', { condition: 'ready' }));
    const before = await everything(context);
    const message = 'Mould 900 no. 2 has been changed since. Undo that first. Nothing was undone.';
    expect(await undoChange(context, first)).toEqual(refused(message));
    expect(await everything(context)).toEqual(before);
  });

  test('when something newer depends on what it added', async () => {
    const context = await yardContext();
    const taken = await change(context, async (tx) => void (await takeOrder(tx, context.now)));
    await change(context, (tx) => addFinished(tx, { casting: 'panel-900', count: 1, readyAt: null, order: '27-002' }));
    const before = await everything(context);
    const message = 'A finished piece has been changed since. Undo that first. Nothing was undone.';
    expect(await undoChange(context, taken)).toEqual(refused(message));
    expect(await everything(context)).toEqual(before);
  });

  test('a second time, for what never was, and for what is too long ago', async () => {
    const context = await yardContext();
    const id = await change(context, (tx) => countedNow(tx, 'mortar', 7));
    await undoChange(context, id);
    expect(await undoChange(context, id)).toEqual(refused('That was undone already.'));
    expect(await undoChange(context, 99)).toEqual(refused('There is no such change.'));
    const old = await change(context, (tx) => countedNow(tx, 'mortar', 7));
    const later = { ...context, now: '2027-05-09T09:00:00+01:00' };
    await change(later, (tx) => countedNow(tx, 'rod', 7));
    expect(await undoChange(later, old)).toEqual(refused('That is too long ago to be undone.'));
  });
});
