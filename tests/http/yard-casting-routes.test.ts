import { describe, expect, test } from 'vitest';
import { sizesOfCastings } from '../../db/stores/casting-size-store.ts';
import { guessesOfYard } from '../../db/stores/figure-store.ts';
import { setUnits } from '../../db/stores/units-store.ts';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { lengthsTyped } from '../../src/usecases/typed/casting-form.ts';
import { demoScreens, screensOver, type TestScreens, textOf } from '../support/screens.ts';
import { sentAsShown } from '../support/sent-as-shown.ts';
import { smallYard } from '../support/small-yard.ts';

const { now } = smallYard().yard;
const yardIn = ({ database }: TestScreens, at = now) => database.read((tx) => loadYardFile(tx, at));
const castingsIn = async (screens: TestScreens) => (await yardIn(screens)).castings;
const { id: MIX } = smallYard().mixes[0]!;

const seenIn = (html: string) => /name="seen" value="([^"]*)"/.exec(html)?.[1] ?? '';

const THREE = { lengths: '600, 900, 1200', name: '', mix: MIX, height: '200', thickness: '35', kg: '' };

describe('what is cast', () => {
  test('is added in several lengths at once, with weights worked out and marked as guesses', async () => {
    const screens = await screensOver(smallYard({ castings: [], moulds: [], kits: [], orders: [], finished: [] }));
    const text = await screens.textAfter(await screens.post('/yard/panels/new', THREE));
    expect(text).toContain('Panel 600, Panel 900, Panel 1200 added to what is cast');
    // 600 x 200 x 35 mm is 0.0042 m³; at 2150 kg/m³ that is 9.03 kg.
    expect(text).toContain('Size 600 mm by 200 mm by 35 mm Weight 9 kg (to check) Cast from');
    expect((await castingsIn(screens)).map(({ id, kg }) => [id, kg])).toEqual([
      ['panel-600', 9],
      ['panel-900', 13.5],
      ['panel-1200', 18.1],
    ]);
    const guesses = await screens.database.read(guessesOfYard);
    expect(guesses.filter(({ id }) => id === 'panel-900').map(({ figure }) => figure)).toEqual([
      ...['cleanMinutes', 'fillMinutes', 'kg', 'prepMinutes', 'stripMinutes'],
    ]);
    expect((await screens.database.read(sizesOfCastings)).length).toBe(3);
  });

  test('goes by inches and pounds in a yard that does', async () => {
    const screens = await screensOver();
    await screens.database.write((tx) => setUnits(tx, 'US'));
    const piece = { ...THREE, lengths: '4 ft 6 in', height: '8', thickness: '1 1/2', kg: '30 lb' };
    expect((await screens.post('/yard/panels/new', piece)).status).toBe(303);
    const added = (await castingsIn(screens)).at(-1)!;
    expect(added).toMatchObject({ name: 'Panel 4 ft 6 in' });
    expect(added.kg).toBeCloseTo(30 * 0.45359237, 9);
    const size = (await screens.database.read(sizesOfCastings)).find(({ casting }) => casting === added.id);
    expect(size?.length).toEqual({ typed: '4 ft 6 in', mm: 1371.6 });
    const form = sentAsShown(await (await screens.get(`/yard/panels/${added.id}`)).text());
    expect(form).toMatchObject({ length: '4 ft 6 in', kg: '30 lb' });
  });

  test('takes materials and cuts in the units of the yard, and shows them as they were typed', async () => {
    const { materials } = smallYard();
    const fibre = { ...materials[0]!, id: 'fibre', name: 'Fibre', unit: 'g' };
    const screens = await screensOver(smallYard({ materials: [...materials, fibre] }));
    await screens.database.write((tx) => setUnits(tx, 'US'));
    const contents = {
      ...{ 'part-0': 'fibre', 'partQuantity-0': '2 oz', 'cut-0': 'rod', 'cutLength-0': '7 1/2 in', 'cutCount-0': '2' },
    };
    const piece = { ...THREE, lengths: '3 ft', height: '8', thickness: '1 3/8', ...contents };
    expect((await screens.post('/yard/panels/new', piece)).status).toBe(303);
    const { perPiece, cuts } = (await castingsIn(screens)).at(-1)!;
    expect(perPiece).toEqual([{ material: 'fibre', quantity: expect.closeTo(56.69904625, 6) }]);
    expect(cuts).toEqual([{ material: 'rod', lengthMm: expect.closeTo(190.5, 9), count: 2 }]);
    const path = '/yard/panels/panel-3-ft';
    const form = sentAsShown(await (await screens.get(path)).text());
    expect(form).toMatchObject(contents);
    await screens.post(path, { ...form, 'part-0': '', 'partQuantity-0': '', 'cutCount-0': '3' });
    expect((await castingsIn(screens)).at(-1)).toMatchObject({ perPiece: [], cuts: [{ count: 3 }] });
    expect(await textOf(await screens.post('/yard/stock/rod/remove', {}))).toContain('panel or piece (Panel 3 ft)');
  });

  test.each([
    [{ ...THREE, mix: '' }, 'From which mix is it cast?'],
    [{ ...THREE, lengths: 'long' }, 'long'],
    [{ ...THREE, height: '' }, 'Write all three, or none of them.'],
    [{ ...THREE, thickness: '0' }, 'id="thickness-error">Has to be more than nothing.'],
    [{ ...THREE, kg: '12' }, 'Several lengths weigh different amounts.'],
    [{ ...THREE, lengths: '', name: '' }, 'What is it called?'],
    [{ ...THREE, lengths: '', name: 'Coping', kg: '5' }, 'id="lengths-error">Write all three, or none of them.'],
    [{ ...THREE, lengths: '750, 900' }, 'id="lengths-error">There is a Panel 900 already.'],
    [{ ...THREE, lengths: '1,200' }, '1,200&quot; could be 1200 or 1.2. Write it without the comma.'],
    [{ ...THREE, lengths: '750, 950', name: 'A'.repeat(90) }, 'That is too long. 60 letters are the most.'],
    [{ ...THREE, lengths: '950', kg: '500' }, 'That is more than the largest batch of its mix.'],
    [{ ...THREE, lengths: '950', fillMinutes: '600' }, 'The mix would stiffen before one is full.'],
    [{ ...THREE, 'part-0': 'nothing' }, 'Which material is that?'],
  ])('is refused at its field, with all that was typed kept: %o', async (typed, message) => {
    const screens = await screensOver();
    const before = await castingsIn(screens);
    const answer = await screens.post('/yard/panels/new', typed);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain(message);
    expect(sentAsShown(html)).toMatchObject(typed.mix === '' || 'part-0' in typed ? { lengths: typed.lengths } : typed);
    expect(await castingsIn(screens)).toEqual(before);
  });

  test('is corrected; a figure that was weighed is no guess any more', async () => {
    const screens = await screensOver();
    await screens.post('/yard/panels/new', { ...THREE, lengths: '750' });
    const form = sentAsShown(await (await screens.get('/yard/panels/panel-750')).text());
    expect((await screens.post('/yard/panels/panel-750', { ...form, kg: '11.8' })).status).toBe(303);
    expect((await castingsIn(screens)).at(-1)!.kg).toBe(11.8);
    const guesses = await screens.database.read(guessesOfYard);
    expect(guesses.filter(({ id }) => id === 'panel-750').map(({ figure }) => figure)).not.toContain('kg');
  });

  test('weighs more once it is thicker, until somebody weighed one', async () => {
    const screens = await screensOver();
    await screens.post('/yard/panels/new', { ...THREE, lengths: '750' });
    const path = '/yard/panels/panel-750';
    const shown = async () => sentAsShown(await (await screens.get(path)).text());
    expect((await shown()).kg).toBe('11.3 kg');
    await screens.post(path, { ...(await shown()), thickness: '50' });
    // 750 x 200 x 50 mm is 0.0075 m³; at 2150 kg/m³ that is 16.1 kg.
    expect((await shown()).kg).toBe('16.1 kg');
    expect(await textOf(await screens.get('/yard/panels'))).toContain(
      'Size 750 mm by 200 mm by 50 mm Weight 16.1 kg (to check)',
    );
    await screens.post(path, { ...(await shown()), kg: '15.2' });
    await screens.post(path, { ...(await shown()), thickness: '35' });
    expect((await shown()).kg).toBe('15.2 kg');
  });

  test('keeps its size when the yard goes over to feet and inches, which are shown then', async () => {
    const screens = await screensOver();
    await screens.post('/yard/panels/new', { ...THREE, lengths: '750' });
    const sizes = () => screens.database.read(sizesOfCastings);
    const before = await sizes();
    await screens.database.write((tx) => setUnits(tx, 'US'));
    const path = '/yard/panels/panel-750';
    const html = await (await screens.get(path)).text();
    expect(html).toContain('value="2 ft 5 1/2 in"');
    await screens.post(path, sentAsShown(html));
    expect(await sizes()).toEqual(before);
  });

  test('can be undone when it was added, sizes and all', async () => {
    const screens = await screensOver();
    const before = await yardIn(screens);
    const answer = await screens.post('/yard/panels/new', { ...THREE, lengths: '750' });
    const html = await (await screens.get(answer.headers.get('Location') ?? '')).text();
    const change = /name="change" value="(\d+)"/.exec(html)?.[1] ?? '';
    expect((await screens.post('/undo', { change })).status).toBe(303);
    expect(await yardIn(screens)).toEqual(before);
    expect(await screens.database.read(sizesOfCastings)).toEqual([]);
  });

  test('stays where something uses it, with the list of what does; else it goes', async () => {
    const screens = await screensOver();
    const refused = await textOf(await screens.post('/yard/panels/panel-900/remove', {}));
    expect(refused).toMatch(
      /^Panel 900 can't be removed\..* is made by 2 moulds \(900 no\. 1 and 900 no\. 2\) and is in 1 kit \(Pair of panels\)/,
    );
    await screens.post('/yard/panels/new', { ...THREE, lengths: '750' });
    expect(await screens.textAfter(await screens.post('/yard/panels/panel-750/remove', {}))).toContain(
      'Panel 750 removed from what is cast',
    );
    expect((await castingsIn(screens)).map(({ id }) => id)).not.toContain('panel-750');
  });

  test('that moves a date is shown before it is saved', async () => {
    const screens = await demoScreens();
    const form = sentAsShown(await (await screens.get('/yard/panels/panel-900')).text());
    const slower = { ...form, prepMinutes: '180', fillMinutes: '15' };
    const shown = await screens.post('/yard/panels/panel-900', slower);
    const html = await shown.text();
    expect(html).toContain('Nothing has been saved yet.');
    const again: Record<string, string> = { ...sentAsShown(html), seen: seenIn(html) };
    expect(again).toMatchObject({ prepMinutes: '180' });
    expect((await screens.post('/yard/panels/panel-900', again)).status).toBe(303);
  });

  test('without a mix leads to one and back, with all that was typed until then', async () => {
    const screens = await screensOver(
      smallYard({ castings: [], mixes: [], moulds: [], kits: [], orders: [], finished: [] }),
    );
    expect(await textOf(await screens.get('/yard/panels'))).toContain('so record the mix first');
    expect(await (await screens.get('/yard/panels/new')).text()).toContain('formaction="/yard/panels/new/mix-first"');
    const parts = { 'part-0': 'mortar', 'partQuantity-0': '1/4' };
    const typed = { lengths: '600, 900 & 1200', height: '8 in', thickness: '35', name: '', ...parts };
    const left = (await screens.post('/yard/panels/new/mix-first', typed)).headers.get('Location') ?? '';
    const mixPage = await (await screens.get(left)).text();
    expect(mixPage).toContain('Once it is added you are back at what you cast');
    const preset = /href="([^"]*from=rapid[^"]*)"/.exec(mixPage)?.[1]?.replaceAll('&amp;', '&') ?? '';
    const form = await (await screens.get(preset)).text();
    const action = /<form class="form[^"]*"[^>]* action="([^"]*)"/.exec(form)?.[1]?.replaceAll('&amp;', '&') ?? '';
    // What is wrong with the mix does not lose the way back.
    const refused = await screens.post(action, { ...sentAsShown(form), maxBags: '' });
    expect([refused.status, await refused.text()]).toEqual([422, expect.stringContaining(`action="${action}`)]);
    const added = await screens.post(action, sentAsShown(form));
    const html = await (await screens.get(added.headers.get('Location') ?? '')).text();
    expect(html).toContain('Fast-setting mix added');
    expect(sentAsShown(html)).toMatchObject({ ...typed, mix: 'fast-setting-mix' });
    expect((await screens.post('/yard/panels/new', { ...sentAsShown(html), lengths: '600, 900' })).status).toBe(303);
    expect((await castingsIn(screens)).map(({ name }) => name)).toEqual(['Panel 600', 'Panel 900']);
  });

  test.each(['https://example.org/yard/panels/new?x=1', '//example.org/', '/orders', '/yard/panels/new?a=\r\nb'])(
    'leads back to nowhere else: %j',
    async (back) => {
      const screens = await screensOver();
      const path = `/yard/mixes/new?${new URLSearchParams({ from: 'rapid', back })}`;
      const form = sentAsShown(await (await screens.get(path)).text());
      expect((await screens.post(path, form)).headers.get('Location')).toMatch(/^\/yard\/mixes\?done=\d+$/);
    },
  );
});

test.each([
  ['600, 900, 1200', ['600', '900', '1200']],
  ['600,900,1200', ['600', '900', '1200']],
  ['600 900 1200', ['600', '900', '1200']],
  ['600, 900 and 1200,', ['600', '900', '1200']],
  ['600mm,900mm', ['600mm', '900mm']],
  ['600,900', ['600', '900']],
  ['1,200', ['1,200']],
  ['24,5', ['24,5']],
  ['24,36,48', ['24', '36', '48']],
  ['0,9 m; 1,2 m', ['0,9 m', '1,2 m']],
  ['4 ft 6 in, 54 in', ['4 ft 6 in', '54 in']],
  ['900; 900', ['900']],
  ['', []],
])('the lengths of "%s"', (text, lengths) => {
  expect(lengthsTyped(text)).toEqual(lengths);
});
