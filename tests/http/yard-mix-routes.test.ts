import { describe, expect, test } from 'vitest';
import { guessesOfYard, setTyped, typedOf } from '../../db/stores/figure-store.ts';
import { setMixWater, watersOfMixes } from '../../db/stores/mix-water-store.ts';
import { setUnits } from '../../db/stores/units-store.ts';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { screensOver, type TestScreens, textOf } from '../support/screens.ts';
import { sentAsShown } from '../support/sent-as-shown.ts';
import { smallYard } from '../support/small-yard.ts';

const { now } = smallYard().yard;
const BARE = { materials: [], mixes: [], castings: [], moulds: [], kits: [], orders: [], work: [] };
const yardIn = ({ database }: TestScreens) => database.read((tx) => loadYardFile(tx, now));
const mixIn = async (screens: TestScreens, id: string) => (await yardIn(screens)).mixes.find((one) => one.id === id);
const THIN = '/yard/mixes/thin';
/** A form as it is shown, with some fields typed over. */
const formOf = async ({ get }: TestScreens, path: string, typed: Record<string, string> = {}) => ({
  ...sentAsShown(await (await get(path)).text()),
  ...typed,
});
const sent = async (screens: TestScreens, typed: Record<string, string>) =>
  screens.post(THIN, await formOf(screens, THIN, typed));
/** Saves, whatever it moves. */
const saved = async (screens: TestScreens, typed: Record<string, string>) => {
  const form = await formOf(screens, THIN, typed);
  const answer = await screens.post(THIN, form);
  if (answer.status === 303) return;
  const seen = /name="seen" value="([^"]*)"/.exec(await answer.text())?.[1] ?? '';
  expect((await screens.post(THIN, { ...form, seen })).status).toBe(303);
};

describe('a mix of an empty yard', () => {
  test('starts from cautious figures, each marked as a guess', async () => {
    const { get } = await screensOver(smallYard(BARE));
    const list = await (await get('/yard/mixes')).text();
    expect(list).toContain('href="/yard/mixes/new?from=rapid"');
    expect(list).toContain('Start from an ordinary mix');
    const answer = await get('/yard/mixes/new?from=rapid');
    const html = await answer.clone().text();
    expect(await textOf(answer)).toContain('The figures are cautious guesses. Check your bag’s data sheet');
    for (const label of ['Minutes to mix', 'Minutes until it stiffens', 'Hours at 20 °C', 'Not poured under'])
      expect(html).toContain(`${label}<span class="guess"> to check</span>`);
    expect(html).toContain('name="coldMinutes"');
    expect(sentAsShown(html)).toMatchObject({
      ...{ yieldKgPerBag: '27.2 kg', water: '4.7 l', bagName: 'Fast-setting mortar, 25 kg' },
      ...{ coldCelsius: '10 °C', coldMinutes: '180', warmCelsius: '20 °C', warmMinutes: '90' },
    });
  });

  test('makes its bag along with it, and what was left alone stays a guess', async () => {
    const screens = await screensOver(smallYard(BARE));
    const form = await formOf(screens, '/yard/mixes/new?from=rapid', { bagsThere: '8', workingMinutes: '12' });
    const text = await screens.textAfter(await screens.post('/yard/mixes/new', form));
    expect(text).toMatch(/Fast-setting mix added\..*1 mix: Fast-setting mix\./);
    expect(text).toContain('For one bag 1 bag of Fast-setting mortar, 25 kg and 4.7 l of water');
    expect(text).toContain('after 90 minutes at 20 °C Stripped, cold day after 180 minutes at 10 °C');
    const yard = await yardIn(screens);
    expect(yard.materials).toMatchObject([
      { id: 'fast-setting-mortar-25-kg', unit: 'bag', onHand: 8, leadDays: 0, openedDays: 5 },
    ]);
    expect(yard.mixes).toMatchObject([
      {
        ...{ id: 'fast-setting-mix', workingMinutes: 12, demouldMinutes: 90, activationKelvin: 5753 },
        perBag: [{ material: 'fast-setting-mortar-25-kg', quantity: 1 }],
      },
    ]);
    const guesses = (await screens.database.read(guessesOfYard)).map(({ kind, figure }) => `${kind} ${figure}`);
    expect(guesses).toContain('mix mixMinutes');
    expect(guesses).toContain('material leadDays');
    expect(guesses).toContain('material openedDays');
    const bag = await (await screens.get('/yard/stock/fast-setting-mortar-25-kg')).text();
    expect(bag).toContain('Keeps so many days once opened<span class="guess"> to check</span>');
    expect(guesses).not.toContain('mix workingMinutes');
    expect(guesses).not.toContain('material onHand');
    expect(await (await screens.get('/yard/guesses')).text()).toContain('href="/yard/mixes/fast-setting-mix"');
  });

  test('from nothing asks for all it needs, and keeps what was typed', async () => {
    const screens = await screensOver(smallYard(BARE));
    const form = await formOf(screens, '/yard/mixes/new', { name: 'Own mix', mixMinutes: 'ten', bagName: 'Own bag' });
    const answer = await screens.post('/yard/mixes/new', form);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    for (const field of ['yieldKgPerBag', 'maxBags', 'mixMinutes', 'workingMinutes', 'coldMinutes', 'cureHours'])
      expect(html).toContain(`id="${field}-error"`);
    for (const typed of ['Own mix', 'ten', 'Own bag']) expect(html).toContain(`value="${typed}"`);
    expect(await yardIn(screens)).toMatchObject({ mixes: [], materials: [] });
  });
});

