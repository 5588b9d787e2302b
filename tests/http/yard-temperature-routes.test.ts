import { describe, expect, test } from 'vitest';
import { addGuesses, guessesOfYard } from '../../db/stores/figure-store.ts';
import { setUnits } from '../../db/stores/units-store.ts';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { stepsOfMonths } from '../../src/engine/cure/month-temperatures.ts';
import { screensOver, type TestScreens, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

const { now, horizonDays } = smallYard().yard;
const TODAY = '2027-04-08';
const FIGURES = [6, 6, 7, 9, 11, 14, 16, 16, 14, 11, 8, 6];
const form = (figures: readonly (string | number)[] = FIGURES) =>
  Object.fromEntries(figures.map((figure, month) => [`month-${month + 1}`, String(figure)]));
const stepsIn = async ({ database }: TestScreens) => (await database.read((tx) => loadYardFile(tx, now))).temperatures;
const withMonths = () => smallYard({ temperatures: stepsOfMonths(FIGURES, TODAY, horizonDays) });
const seenIn = (html: string) => /name="seen" value="([^"]*)"/.exec(html)?.[1] ?? '';

/** Saves, whatever it moves. */
const saved = async (screens: TestScreens, path: string, typed: Record<string, string>): Promise<string> => {
  const answer = await screens.post(path, typed);
  if (answer.status === 303) return screens.textAfter(answer);
  const seen = seenIn(await answer.text());
  return screens.textAfter(await screens.post(path, { ...typed, seen }));
};

describe('temperatures by month', () => {
  test('are twelve figures, kept as they were typed', async () => {
    const screens = await screensOver(smallYard({ orders: [] }));
    expect(await textOf(await screens.get('/yard/temperatures'))).toMatch(/^No temperature is expected yet\./);
    const text = await saved(screens, '/yard/temperatures', { ...form(), 'month-4': '50 F' });
    expect(text).toMatch(/Temperatures by month changed\..*10 °C is expected today\./);
    expect(await (await screens.get('/yard/temperatures')).text()).toContain('value="50 F"');
    const steps = await stepsIn(screens);
    expect(steps.slice(0, 2)).toEqual([
      { from: '2027-04-01', celsius: 10 },
      { from: '2027-05-01', celsius: 11 },
    ]);
    expect(steps.at(-1)?.from).toBe('2028-06-01');
  });

  test('are in the yard file to the last bit again when nothing is changed', async () => {
    const odd = FIGURES.map((celsius) => celsius + 1 / 3);
    const yard = smallYard({ temperatures: stepsOfMonths(odd, TODAY, horizonDays), orders: [] });
    const screens = await screensOver(yard);
    const html = await (await screens.get('/yard/temperatures')).text();
    const shown = [...html.matchAll(/name="month-\d+"[^>]*value="([^"]*)"/g)].map(([, value]) => value ?? '');
    expect(shown[3]).toBe('9.3 °C');
    await saved(screens, '/yard/temperatures', form(shown));
    expect(await stepsIn(screens)).toEqual(yard.temperatures);
  });

  test('are read in the units of the yard', async () => {
    const screens = await screensOver(smallYard({ orders: [] }));
    await screens.database.write((tx) => setUnits(tx, 'US'));
    expect(await saved(screens, '/yard/temperatures', form(FIGURES.map(() => 50)))).toContain(
      '50 °F is expected today.',
    );
    expect((await stepsIn(screens))[0]?.celsius).toBe(10);
  });

  test('are all twelve or none, and no nonsense', async () => {
    const screens = await screensOver();
    const some = await screens.post('/yard/temperatures', {
      ...form(),
      'month-2': '',
      'month-3': 'mild',
      'month-5': '90',
    });
    expect(some.status).toBe(422);
    const text = await textOf(some.clone());
    expect(text).toContain('Fill in all twelve months, or none of them.');
    expect(text).toContain('"mild" is not a temperature.');
    expect(text).toContain('No yard is that warm or that cold. Is the unit right?');
    expect(await some.text()).toContain('value="mild"');
    const none = await screensOver(withMonths());
    await saved(none, '/yard/temperatures', form(FIGURES.map(() => '')));
    expect(await stepsIn(none)).toEqual([]);
  });

  test('show what they move: in frost nothing can be stripped', async () => {
    const screens = await screensOver();
    const answer = await screens.post('/yard/temperatures', form(FIGURES.map(() => 2)));
    expect(await textOf(answer)).toMatch(
      /^This moves one promise\. Nothing has been saved yet\. School garden: Sat 10 Apr to/,
    );
  });

  test('take the place of the one guessed figure of a yard that has just begun', async () => {
    const guess = { kind: 'yard', id: 'yard', figure: 'temperatures' } as const;
    const screens = await screensOver(smallYard({ temperatures: [{ from: TODAY, celsius: 20 }], orders: [] }));
    await screens.database.write((tx) => addGuesses(tx, [guess]));
    expect(await (await screens.get('/yard/temperatures')).text()).toContain(
      'January<span class="guess"> to check</span>',
    );
    const text = await saved(screens, '/yard/temperatures', form());
    expect(text).toContain('9 °C is expected today.');
    expect(text).not.toContain('20 °C');
    expect(await screens.database.read(guessesOfYard)).toEqual([]);
  });

  test('that end before what is planned say so', async () => {
    const temperatures = stepsOfMonths(FIGURES, TODAY, horizonDays).slice(0, 2);
    const { get } = await screensOver(smallYard({ temperatures }));
    const words =
      'The months are known until May 2027; all after it count like that one. Save them once more to go on.';
    expect(await textOf(await get('/yard/temperatures'))).toContain(words);
    expect(await textOf(await get('/yard'))).toContain(words);
  });
});

