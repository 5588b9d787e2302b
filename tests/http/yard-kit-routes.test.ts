import { describe, expect, test } from 'vitest';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { DEMO_NOW, demoScreens, screensOver, type TestScreens, textOf } from '../support/screens.ts';
import { sentAsShown } from '../support/sent-as-shown.ts';
import { smallYard } from '../support/small-yard.ts';

const kitsIn = async ({ database }: TestScreens, at = smallYard().yard.now) =>
  (await database.read((tx) => loadYardFile(tx, at))).kits;

const PIECE = smallYard().castings[0]!.id;
const FOUR = { name: 'Four of them', 'piece-0': PIECE, 'pieceCount-0': '4', packMinutes: '15' };

describe('a kit', () => {
  test('is put together from pieces, and can be asked for at once', async () => {
    const screens = await screensOver();
    const text = await screens.textAfter(await screens.post('/yard/kits/new', FOUR));
    expect(text).toMatch(/Four of them added to the kits\..*2 kits can be ordered\./);
    expect((await kitsIn(screens)).at(-1)).toEqual({
      ...{ id: 'four-of-them', name: 'Four of them', packMinutes: 15 },
      ...{ pieces: [{ casting: PIECE, count: 4 }], parts: [], cuts: [] },
    });
    expect(await textOf(await screens.get('/?what=kit:four-of-them&number=1'))).toMatch(/: ready \w{3} \d+ \w{3}/);
  });

  test.each([
    [{ ...FOUR, name: '' }, 'What is the kit called?'],
    [{ ...FOUR, name: 'pair of panels' }, 'There is a pair of panels already.'],
    [{ ...FOUR, 'piece-0': '' }, 'Which piece is that?'],
    [{ ...FOUR, 'part-0': 'mortar' }, 'How much of it?'],
    [{ ...FOUR, 'cut-0': 'rod', 'cutLength-0': '5 m', 'cutCount-0': '1' }, 'That is longer than one of it is sold.'],
    [{ ...FOUR, 'pieceCount-0': 'some' }, 'How many? Write a whole number, 1 to 1000.'],
    [{ ...FOUR, 'piece-0': '', 'pieceCount-0': '' }, 'What is in it? Choose a piece, and how many.'],
    [{ ...FOUR, 'piece-1': PIECE, 'pieceCount-1': '1' }, 'That is there already.'],
    [{ ...FOUR, packMinutes: '-3' }, 'How many minutes? Write a whole number'],
  ])('is refused at its field: %o', async (typed, message) => {
    const screens = await screensOver();
    const before = await kitsIn(screens);
    const answer = await screens.post('/yard/kits/new', typed);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain(message);
    expect(sentAsShown(html)).toMatchObject(typed);
    expect(await kitsIn(screens)).toEqual(before);
  });

  test('is changed: what was typed for a pin is shown again, and a pin too long for its rod is refused', async () => {
    const screens = await demoScreens();
    const form = sentAsShown(await (await screens.get('/yard/kits/planter')).text());
    const longer = await screens.post('/yard/kits/planter', { ...form, 'cutLength-0': '4 m' });
    expect(longer.status).toBe(422);
    expect(await longer.text()).toContain('That is longer than one of it is sold.');
    const changed = { ...form, 'cutLength-0': '50 cm', packMinutes: '21' };
    const shown = await (await screens.post('/yard/kits/planter', changed)).text();
    // A minute more of packing may move a day: then it is saved once that was seen.
    const seen = /name="seen" value="([^"]*)"/.exec(shown)?.[1] ?? '';
    await screens.post('/yard/kits/planter', { ...changed, seen });
    const kit = (await kitsIn(screens, DEMO_NOW)).find(({ id }) => id === 'planter');
    expect(kit).toMatchObject({ cuts: [{ lengthMm: 500 }], packMinutes: 21 });
    expect(sentAsShown(await (await screens.get('/yard/kits/planter')).text())).toMatchObject({
      'cutLength-0': '50 cm',
    });
  });

  test('of many parts, as a file may have it, loses none of them when its form is sent', async () => {
    const { kits, materials } = smallYard();
    const many = Array.from({ length: 15 }, (_, i) => ({ ...materials[0]!, id: `part-${i}`, name: `Part ${i}` }));
    const parts = many.map(({ id }) => ({ material: id, quantity: 1 }));
    const screens = await screensOver(
      smallYard({ materials: [...materials, ...many], kits: [{ ...kits[0]!, parts }], orders: [] }),
    );
    const before = await kitsIn(screens);
    const form = sentAsShown(await (await screens.get('/yard/kits/pair')).text());
    expect((await screens.post('/yard/kits/pair', { ...form, packMinutes: '6' })).status).toBe(303);
    expect(await kitsIn(screens)).toEqual([{ ...before[0]!, packMinutes: 6 }]);
  });

  test('stays while orders are for it; else it goes, and undo brings it back', async () => {
    const screens = await demoScreens();
    expect(await textOf(await screens.post('/yard/kits/planter/remove', {}))).toMatch(
      /^Planter 1200 x 600, two courses can't be removed\..* is in \d+ orders? \(27-/,
    );
    await screens.post('/yard/kits/new', { ...FOUR, 'piece-0': 'panel-900' });
    const before = await kitsIn(screens, DEMO_NOW);
    const removed = await screens.post('/yard/kits/four-of-them/remove', {});
    const html = await (await screens.get(removed.headers.get('Location') ?? '')).text();
    expect(html).toContain('Four of them removed from the kits');
    expect((await kitsIn(screens, DEMO_NOW)).map(({ id }) => id)).not.toContain('four-of-them');
    await screens.post('/undo', { change: /name="change" value="(\d+)"/.exec(html)?.[1] ?? '' });
    expect(await kitsIn(screens, DEMO_NOW)).toEqual(before);
  });

  test('that moves a date when more goes into it says so before it is saved', async () => {
    const screens = await demoScreens();
    const before = await kitsIn(screens, DEMO_NOW);
    const form = sentAsShown(await (await screens.get('/yard/kits/planter')).text());
    const html = await (await screens.post('/yard/kits/planter', { ...form, 'pieceCount-0': '12' })).text();
    expect(html).toContain('Nothing has been saved yet.');
    expect(sentAsShown(html)).toMatchObject({ 'pieceCount-0': '12' });
    expect(await kitsIn(screens, DEMO_NOW)).toEqual(before);
    const seen = /name="seen" value="([^"]*)"/.exec(html)?.[1] ?? '';
    const saved = await screens.post('/yard/kits/planter', { ...sentAsShown(html), seen });
    expect(saved.status).toBe(303);
    expect((await kitsIn(screens, DEMO_NOW))[0]!.pieces[0]!.count).toBe(12);
  });
});

test.each(['/yard/kits', '/yard/moulds'])(
  '%s of a yard that casts nothing leads to what is cast first',
  async (path) => {
    const nothing = { castings: [], moulds: [], kits: [], orders: [] };
    const html = await (await (await screensOver(smallYard(nothing))).get(path)).text();
    expect(html).toMatch(/record what you cast first\.[\s\S]*href="\/yard\/panels\/new" class="button main"/);
    expect(await (await (await screensOver()).get(path)).text()).not.toContain('/yard/panels/new');
  },
);
