import { describe, expect, test } from 'vitest';
import { addGuesses, guessesOfYard } from '../../db/stores/figure-store.ts';
import { setHabits } from '../../db/stores/habits-store.ts';
import { addIncoming, markArrived } from '../../db/stores/material-store.ts';
import { setUnits } from '../../db/stores/units-store.ts';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { screensOver, type TestScreens, textOf } from '../support/screens.ts';
import { sentAsShown } from '../support/sent-as-shown.ts';
import { smallYard } from '../support/small-yard.ts';

const { now } = smallYard().yard;
const yardIn = ({ database }: TestScreens) => database.read((tx) => loadYardFile(tx, now));
const materialIn = async (screens: TestScreens, id: string) =>
  (await yardIn(screens)).materials.find((one) => one.id === id);
/** The form of a material as it is shown, with some fields typed over. */
const formOf = async ({ get }: TestScreens, id: string, typed: Record<string, string> = {}) => ({
  ...sentAsShown(await (await get(`/yard/stock/${id}`)).text()),
  ...typed,
});

const MESH = {
  ...{ name: 'Mesh', unit: 'm²', onHand: '12', minimum: '', shelfLifeDays: '', supplier: 'Quay Builders' },
  ...{ leadDays: '3', pack: '11.52', packPrice: '48.38', stickMm: '', kerfMm: '' },
};

describe('a material', () => {
  test('is added, and bought as it was said', async () => {
    const screens = await screensOver();
    const text = await screens.textAfter(await screens.post('/yard/stock/new', MESH));
    expect(text).toMatch(/Mesh added to the stock book\..*3 materials in the stock book\./);
    expect(text).toContain(
      'Quay Builders Mesh 12 m² in the yard. Comes in 3 days. Sold in packs of 11.52 m² for €48.38.',
    );
    expect(await materialIn(screens, 'mesh')).toEqual({
      ...{
        id: 'mesh',
        name: 'Mesh',
        unit: 'm²',
        onHand: 12,
        pack: 11.52,
        leadDays: 3,
        minimum: 0,
        unitPrice: 4.19965277777778,
      },
      ...{ supplier: 'Quay Builders', kerfMm: 0 },
    });
  });

  test('that nobody said how to buy cannot be bought, in words', async () => {
    const screens = await screensOver();
    const text = await screens.textAfter(await screens.post('/yard/stock/new', { ...MESH, onHand: '', leadDays: '' }));
    expect(text).toContain('There is no Mesh, and it cannot be bought.');
    expect((await materialIn(screens, 'mesh'))?.leadDays).toBeUndefined();
  });

  test('is not called "new": its page would be the one that adds', async () => {
    const screens = await screensOver();
    await screens.post('/yard/stock/new', { ...MESH, name: 'New' });
    expect((await yardIn(screens)).materials.at(-1)).toMatchObject({ id: 'new-2', name: 'New' });
  });

  test('typed wrong is told at each field, and nothing that was typed is lost', async () => {
    const screens = await screensOver();
    const wrong = { ...MESH, name: '', onHand: 'some', leadDays: '2.5', pack: '0', packPrice: 'cheap', kerfMm: '5 kg' };
    const answer = await screens.post('/yard/stock/new', wrong);
    expect(answer.status).toBe(422);
    const html = await answer.clone().text();
    const text = await textOf(answer);
    expect(text).toContain('What is it called?');
    expect(text).toContain('How many days? Write a whole number, 0 to 3650.');
    expect(text).toContain('"cheap" is no price.');
    for (const field of ['name', 'onHand', 'leadDays', 'packPrice', 'kerfMm'])
      expect(html).toContain(`id="${field}-error"`);
    for (const typed of ['some', '2.5', 'cheap', '5 kg', 'Quay Builders']) expect(html).toContain(`value="${typed}"`);
    const pack = await textOf(await screens.post('/yard/stock/new', { ...MESH, pack: '0' }));
    expect(pack).toContain('Has to be more than 0.');
    expect((await yardIn(screens)).materials).toHaveLength(2);
  });

  test('in a yard of another currency and units is read in these, and shown as typed', async () => {
    const screens = await screensOver();
    await screens.database.write(async (tx) => {
      await setUnits(tx, 'US');
      await setHabits(tx, { currency: 'USD', weekStart: 'SU' });
    });
    await screens.post('/yard/stock/rod', await formOf(screens, 'rod', { packPrice: '$7.25', stickMm: '10 ft' }));
    expect(await materialIn(screens, 'rod')).toMatchObject({ unitPrice: 7.25, stickMm: 3048, kerfMm: 3 });
    expect(await (await screens.get('/yard/stock/rod')).text()).toContain('value="10 ft"');
    expect(await textOf(await screens.get('/yard/stock'))).toContain('$7.25 each.');
  });

  test('that is cut stays as long as what is cut from it', async () => {
    const screens = await screensOver();
    const short = await screens.post('/yard/stock/rod', await formOf(screens, 'rod', { stickMm: '200' }));
    expect(await textOf(short)).toContain('A kit needs a longer piece than that, cut from it.');
    const none = await screens.post('/yard/stock/rod', await formOf(screens, 'rod', { stickMm: '' }));
    expect(await none.text()).toContain('id="stickMm-error"');
  });

  test('keeps its unit where its amounts would mean something else', async () => {
    const screens = await screensOver();
    const kilos = await screens.post('/yard/stock/mortar', await formOf(screens, 'mortar', { unit: 'kg' }));
    expect(await textOf(kilos)).toContain(
      'It stays counted in bag, because it goes into 1 mix (Thin panel mix) by that.',
    );
    const sack = await screens.post('/yard/stock/mortar', await formOf(screens, 'mortar', { unit: 'sack' }));
    expect(sack.status).toBe(303);
  });

  test('in another pack costs what the pack costs', async () => {
    const screens = await screensOver();
    await screens.post('/yard/stock/new', MESH);
    await screens.post('/yard/stock/mesh', await formOf(screens, 'mesh', { pack: '20' }));
    expect(await materialIn(screens, 'mesh')).toMatchObject({ pack: 20, unitPrice: 2.419 });
    await screens.post('/yard/stock/mesh', await formOf(screens, 'mesh', { packPrice: '' }));
    expect((await materialIn(screens, 'mesh'))?.unitPrice).toBeUndefined();
  });

  test('is no guess any more once it is another figure', async () => {
    const screens = await screensOver();
    const guess = { kind: 'material', id: 'mortar', figure: 'onHand' } as const;
    await screens.database.write((tx) => addGuesses(tx, [guess, { ...guess, figure: 'leadDays' }]));
    await screens.post('/yard/stock/mortar', await formOf(screens, 'mortar', { onHand: '18' }));
    expect(await screens.database.read(guessesOfYard)).toEqual([{ ...guess, figure: 'leadDays' }]);
  });

  test('shows what it moves before it is saved', async () => {
    const screens = await screensOver();
    const none = await formOf(screens, 'rod', { onHand: '0', leadDays: '9' });
    const answer = await screens.post('/yard/stock/rod', none);
    const html = await answer.clone().text();
    expect(await textOf(answer)).toMatch(/^This moves one promise\. Nothing has been saved yet\./);
    expect((await materialIn(screens, 'rod'))?.onHand).toBe(3);
    const seen = /name="seen" value="([^"]*)"/.exec(html)?.[1] ?? '';
    expect((await screens.post('/yard/stock/rod', { ...none, seen })).status).toBe(303);
    expect((await materialIn(screens, 'rod'))?.leadDays).toBe(9);
  });
});

