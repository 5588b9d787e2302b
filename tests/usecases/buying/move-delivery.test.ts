import { describe, expect, test } from 'vitest';
import { markArrived, onTheirWay } from '../../../db/stores/material-store.ts';
import { moveDelivery } from '../../../src/usecases/buying/move-delivery.ts';
import { saveEdit } from '../../../src/usecases/plan/save-edit.ts';
import { refusedFor } from '../../support/saving.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/** No bag is in the yard; those for the order of Saturday the 10th come the day before. */
const waiting = async () => {
  const materials = smallYard().materials.map((one) => (one.id === 'mortar' ? { ...one, onHand: 0 } : one));
  const context = await yardContext(
    smallYard({ materials, incoming: [{ material: 'mortar', quantity: 12, on: '2027-04-09' }] }),
  );
  const coming = async () => (await context.database.read(onTheirWay)).map(({ on }) => on);
  const goods = String((await context.database.read(onTheirWay))[0]!.id);
  return { context, coming, goods };
};

describe('a delivery gets another day', () => {
  test('at once where no order waits for it', async () => {
    const { context, coming, goods } = await waiting();
    const saved = await saveEdit(context, moveDelivery({ goods, on: 'tomorrow' }), undefined);
    expect(saved).toMatchObject({ kind: 'saved', value: { name: 'Fast-setting mortar' } });
    expect(await coming()).toEqual(['2027-04-09']);
  });

  test('with the dates that move by it in sight', async () => {
    const { context, coming, goods } = await waiting();
    const edit = moveDelivery({ goods, on: '12 Apr' });
    const asked = await saveEdit(context, edit, undefined);
    expect(asked).toMatchObject({
      kind: 'moves',
      effect: { moved: [{ order: '27-001', from: '2027-04-10', to: '2027-04-17' }] },
    });
    expect(await coming()).toEqual(['2027-04-09']);
    const seen = asked.kind === 'moves' ? asked.effect.seen : '';
    expect(await saveEdit(context, edit, seen)).toMatchObject({ kind: 'saved' });
    expect(await coming()).toEqual(['2027-04-12']);
  });

  test('not one that has passed, nor none, nor where it came already', async () => {
    const { context, goods } = await waiting();
    const refused = (on: string) => refusedFor(context, moveDelivery({ goods, on }));
    expect(await refused('2027-04-07')).toEqual([
      'on: That day has passed. If it has come already, count the stock instead.',
    ]);
    expect(await refused('')).toEqual(['on: When is it expected? Write a day.']);
    await context.database.write((tx) =>
      markArrived(tx, Number(goods), { on: '2027-04-08', at: '2027-04-08T07:00:00Z' }),
    );
    expect(await refused('12 Apr')).toEqual([
      'goods: That has arrived already, or is no longer on its way. Nothing was changed.',
    ]);
  });
});
