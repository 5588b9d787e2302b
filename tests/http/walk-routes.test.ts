import { describe, expect, test } from 'vitest';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { screensOver, type TestScreens, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';
import { countedNow } from '../support/stock-set.ts';

const NOW = '2027-04-08T09:00:00+01:00';
const yard = () =>
  smallYard({
    finished: [{ casting: 'panel-900', count: 3 }],
    moulds: [
      { id: '900 no. 1', makes: [{ casting: 'panel-900' }], setFor: 'panel-900', condition: 'ready' },
      { id: '900 no. 2', makes: [{ casting: 'panel-900' }], setFor: 'panel-900', condition: 'damaged' },
    ],
  });

/** The fields of the page as they are shown, with nothing filled in. */
const shownOn = async ({ get }: TestScreens): Promise<Record<string, string>> => {
  const html = await (await get('/count')).text();
  const hidden = [...html.matchAll(/<input type="hidden" name="([^"]+)" value="([^"]*)"/g)];
  return Object.fromEntries(hidden.map(([, name = '', value = '']) => [name, value]));
};

const standing = async ({ database }: TestScreens) => {
  const { moulds, finished, materials } = await database.read((tx) => loadYardFile(tx, NOW));
  return {
    moulds: moulds.map(({ condition }) => condition),
    pieces: finished.map(({ count }) => count),
    stock: materials.map(({ onHand, offcuts = [] }) => [onHand, ...offcuts.map(({ lengthMm }) => lengthMm)]),
  };
};

const BEFORE = { moulds: ['ready', 'damaged'], pieces: [3], stock: [[20], [3]] };

describe('a walk round', () => {
  test('sets right what is seen otherwise, as one change, and leaves alone what nobody looked at', async () => {
    const screens = await screensOver(yard());
    const { post, get, textAfter } = screens;
    const text = await textOf(await get('/count'));
    expect(text).toContain('900 no. 2 Empty, damaged');
    expect(text).toContain('Panel 900 3 by the book');
    expect(text).toContain('Fast-setting mortar 20 bags by the book');
    const shown = await shownOn(screens);
    const seen = { mould0: 'dirty', mould1: 'clean', pieces0: '2', stock0: '18.5', stock1Offcuts: '90 cm' };
    const after = await textAfter(await post('/count', { ...shown, ...seen }));
    expect(after).toContain(
      'Counted on a walk round: 900 no. 1 to clean; 900 no. 2 clean; Panel 900 2, not 3; Fast-setting mortar 18.5, not 20; Rod 12 mm 3 whole, offcuts 900 mm, not 3 whole.',
    );
    expect(await standing(screens)).toEqual({
      ...{ moulds: ['dirty', 'ready'], pieces: [2], stock: [[18.5], [3, 900]] },
    });
    expect(await textOf(await get('/buying/book?of=mortar'))).toContain('Counted −1.5 bags 18.5 bags left');
    await post('/undo', { change: '1' });
    expect(await standing(screens)).toEqual(BEFORE);
  });

  test('asks where the book is another one by now, and has it so when it is sent again', async () => {
    const screens = await screensOver(yard());
    const { database, post, textAfter } = screens;
    const form = { ...(await shownOn(screens)), stock0: '18', pieces0: '3' };
    await database.write((tx) => countedNow(tx, 'mortar', 19));
    const asked = await post('/count', form);
    expect(asked.status).toBe(422);
    expect(await textOf(asked)).toContain('The stock book was changed meanwhile. It is 19 now.');
    expect((await standing(screens)).stock[0]).toEqual([19]);
    const again = { ...(await shownOn(screens)), stock0: '18', pieces0: '3' };
    expect(await textAfter(await post('/count', again))).toContain(
      'Counted on a walk round: Fast-setting mortar 18, not 19.',
    );
  });

  test('is refused whole, each reason at its field, and changes nothing', async () => {
    const filledAt = '2027-04-03T10:00:00+01:00';
    const screens = await screensOver({
      ...yard(),
      inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt }],
    });
    const shown = await shownOn(screens);
    const wrong = await screens.post('/count', {
      ...shown,
      mould0: 'damaged',
      pieces0: 'two',
      stock1: '1.5',
      stock0: '5',
    });
    const text = await textOf(wrong);
    expect(text).toContain('900 no. 1 has a piece in it. Say on the page of the mould whether that is good.');
    expect(text).toContain('How many are there? Write a whole number.');
    expect(text).toContain('whole');
    expect(await standing(screens)).toEqual(BEFORE);
    const same = await screens.post('/count', { ...shown, pieces0: '3' });
    expect(await textOf(same)).toContain('All that you looked at is as the book has it. Nothing was changed.');
    expect(await textOf(await screens.post('/count', shown))).toContain('Nothing was filled in yet.');
  });

  test('counts bags one date after another: what the book has of each beside what is seen', async () => {
    const of = yard();
    const lots = [{ quantity: 20, useBy: '2027-05-12' }];
    const screens = await screensOver({
      ...of,
      materials: of.materials.map((one) => (one.id === 'mortar' ? { ...one, lots } : one)),
    });
    const text = await textOf(await screens.get('/count'));
    expect(text).toContain('Bag date Wed 12 May 20 bags by the book');
    // Some may be found of which nobody knows the date.
    expect(text).toContain('No known date 0 bags by the book');
    expect(await textOf(await screens.get('/buying'))).toContain('Bag date Wed 12 May 20 bags by the book');
    const shown = await shownOn(screens);
    const wrong = await screens.post('/count', { ...shown, stock0: '21', stock0Bags0: '19' });
    expect(wrong.status).toBe(422);
    expect(await textOf(wrong)).toContain('By their dates they come to 19.');
    const sent = await screens.post('/count', { ...shown, stock0Bags0: '19', stock0Bags1: '2' });
    expect(await screens.textAfter(sent)).toContain(
      'Fast-setting mortar 19 of Wed 12 May and 2 of no known date, not 20 of Wed 12 May and 0 of no known date.',
    );
    const { materials } = await screens.database.read((tx) => loadYardFile(tx, NOW));
    expect(materials[0]).toMatchObject({ onHand: 21, lots: [{ quantity: 19, useBy: '2027-05-12' }] });
  });
});
