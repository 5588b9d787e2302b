import { describe, expect, test } from 'vitest';
import { addIncoming, onTheirWay } from '../../db/stores/material-store.ts';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { recordPour } from '../../src/usecases/today/record-pour.ts';
import { screensOver, type TestScreens, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';
import { yardContext } from '../support/yard-context.ts';

const NOW = '2027-04-08T09:00:00+01:00';
const { materials } = smallYard();
const yardWith = (mortar: object) => smallYard({ materials: [{ ...materials[0]!, ...mortar }, materials[1]!] });

const coming = async (mortar: object) => {
  const screens = await screensOver(yardWith(mortar));
  const goods = { material: 'mortar', quantity: 6, on: '2027-04-08', boughtOn: null, price: null };
  const id = await screens.database.write((tx) => addIncoming(tx, goods));
  return { ...screens, goods: String(id) };
};

const mortarIn = async ({ database }: Pick<TestScreens, 'database'>) => {
  const { materials: now } = await database.read((tx) => loadYardFile(tx, NOW));
  const { onHand, lots } = now[0]!;
  return { onHand, lots };
};

describe('what arrives', () => {
  test('has the date that was read off the bag; what is still to come stays open', async () => {
    const screens = await coming({ onHand: 0, shelfLifeDays: 90 });
    expect(await (await screens.get('/buying')).text()).toContain('Wed 7 Jul 2027');
    await screens.post('/buying/arrived', { goods: screens.goods, came: '2', useBy: '2 May' });
    expect(await mortarIn(screens)).toEqual({ onHand: 2, lots: [{ quantity: 2, useBy: '2027-05-02' }] });
    const text = await textOf(await screens.get('/buying'));
    expect(text).toContain('2 of bag date Sun 2 May.');
    expect(text).toContain('4 bags of Fast-setting mortar');
  });

  test('keeps so long from the day it was packed, where the bag says that', async () => {
    const screens = await coming({ onHand: 0, shelfLifeDays: 90 });
    const refused = await screens.post('/buying/arrived', { goods: screens.goods, useBy: 'packed 6 Apr 2028' });
    expect(await textOf(refused)).toContain('That day is still to come.');
    // Packed on 20 March 2027, which has gone by: 90 days are 18 June.
    await screens.post('/buying/arrived', { goods: screens.goods, came: '1', useBy: 'packed 20 Mar' });
    expect((await mortarIn(screens)).lots).toEqual([{ quantity: 1, useBy: '2027-06-18' }]);
    const [rest] = (await screens.database.read(onTheirWay)).map(({ id }) => String(id));
    await screens.post('/buying/arrived', { goods: rest!, came: '1', useBy: 'Packed on 1 Dec' });
    // 1 December 2026, the last one there was.
    expect((await mortarIn(screens)).lots).toEqual([
      { quantity: 1, useBy: '2027-03-01' },
      { quantity: 1, useBy: '2027-06-18' },
    ]);
  });

  test('keeps as long as it does where nobody said, and for ever where the field was emptied', async () => {
    const guessed = await coming({ onHand: 0, shelfLifeDays: 90 });
    await guessed.post('/buying/arrived', { goods: guessed.goods });
    expect((await mortarIn(guessed)).lots).toEqual([{ quantity: 6, useBy: '2027-07-07' }]);
    const emptied = await coming({ onHand: 0, shelfLifeDays: 90 });
    await emptied.post('/buying/arrived', { goods: emptied.goods, useBy: '' });
    expect(await mortarIn(emptied)).toEqual({ onHand: 6, lots: undefined });
    const wrong = await coming({ onHand: 0 });
    const refused = await wrong.post('/buying/arrived', { goods: wrong.goods, useBy: '31 Feb' });
    expect(refused.status).toBe(422);
    expect(await mortarIn(wrong)).toEqual({ onHand: 0, lots: undefined });
  });
});

test('bags past their date are shown, spoken for by nobody, and go with one tap; undone, they are back', async () => {
  const lots = [
    { quantity: 3, useBy: '2027-04-07' },
    { quantity: 1, useBy: '2027-05-02' },
  ];
  const screens = await screensOver(yardWith({ onHand: 4, lots, leadDays: 1 }));
  const text = await textOf(await screens.get('/buying'));
  expect(text).toContain('4 bags in the yard, 1 spoken for, 0 spare, 3 past their date.');
  expect(text).toContain('Past its date: 3 bags, bag date Wed 7 Apr. No plan uses them.');
  const form = { material: 'mortar', useBy: '2027-04-07', openedAt: '', line: '0' };
  const after = await screens.textAfter(await screens.post('/buying/spoiled', form));
  expect(after).toContain('Fast-setting mortar taken out of the stock book: past its date. Undo');
  expect(after).not.toContain('Past its date:');
  expect(await mortarIn(screens)).toEqual({ onHand: 1, lots: [lots[1]] });
  expect(await textOf(await screens.get('/buying/book?of=mortar'))).toContain('Spoiled, bag date Wed 7 Apr −3 bags');
  expect(await textOf(await screens.post('/buying/spoiled', form))).toContain('not in the stock book any more');
  await screens.post('/undo', { change: '1' });
  expect((await mortarIn(screens)).lots).toEqual(lots);
});

test('a batch takes of the bag that goes first, and leaves it open where that keeps for its own days', async () => {
  const [mix, now] = [smallYard().mixes[0]!, '2027-04-10T10:00:00+01:00'];
  const lots = [{ quantity: 2, useBy: '2027-05-02' }];
  const yard = smallYard({
    ...{ mixes: [{ ...mix, bagStep: 0.5, maxBags: 2 }], yard: { ...smallYard().yard, now } },
    materials: [{ ...materials[0]!, onHand: 3, lots, openedDays: 14 }, materials[1]!],
  });
  const context = await yardContext(yard);
  const pours = [{ mould: '900 no. 1', casting: 'panel-900', order: null, sealed: false }];
  const told = await recordPour(context, { pours, bags: 1.5, filledAt: null });
  expect(told).toMatchObject({ ok: true });
  // The one of no known date, and half of the next.
  expect(await mortarIn(context)).toEqual({
    onHand: 1.5,
    lots: [
      { quantity: 0.5, useBy: '2027-05-02', openedAt: now },
      { quantity: 1, useBy: '2027-05-02' },
    ],
  });
});
