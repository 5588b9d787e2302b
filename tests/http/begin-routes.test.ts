import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sizesOfCastings } from '../../db/stores/casting-size-store.ts';
import { recentChanges } from '../../db/stores/change-store.ts';
import { guessesOfYard } from '../../db/stores/figure-store.ts';
import { isDemo } from '../../db/stores/habits-store.ts';
import { setUnits, unitsOfYard } from '../../db/stores/units-store.ts';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { readYardFile } from '../../shared/yard-file.ts';
import { measuresOf } from '../../src/usecases/typed/measures.ts';
import { DEMO_NOW, demoScreens, screensOver, type TestScreens, textOf } from '../support/screens.ts';
import { sentAsShown } from '../support/sent-as-shown.ts';

/** The four answers as a maker types them: three lengths in six moulds, Saturdays. */
const FOUR = {
  ...{ length0: '1200', moulds0: '2', length1: '900', moulds1: '2', length2: '600', moulds2: '2' },
  ...{ bagPieces: '2', bagLength: '900', coldCelsius: '10 °C', coldMinutes: '180', warmCelsius: '20 °C' },
  ...{ warmMinutes: '90', season: 'between', 'days0:SA': 'yes', from0: '08:00', to0: '14:00', people0: '1' },
  ...{ name: 'Our yard', timeZone: 'Europe/Oslo', height: '200 mm', thickness: '35 mm', system: 'metric' },
};

const yardOf = ({ database }: TestScreens) => database.read((tx) => loadYardFile(tx, DEMO_NOW));
const newest = async ({ database }: TestScreens) => (await database.read((tx) => recentChanges(tx, 1)))[0]!;

describe('the first start', () => {
  test("the demo says that it is one, and leads to a yard of one's own", async () => {
    const { get } = await demoScreens();
    const html = await (await get('/')).text();
    expect(html).toContain('Demo yard. Try anything.');
    expect(html).toContain('href="/begin"');
    const begin = await textOf(await get('/begin'));
    for (const words of ['Look round the demo', 'Give four answers', 'Start an empty yard', 'Load a yard file'])
      expect(begin).toContain(words);
  });

  test("a yard of one's own says no such thing, and what beginning anew would put away", async () => {
    const { get } = await screensOver();
    expect(await textOf(await get('/'))).not.toContain('made-up');
    const begin = await textOf(await get('/begin'));
    expect(begin).toContain('Small yard would be put away: 2 moulds, 1 kit and 1 open order.');
    expect(begin).toContain('Undo on the Changes page brings all of it back');
  });
});

/** What is chosen of two answers, as a page shows it. */
const chosen = (html: string) =>
  [...html.matchAll(/name="(system|english)" value="(\w+)" checked/g)].map(([, name, value]) => `${name} ${value}`);

describe('units and English, the first thing that is asked,', () => {
  test.each(['/begin', '/begin/four'])("are those of the browser's region at first on %s", async (path) => {
    const { get } = await demoScreens();
    const html = await (await get(path, { 'Accept-Language': 'en-US,en;q=0.9' })).text();
    expect(chosen(html)).toEqual(['system US', 'english US']);
    expect(html.indexOf('name="system"')).toBeLessThan(html.indexOf('name="name"'));
    expect(chosen(await (await get(path, { 'Accept-Language': 'en-IE' })).text())).toEqual([
      'system metric',
      'english British',
    ]);
  });

  test("are the yard's own where there is one", async () => {
    const { get, database } = await screensOver();
    await database.write((tx) => setUnits(tx, 'US', 'British'));
    const html = await (await get('/begin', { 'Accept-Language': 'en-US' })).text();
    expect(chosen(html)).toEqual(['system US', 'english British']);
  });

  test('bring dollars, a week from Sunday, bags in pounds and the month first', async () => {
    const screens = await demoScreens();
    const typed = { name: 'Mould & Sons', timeZone: 'America/Chicago', system: 'US', english: 'US' };
    const answer = await screens.post('/begin/empty', typed);
    expect(await screens.textAfter(answer)).toContain('Mould & Sons begun; what was there is put away.');
    expect(await screens.database.read(measuresOf)).toMatchObject({
      ...{ system: 'US', english: 'US', currency: 'USD', weekStart: 'SU' },
    });
    expect(await (await screens.get('/yard/mixes/new?from=rapid')).text()).toContain('Fast-setting mortar, 55 lb');
    expect(await (await screens.get('/day?of=wantedOn&wantedOn=5/6')).text()).toContain('That is Thu, May 6, 2027');
    expect(await (await screens.get('/yard')).text()).toContain('<html lang="en-US">');
  });

  test('may be of two sides of the ocean, and are changed with the yard', async () => {
    const { get, post, database } = await screensOver();
    await database.write((tx) => setUnits(tx, 'US'));
    const shown = sentAsShown(await (await get('/yard/about')).text());
    expect(shown).toMatchObject({ system: 'US', english: 'US' });
    expect((await post('/yard/about', { ...shown, english: 'British' })).status).toBe(303);
    expect(await textOf(await get('/moulds'))).toContain('mould');
    expect(await (await get('/day?of=wantedOn&wantedOn=5/6')).text()).toContain('5 Jun');
  });
});

