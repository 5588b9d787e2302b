import { eq } from 'drizzle-orm';
import { describe, expect, test } from 'vitest';
import { incomingById, materialById, onTheirWay } from '../../../db/stores/material-store.ts';
import { incomings } from '../../../db/tables/material.ts';
import { giveUpPurchase } from '../../../src/usecases/buying/give-up-purchase.ts';
import { receiveMaterial } from '../../../src/usecases/buying/receive-material.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/** Twelve bags are on their way, due on Monday the 5th; it is Thursday. */
const waiting = async () => {
  const context = await yardContext(smallYard({ incoming: [{ material: 'mortar', quantity: 12, on: '2027-04-05' }] }));
  const coming = () => context.database.read(onTheirWay);
  const bags = async () => (await context.database.read((tx) => materialById(tx, 'mortar')))?.onHand;
  return { context, coming, bags, id: (await coming())[0]!.id };
};
const gone = /^goods: That has arrived already, or is no longer on its way\./;

describe('goods that have come', () => {
  test('are in stock, and no longer on their way; twice they do not come', async () => {
    const { context, coming, bags, id } = await waiting();
    expect(doneOf(await receiveMaterial(context, id, { text: '' })).words).toBe('Fast-setting mortar arrived');
    expect([await bags(), await coming()]).toEqual([32, []]);
    expect(refusalOf(await receiveMaterial(context, id, { text: '' }))).toMatch(gone);
    expect(await bags()).toBe(32);
  });

  test('fewer than were bought: the rest is on its way still, due today at the soonest', async () => {
    const { context, coming, bags, id } = await waiting();
    doneOf(await receiveMaterial(context, id, { text: '5' }));
    expect(await bags()).toBe(25);
    expect(await coming()).toMatchObject([{ material: 'mortar', quantity: 7, on: '2027-04-08' }]);
  });

  // 129.00 for 12: 5 of them are 53.75, 7 are 75.25.
  test('of fewer, what was paid for all goes with each part, to the cent', async () => {
    const { context, coming, id } = await waiting();
    await context.database.write((tx) => tx.update(incomings).set({ price: 129 }).where(eq(incomings.id, id)));
    doneOf(await receiveMaterial(context, id, { text: '5' }));
    const [rest] = await coming();
    expect(rest).toMatchObject({ quantity: 7, price: 75.25 });
    expect(await context.database.read((tx) => incomingById(tx, id))).toMatchObject({ quantity: 5, price: 53.75 });
  });

  // Bought at 129.00 for 12; of the 5 that came 60.00 was paid, and the other 7 keep their 75.25.
  test('what is typed as paid is for what came, with the date on its bags; an empty field says that nobody knows', async () => {
    const { context, coming, id } = await waiting();
    const paid = () => context.database.read((tx) => incomingById(tx, id));
    await context.database.write((tx) => tx.update(incomings).set({ price: 129 }).where(eq(incomings.id, id)));
    expect(refusalOf(await receiveMaterial(context, id, { text: '5', price: 'dear' }))).toMatch(/^price: /);
    doneOf(await receiveMaterial(context, id, { text: '5', price: '€60', useBy: '2027-09-01' }));
    expect(await paid()).toMatchObject({ quantity: 5, price: 60, useBy: '2027-09-01' });
    const [rest] = await coming();
    expect(rest).toMatchObject({ quantity: 7, price: 75.25, useBy: null });
    doneOf(await receiveMaterial(context, rest!.id, { text: '', price: '' }));
    expect(await context.database.read((tx) => incomingById(tx, rest!.id))).toMatchObject({ quantity: 7, price: null });
  });

  test('more than were bought are all in stock', async () => {
    const { context, coming, bags, id } = await waiting();
    doneOf(await receiveMaterial(context, id, { text: '13' }));
    expect([await bags(), await coming()]).toEqual([33, []]);
  });

  test('ten times what was bought, or more, is asked about first', async () => {
    const { context, bags, id } = await waiting();
    const asked = await receiveMaterial(context, id, { text: '1000000' });
    expect(refusalOf(asked)).toBe(
      'came: That is 83,333 times what was bought. If so much came, press Arrived once more.',
    );
    expect(refusalOf(await receiveMaterial(context, id, { text: '120', sure: '1000000' }))).toContain('10 times');
    expect(await bags()).toBe(20);
    doneOf(await receiveMaterial(context, id, { text: '120', sure: '120' }));
    expect(await bags()).toBe(140);
  });

  test('nearly ten times what was bought is not', async () => {
    const { context, bags, id } = await waiting();
    doneOf(await receiveMaterial(context, id, { text: '119' }));
    expect(await bags()).toBe(139);
  });

  test.each(['0', 'a few', '1000000001', '999999981'])('%s is refused, and they stay on their way', async (text) => {
    const { context, coming, bags, id } = await waiting();
    expect(refusalOf(await receiveMaterial(context, id, { text }))).toMatch(/^came: /);
    expect([await bags(), (await coming()).length]).toEqual([20, 1]);
  });
});

test('of what comes in lengths a share of one has not come', async () => {
  const context = await yardContext(smallYard({ incoming: [{ material: 'rod', quantity: 4, on: '2027-04-05' }] }));
  const [rods] = await context.database.read(onTheirWay);
  expect(refusalOf(await receiveMaterial(context, rods!.id, { text: '2.5' }))).toBe(
    'came: It comes in whole ones. Write a whole number.',
  );
  doneOf(await receiveMaterial(context, rods!.id, { text: '3' }));
});

describe('goods that are not coming', () => {
  test('are no longer on their way, and the stock is as it was', async () => {
    const { context, coming, bags, id } = await waiting();
    const { words, yard } = doneOf(await giveUpPurchase(context, id));
    expect([words, yard.incoming]).toEqual(['Fast-setting mortar is not coming', []]);
    expect([await bags(), await coming()]).toEqual([20, []]);
  });

  test('those that came cannot be given up', async () => {
    const { context, bags, id } = await waiting();
    doneOf(await receiveMaterial(context, id, { text: '' }));
    expect(refusalOf(await giveUpPurchase(context, id))).toMatch(gone);
    expect(await bags()).toBe(32);
  });
});