describe('a mix', () => {
  test('gets its rate from a cold and a warm day, which stand there again', async () => {
    const screens = await screensOver();
    const days = { coldCelsius: '8', coldMinutes: '200', warmCelsius: '68 F', warmMinutes: '80' };
    await saved(screens, days);
    const mix = await mixIn(screens, 'thin');
    // ln(200/80) / (1/281.15 - 1/293.15) = 6293 K; at 20 °C the 80 minutes of the warm day.
    expect(mix).toMatchObject({ demouldMinutes: 80, activationKelvin: 6293, referenceCelsius: 20 });
    expect(await formOf(screens, THIN)).toMatchObject({ ...days, coldCelsius: '8 °C' });
  });

  test('takes the figures behind the days instead, but not both', async () => {
    const screens = await screensOver();
    await saved(screens, { demouldMinutes: '60', activationKelvin: '4000' });
    expect(await mixIn(screens, 'thin')).toMatchObject({ demouldMinutes: 60, activationKelvin: 4000 });
    const both = await sent(screens, { demouldMinutes: '70', coldMinutes: '300' });
    expect(await textOf(both)).toContain('Say it by the two days above or by these figures');
    expect((await mixIn(screens, 'thin'))?.demouldMinutes).toBe(60);
  });

  test('refuses days that no mortar has, at the day', async () => {
    const screens = await screensOver();
    const quicker = await sent(screens, { coldMinutes: '20' });
    expect(await quicker.text()).toContain('id="coldMinutes-error"');
    expect(await (await sent(screens, { coldCelsius: '25' })).text()).toContain('id="coldCelsius-error"');
  });

  test('may be said by what one bag fills', async () => {
    const screens = await screensOver();
    await saved(screens, { fills: '2 1/2', fillsOf: 'panel-900' });
    expect((await mixIn(screens, 'thin'))?.yieldKgPerBag).toBe(34);
    expect(await textOf(await screens.get('/yard/mixes'))).toContain('One bag makes 34 kg: 2 of Panel 900');
    expect(await (await sent(screens, { fills: 'two' })).text()).toContain('id="fills-error"');
  });

  test.each([
    [{ yieldKgPerBag: '0 kg' }, 'yieldKgPerBag', 'Has to be more than 0.'],
    [{ maxBags: '1.3' }, 'maxBags', 'That is no whole number of steps.'],
    [{ maxBags: '0' }, 'maxBags', 'Has to be more than 0.'],
    [{ maxBags: '0.5', yieldKgPerBag: '20 kg', bagStep: '0.5' }, 'maxBags', 'Panel 900 weighs 13.6 kg, more than'],
    [{ workingMinutes: '5' }, 'workingMinutes', 'To fill Panel 900 takes 7 minutes.'],
    [{ minCelsius: '30', maxCelsius: '10' }, 'maxCelsius', 'That is colder than the coldest.'],
    [{ 'part-1': 'mortar', 'partQuantity-1': '1' }, 'part-1', 'That is there already.'],
    [{ 'part-1': 'rod' }, 'partQuantity-1', 'How much of it?'],
    [{ 'partQuantity-1': '3' }, 'part-1', 'Which material is that?'],
    [{ water: 'some' }, 'water', '"some"'],
    [{ water: '0 l' }, 'water', 'Has to be more than nothing, or empty.'],
  ])('with %o is refused at %s', async (typed, field, words) => {
    const screens = await screensOver();
    const answer = await sent(screens, typed as Record<string, string>);
    expect(answer.status).toBe(422);
    const html = await answer.clone().text();
    expect(html).toContain(`id="${field}-error"`);
    expect(await textOf(answer)).toContain(words);
    expect(await mixIn(screens, 'thin')).toEqual(smallYard().mixes[0]);
  });

  test('shows what it moves, and is saved once that was seen', async () => {
    const screens = await screensOver();
    const form = await formOf(screens, THIN, { cureHours: '240' });
    const answer = await screens.post(THIN, form);
    const html = await answer.clone().text();
    expect(await textOf(answer)).toMatch(
      /^This moves one promise\. Nothing has been saved yet\. School garden: Sat 10 Apr/,
    );
    expect(html).toContain('value="240"');
    expect((await mixIn(screens, 'thin'))?.cureHours).toBe(0);
    const seen = /name="seen" value="([^"]*)"/.exec(html)?.[1] ?? '';
    expect((await screens.post(THIN, { ...form, seen })).status).toBe(303);
    expect((await mixIn(screens, 'thin'))?.cureHours).toBe(240);
  });

  test('drops the guess of what is another figure now', async () => {
    const screens = await screensOver(smallYard(BARE));
    await screens.post('/yard/mixes/new', await formOf(screens, '/yard/mixes/new?from=ordinary'));
    const path = '/yard/mixes/ordinary-mix';
    await screens.post(path, await formOf(screens, path, { coldMinutes: '2800', minCelsius: '' }));
    const guesses = (await screens.database.read(guessesOfYard)).map(({ figure }) => figure);
    expect(guesses).not.toContain('demouldMinutes');
    expect(guesses).not.toContain('minCelsius');
    expect(guesses).toContain('cureHours');
    expect((await mixIn(screens, 'ordinary-mix'))?.minCelsius).toBeUndefined();
  });

  test('has its water as an amount: shown as typed, to every digit, and gone when it is emptied', async () => {
    const screens = await screensOver();
    const litres = () => screens.database.read(async (tx) => (await watersOfMixes(tx)).get('thin') ?? null);
    await saved(screens, { water: '4 3/4 qt' });
    // 1 US qt = 0.946352946 l: NIST SP 811 (2008), appendix B.
    expect(await litres()).toBeCloseTo(4.4951764935, 12);
    expect((await formOf(screens, THIN)).water).toBe('4 3/4 qt');
    expect(await textOf(await screens.get('/yard/mixes'))).toContain('and 4 3/4 qt of water');
    await saved(screens, { mixMinutes: '9' });
    expect(await litres()).toBeCloseTo(4.4951764935, 12);
    await saved(screens, { water: '4.75' });
    expect((await formOf(screens, THIN)).water).toBe('4.75 l');
    await saved(screens, { water: '' });
    expect([await litres(), (await formOf(screens, THIN)).water]).toEqual([null, '']);
  });

  test('keeps its water to the last bit when it is shown rounded', async () => {
    const screens = await screensOver();
    await screens.database.write((tx) => setMixWater(tx, 'thin', 4.73176473));
    await saved(screens, { mixMinutes: '9' });
    expect((await screens.database.read(watersOfMixes)).get('thin')).toBe(4.73176473);
    expect((await formOf(screens, THIN)).water).toBe('4.73 l');
  });

  test('whose water was words before it was an amount has it read from them; others stay as a note', async () => {
    const screens = await screensOver();
    const noted = (words: string) =>
      screens.database.write((tx) => setTyped(tx, { kind: 'mix', id: 'thin', figure: 'water' }, words));
    await noted('5 US qt');
    expect(await textOf(await screens.get('/today/sheet'))).toContain('1 bag, 4.7 l water');
    await noted('until it flows');
    expect(await textOf(await screens.get('/yard/mixes'))).toContain('Water, as noted: until it flows');
    expect(await textOf(await screens.get('/today'))).toContain('Water, as noted for a bag: until it flows');
    await saved(screens, { mixMinutes: '9' });
    expect((await formOf(screens, THIN)).water).toBe('until it flows');
    expect(await (await sent(screens, { water: 'until it runs' })).text()).toContain('id="water-error"');
  });

  test('from a preset has its water as a guess, until it is confirmed or another', async () => {
    const screens = await screensOver(smallYard(BARE));
    const html = await (await screens.get('/yard/mixes/new?from=rapid')).text();
    expect(html).toContain('Water for it<span class="guess"> to check</span>');
    await screens.post('/yard/mixes/new', await formOf(screens, '/yard/mixes/new?from=rapid'));
    await screens.post('/yard/mixes/new', await formOf(screens, '/yard/mixes/new?from=ordinary', { water: '3 l' }));
    const guessed = async () =>
      (await screens.database.read(guessesOfYard)).filter(({ figure }) => figure === 'water').map(({ id }) => id);
    expect(await guessed()).toEqual(['fast-setting-mix']);
    expect(await textOf(await screens.get('/yard/guesses'))).toContain('Into a bag goes, in water: 4.7 l.');
    await screens.post('/yard/guesses/right', { kind: 'mix', figure: 'water' });
    expect(await guessed()).toEqual([]);
  });

  test('in US units is read and shown as it was typed', async () => {
    const screens = await screensOver();
    await screens.database.write((tx) => setUnits(tx, 'US'));
    await saved(screens, { yieldKgPerBag: '60 lb', minCelsius: '41', water: '5 qt' });
    expect(await mixIn(screens, 'thin')).toMatchObject({ yieldKgPerBag: 27.2155422, minCelsius: 5 });
    expect(await formOf(screens, THIN)).toMatchObject({ yieldKgPerBag: '60 lb', minCelsius: '41 °F', water: '5 qt' });
    expect(await screens.database.read((tx) => typedOf(tx, { kind: 'mix', id: 'thin' }))).toMatchObject({
      water: '5 qt',
    });
    expect(await textOf(await screens.get('/yard/mixes'))).toContain('One bag makes 60 lb');
  });

  test('of more materials than a form usually has loses none of them by it, and keeps what was typed', async () => {
    const many = Array.from({ length: 15 }, (_, n) => ({ id: `m${n}`, name: `M ${n}`, unit: 'g', onHand: 9000 }));
    const base = smallYard();
    const perBag = [...base.mixes[0]!.perBag, ...many.map(({ id }) => ({ material: id, quantity: 10 }))];
    const mixes = base.mixes.map((mix) => ({ ...mix, perBag }));
    const screens = await screensOver(smallYard({ ...base, materials: [...base.materials, ...many], mixes }));
    await saved(screens, { 'partQuantity-15': '0.5 oz' });
    // 1 oz = 28.349523125 g: NIST SP 811 (2008), appendix B.
    expect((await mixIn(screens, 'thin'))?.perBag).toEqual([
      ...perBag.slice(0, 15),
      { material: 'm14', quantity: 14.1747615625 },
    ]);
    expect(await formOf(screens, THIN)).toMatchObject({ 'partQuantity-1': '10', 'partQuantity-15': '0.5 oz' });
  });

  test('carries the usual caution', async () => {
    const text = await textOf(await (await screensOver()).get(THIN));
    expect(text).toContain('Wet mortar burns');
    expect(text).toContain('For planning only');
  });
});