describe('removing a material', () => {
  test('is refused with all that needs it', async () => {
    const screens = await screensOver();
    const answer = await screens.post('/yard/stock/mortar/remove', {});
    expect(answer.status).toBe(422);
    expect(await textOf(answer)).toContain('Fast-setting mortar goes into 1 mix (Thin panel mix).');
    expect(await textOf(await screens.post('/yard/stock/rod/remove', {}))).toContain(
      'Rod 12 mm goes into 1 kit (Pair of panels).',
    );
  });

  test('takes what had come of it along, and comes back with it', async () => {
    const screens = await screensOver();
    await screens.post('/yard/stock/new', MESH);
    const bought = { material: 'mesh', quantity: 12, on: '2027-04-07', boughtOn: '2027-04-06', price: 50 };
    await screens.database.write(async (tx) =>
      markArrived(tx, await addIncoming(tx, bought), { on: '2027-04-07', at: '2027-04-07T07:00:00Z' }),
    );
    const before = await yardIn(screens);
    const gone = await screens.post('/yard/stock/mesh/remove', {});
    expect(await screens.textAfter(gone.clone())).toContain('Mesh removed from the stock book.');
    expect((await yardIn(screens)).materials).toHaveLength(2);
    const change = /done=(\d+)/.exec(gone.headers.get('Location') ?? '')?.[1] ?? '';
    await screens.post('/undo', { change, back: '/yard/stock' });
    expect(await yardIn(screens)).toEqual(before);
  });

  test('of what is not there is a page that is not there', async () => {
    const { get } = await screensOver();
    expect((await get('/yard/stock/sand')).status).toBe(404);
  });
});