describe('days that are not like their month', () => {
  const cold = { celsius: '3', from: '12 Apr', to: '18 Apr' };

  test('are a line of their own, after which it is as before', async () => {
    const screens = await screensOver(withMonths());
    const text = await saved(screens, '/yard/temperatures/new', cold);
    expect(text).toContain('3 °C from Mon 12 Apr to Sun 18 Apr.');
    expect(text).toContain('9 °C from Mon 19 Apr to Fri 30 Apr.');
    const steps = await stepsIn(screens);
    expect(steps).toContainEqual({ from: '2027-04-12', celsius: 3 });
    expect(steps).toContainEqual({ from: '2027-04-19', celsius: 9 });
  });

  test('go on over the first of a month, and stay when the months are changed', async () => {
    const screens = await screensOver(withMonths());
    await saved(screens, '/yard/temperatures/new', { celsius: '3', from: '28 Apr', to: '4 May' });
    const text = await saved(screens, '/yard/temperatures', form(FIGURES.map((celsius) => celsius + 1)));
    expect(text).toContain('3 °C from Sat 1 May to Tue 4 May.');
    const html = await (await screens.get('/yard/temperatures')).text();
    expect(html).toMatch(/name="month-5"[^>]*value="12"/);
    expect((await stepsIn(screens)).filter(({ from }) => from === '2027-05-01')).toEqual([
      { from: '2027-05-01', celsius: 12 },
      { from: '2027-05-01', celsius: 3 },
    ]);
  });

  test('are changed and removed', async () => {
    const screens = await screensOver(withMonths());
    await saved(screens, '/yard/temperatures/new', cold);
    const html = await (await screens.get('/yard/temperatures')).text();
    const path = /href="(\/yard\/temperatures\/\d+)"/.exec(html)?.[1] ?? '';
    expect(await saved(screens, path, { celsius: '5 C', from: '13 Apr' })).toContain(
      '5 °C from Tue 13 Apr to Sun 18 Apr.',
    );
    expect(await saved(screens, `${path}/remove`, {})).not.toContain('5 °C');
    expect((await screens.get(path)).status).toBe(404);
  });

  test('are refused where they say nothing new or nothing sensible', async () => {
    const screens = await screensOver(withMonths());
    await saved(screens, '/yard/temperatures/new', cold);
    expect(await textOf(await screens.post('/yard/temperatures/new', cold))).toContain(
      'There is a temperature from that day on already. Change that one.',
    );
    expect(
      await textOf(await screens.post('/yard/temperatures/new', { ...cold, from: '14 Apr', to: '20 Apr' })),
    ).toContain('From Mon 19 Apr on another temperature is given already.');
    const backwards = await screens.post('/yard/temperatures/new', { ...cold, from: '30 Apr', to: '20 Apr' });
    expect(await textOf(backwards)).toContain('That is before the first day.');
    const none = await screensOver();
    expect(await textOf(await none.post('/yard/temperatures/new', cold))).toContain(
      'Say first what the months are like',
    );
  });
});

describe('two figures in the place of twelve', () => {
  const VALUES = /name="month-(\d+)"[^>]* value="([^"]*)"/g;

  test('fill in the months between them and save nothing; a yard that has none is offered a guess', async () => {
    const screens = await screensOver(smallYard({ orders: [] }));
    const offered = await (await screens.get('/yard/temperatures')).text();
    // At 53 degrees north, between 2 and 19 °C at 50 and -4 and 17 °C at 60.
    expect(offered).toMatch(/name="coldest"[^>]* value="0.2 °C"/);
    expect(offered).toMatch(/name="warmest"[^>]* value="18.4 °C"/);
    const html = await (await screens.get('/yard/temperatures?coldest=4&warmest=61+F')).text();
    const values = Object.fromEntries([...html.matchAll(VALUES)].map(([, month = '', value]) => [month, value]));
    expect([values['1'], values['4'], values['7']]).toEqual(['4 °C', '10.1 °C', '16.1 °C']);
    expect(await stepsIn(screens)).toEqual([]);
  });

  test.each([
    ['coldest=16&warmest=4', 'That is colder than the coldest month.'],
    ['coldest=cold&warmest=4', 'is not a temperature'],
  ])('%s is refused at its field', async (query, said) => {
    const screens = await screensOver(smallYard({ orders: [] }));
    const answer = await screens.get(`/yard/temperatures?${query}`);
    expect([answer.status, await textOf(answer)]).toEqual([422, expect.stringContaining(said)]);
  });
});