describe('removing a mix', () => {
  test('is refused with what is cast from it', async () => {
    const screens = await screensOver();
    const answer = await screens.post(`${THIN}/remove`, {});
    expect(answer.status).toBe(422);
    expect(await textOf(answer)).toContain('Thin panel mix is what 1 panel or piece is cast from (Panel 900)');
  });

  test('takes its guesses along, and can be undone', async () => {
    const screens = await screensOver(smallYard(BARE));
    await screens.post('/yard/mixes/new', await formOf(screens, '/yard/mixes/new?from=ordinary'));
    const before = await yardIn(screens);
    const gone = await screens.post('/yard/mixes/ordinary-mix/remove', {});
    expect((await yardIn(screens)).mixes).toEqual([]);
    expect((await screens.database.read(guessesOfYard)).filter(({ kind }) => kind === 'mix')).toEqual([]);
    expect((await screens.database.read(watersOfMixes)).size).toBe(0);
    const change = /done=(\d+)/.exec(gone.headers.get('Location') ?? '')?.[1] ?? '';
    await screens.post('/undo', { change, back: '/yard/mixes' });
    expect((await yardIn(screens)).mixes).toEqual(before.mixes);
    expect((await screens.database.read(watersOfMixes)).get('ordinary-mix')).toBe(3.5);
  });
});