describe('an empty yard', () => {
  test('is begun with a name and a zone, and leads on to its parts', async () => {
    const screens = await demoScreens();
    const answer = await screens.post('/begin/empty', { name: 'Our yard', timeZone: 'Asia/Kolkata' });
    expect(answer.status).toBe(303);
    expect(answer.headers.get('Location')).toMatch(/^\/yard\?done=\d+$/);
    expect(await screens.textAfter(answer)).toContain('Our yard begun; what was there is put away.');
    const yard = await yardOf(screens);
    expect(yard).toMatchObject({
      castings: [],
      moulds: [],
      orders: [],
      yard: { name: 'Our yard', timeZone: 'Asia/Kolkata' },
    });
    expect(await screens.database.read(isDemo)).toBe(false);
  });

  test('not without a name, and not in a zone that does not exist; what was typed stays', async () => {
    const { post } = await demoScreens();
    const answer = await post('/begin/empty', { name: '', timeZone: 'Europe/Atlantis' });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain('What is the yard called?');
    expect(html).toContain('Which time zone?');
    expect(html).toContain('value="Europe/Atlantis"');
  });
});

describe('four answers', () => {
  test('make a yard with its sizes and its guesses, and lead to what a Saturday makes', async () => {
    const screens = await demoScreens();
    const answer = await screens.post('/begin/four', FOUR);
    expect(answer.headers.get('Location')).toMatch(/^\/begin\/session\?done=\d+$/);
    expect(await screens.textAfter(answer)).toMatch(/By these figures a Saturday makes \d+ panels in \d turns?\./);
    const yard = await yardOf(screens);
    expect(yard.castings.map(({ name, kg }) => [name, kg])).toEqual([
      ['Panel 1200', 18.1],
      ['Panel 900', 13.5],
      ['Panel 600', 9],
    ]);
    const { sizes, guesses, demo } = await screens.database.read(async (tx) => ({
      ...{ sizes: await sizesOfCastings(tx), guesses: await guessesOfYard(tx), demo: await isDemo(tx) },
    }));
    expect(demo).toBe(false);
    expect(sizes).toHaveLength(3);
    expect(guesses).toContainEqual({ kind: 'mix', id: 'panel-mix', figure: 'demouldMinutes' });
  });

  test('in feet and inches, as they were typed', async () => {
    const screens = await demoScreens();
    await screens.post('/begin/four', {
      ...FOUR,
      ...{ system: 'US', length0: '4 ft 6 in', length1: '36', length2: '', moulds2: '', bagLength: '36 in' },
      ...{ coldCelsius: '50', warmCelsius: '68 F', height: '8', thickness: '1 3/8' },
    });
    const yard = await yardOf(screens);
    expect(yard.moulds.map(({ id }) => id)).toEqual(['4 ft 6 in no. 1', '4 ft 6 in no. 2', '36 no. 1', '36 no. 2']);
    // 36 x 8 x 1 3/8 in = 396 in³ = 6.489 l, at 2150 kg/m³ 13.95 kg; 50 °F and 68 °F are 10 and 20 °C.
    expect(yard.castings[1]).toMatchObject({ name: 'Panel 36', kg: 14 });
    expect(yard.mixes[0]).toMatchObject({ demouldMinutes: 90, activationKelvin: 5753, yieldKgPerBag: 28 });
    expect(await screens.database.read(unitsOfYard)).toBe('US');
    expect(await textOf(await screens.get('/yard/guesses'))).toContain('180 minutes at 50 °F');
  });

  test('need no script for more lengths', async () => {
    const { post } = await demoScreens();
    const more = await post('/begin/four', { ...FOUR, more: '8' });
    expect(more.status).toBe(200);
    const html = await more.text();
    expect(html).toContain('id="length7"');
    expect(html).toContain('value="1200"');
  });

  test.each([
    ['no length at all', { length0: '', moulds0: '', length1: '', moulds1: '', length2: '', moulds2: '' }, 'length0'],
    ['a length that is none', { length1: 'nine hundred' }, 'length1'],
    ['a length without moulds', { moulds1: '' }, 'moulds1'],
    ['half a mould', { moulds0: '1.5' }, 'moulds0'],
    ['a length that may be inches', { length1: '48' }, 'length1'],
    ['a length twice', { length1: '1.2 m' }, 'length1'],
    ['a length longer than a truck', { length0: '90 m' }, 'length0'],
    ['a bag that fills nothing', { bagPieces: '0' }, 'bagPieces'],
    ['a third of a piece', { bagPieces: '1/3' }, 'bagPieces'],
    ['a bag that fills what is not cast', { bagLength: '800' }, 'bagLength'],
    ['a cold day as warm as the warm one', { coldCelsius: '20 °C' }, 'coldCelsius'],
    ['a cold day that is the quicker', { coldMinutes: '60' }, 'coldMinutes'],
    ['no minutes', { warmMinutes: '' }, 'warmMinutes'],
    ['no temperature', { warmCelsius: 'hot' }, 'warmCelsius'],
    ['no days', { 'days0:SA': '', from0: '' }, 'from0'],
    ['an end before the start', { to0: '07:00' }, 'to0'],
    ['nobody there', { people0: '0' }, 'people0'],
    ['no name', { name: '' }, 'name'],
    ['no zone', { timeZone: 'here' }, 'timeZone'],
    ['a fill longer than the mix can be worked', { fill: '20' }, 'fill'],
  ])('refuse %s, at its field', async (_what, typed, field) => {
    const screens = await demoScreens();
    const before = await yardOf(screens);
    const answer = await screens.post('/begin/four', { ...FOUR, ...typed });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain(`href="#${field}"`);
    expect(html).toContain(`id="${field}-error"`);
    expect(html).toContain('value="Our yard"'.replace('Our yard', 'name' in typed ? '' : 'Our yard'));
    expect(await yardOf(screens)).toEqual(before);
  });

  test('no days ticked at all is said there', async () => {
    const { 'days0:SA': _saturday, ...typed } = FOUR;
    const { post } = await demoScreens();
    const html = await (await post('/begin/four', typed)).text();
    expect(html).toContain('On which days do you work? Tick at least one.');
  });

  test('whatever is typed is a yard or a refusal, never a fault of the program', { timeout: 120_000 }, async () => {
    const screens = await demoScreens();
    const odd = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 12 }),
      fc.constantFrom('', '0', '-1', '1e9', '900', '1/2', '4 ft', 'NaN', '24:00', '23:59', '-20 C', '45 C', 'yes', '7'),
    );
    await fc.assert(
      fc.asyncProperty(
        fc.dictionary(fc.constantFrom(...Object.keys(FOUR), 'working', 'mix', 'fill'), odd, { maxKeys: 4 }),
        async (typed) => {
          const { status } = await screens.post('/begin/four', { ...FOUR, ...typed });
          expect([200, 303, 422]).toContain(status);
          expect(readYardFile(await yardOf(screens)).ok).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('what was there comes back', () => {
  test.each([
    ['the demo', demoScreens],
    ["a yard of one's own", screensOver],
  ])('%s, every row of it', async (_what, screensOf) => {
    const screens = await screensOf();
    const before = await yardOf(screens);
    const demo = await screens.database.read(isDemo);
    await screens.post('/begin/four', FOUR);
    expect((await yardOf(screens)).yard.name).toBe('Our yard');
    const { id } = await newest(screens);
    const answer = await screens.post('/undo', { change: String(id), back: '/changes' });
    expect(await screens.textAfter(answer)).toContain('Undone: Our yard begun');
    expect(await yardOf(screens)).toEqual(before);
    expect(await screens.database.read(isDemo)).toBe(demo);
    expect(await screens.database.read(guessesOfYard)).toEqual([]);
  });

  test('once what was changed after it is undone, and not before', async () => {
    const screens = await demoScreens();
    const before = await yardOf(screens);
    await screens.post('/begin/four', FOUR);
    const begun = await newest(screens);
    await screens.post('/begin/session', { made: '6' });
    const fitted = await newest(screens);
    const refused = await screens.post('/undo', { change: String(begun.id), back: '/' });
    expect(refused.status).toBe(409);
    for (const { id } of [fitted, begun]) await screens.post('/undo', { change: String(id), back: '/' });
    expect(await yardOf(screens)).toEqual(before);
  });
});

describe('times fitted to the last session', () => {
  const begun = async () => {
    const screens = await demoScreens();
    await screens.post('/begin/four', FOUR);
    return screens;
  };

  test('are shown beside those of now, taken, and the session then makes as many', async () => {
    const screens = await begun();
    const before = await yardOf(screens);
    const shown = await textOf(await screens.get('/begin/session?made=6'));
    expect(shown).toContain('With these times a Saturday makes 6 panels in');
    expect(shown).toContain('Set up a mould 10 to 14');
    expect(await yardOf(screens)).toEqual(before);
    const taken = await screens.post('/begin/session', { made: '6' });
    expect(taken.headers.get('Location')).toMatch(/^\/\?what=casting%3Apanel-1200&number=1&done=\d+$/);
    expect(await textOf(await screens.get('/begin/session'))).toContain(
      'By these figures a Saturday makes 6 panels in',
    );
    expect(await textOf(await screens.get('/begin/session?made=6'))).toContain('makes 6 panels in 2 turns already.');
  });

  test('say so when no times make as many, and what holds it', async () => {
    const { get } = await begun();
    const text = await textOf(await get('/begin/session?made=90'));
    expect(text).toMatch(/A Saturday can't make 90: \d+ is the nearest\./);
    expect(text).toContain('held up by the moulds you have');
  });

  test.each(['', '0', '-3', 'eight', '1000'])('"%s" is no number of pieces', async (made) => {
    const screens = await begun();
    const before = await yardOf(screens);
    expect((await screens.get(`/begin/session?made=${made}`)).status).toBe(422);
    expect((await screens.post('/begin/session', { made })).status).toBe(422);
    expect(await yardOf(screens)).toEqual(before);
  });

  test('nothing to fit in an empty yard: it leads to Your yard', async () => {
    const screens = await demoScreens();
    await screens.post('/begin/empty', { name: 'Our yard', timeZone: 'UTC' });
    expect(await textOf(await screens.get('/begin/session'))).toContain('No session makes anything yet.');
    expect((await screens.post('/begin/session', { made: '8' })).status).toBe(422);
  });
});

describe('guesses', () => {
  const begun = async () => {
    const screens = await demoScreens();
    await screens.post('/begin/four', FOUR);
    return screens;
  };
  const rests = 'Rests on figures to check, of the bags and the mix';

  test('stand beside a first date and on the page of an order', async () => {
    const { get, post, textAfter } = await begun();
    expect(await textOf(await get('/'))).toContain(rests);
    const taken = await post('/orders', { what0: 'casting:panel-900', quantity0: '2', slip: 'rather not' });
    expect(await textAfter(taken)).toContain(rests);
  });

  test('keep two sessions in hand, which the dates say, and which can be changed', async () => {
    const { get } = await begun();
    expect(await textOf(await get('/'))).toContain('With two sessions in hand and 7 days for deliveries.');
    const about = await (await get('/yard/about')).text();
    expect(about).toContain('Two are advised while more than three of your figures are still to be checked, then one.');
    expect(about).toMatch(/name="sessionsInHand"[^>]*value="2"/);
  });

  test('are said in words with what they are, and gone once they are right', async () => {
    const screens = await begun();
    const page = await textOf(await screens.get('/yard/guesses'));
    const [still] = /^\w+ figures are still to check/.exec(page) ?? ['none'];
    expect(await textOf(await screens.get('/yard'))).toContain(`${still.toLowerCase()}. Check them`);
    expect(page).toContain('One bag makes: 27 kg.');
    expect(page).toContain('A panel can be stripped after: 90 minutes at 20 °C, 180 minutes at 10 °C.');
    expect(page).toContain('A panel weighs: 18.1 kg for Panel 1200, 13.5 kg for Panel 900, 9 kg for Panel 600.');
    const answer = await screens.post('/yard/guesses/right', { kind: 'casting', figure: 'kg' });
    const after = await screens.textAfter(answer);
    expect(after).toContain('3 figures confirmed.');
    expect(after).not.toContain('A panel weighs');
  });

  test('confirmed one by one, no date rests on any', async () => {
    const screens = await begun();
    const all = await screens.database.read(guessesOfYard);
    for (const { kind, figure } of all) await screens.post('/yard/guesses/right', { kind, figure });
    expect(await textOf(await screens.get('/yard/guesses'))).toContain('No figure is left to check.');
    expect(await textOf(await screens.get('/'))).not.toContain('Rests on figures to check');
  });

  test('what is none is refused', async () => {
    const screens = await begun();
    const answer = await screens.post('/yard/guesses/right', { kind: 'mix', figure: 'name' });
    expect(answer.status).toBe(422);
    expect(await textOf(answer)).toContain('That is no figure to check any more.');
  });

  test('there are none in the demo', async () => {
    const { get } = await demoScreens();
    expect(await textOf(await get('/'))).not.toContain('Rests on figures to check');
    expect(await textOf(await get('/yard/guesses'))).toContain('No figure is left to check.');
  });
});
