import { describe, expect, test } from 'vitest';
import { recentHeads } from '../../db/stores/change-store.ts';
import { setUnits } from '../../db/stores/units-store.ts';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { screensOver, type TestScreens, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

const WEATHER = '/yard/weather';
const { now } = smallYard().yard;
const HOURS = { coldestAt: '5:00', warmestAt: '15:00' };
const weatherIn = async ({ database }: TestScreens) => (await database.read((tx) => loadYardFile(tx, now))).weather;

/** Saves, whatever it moves. */
const saved = async (screens: TestScreens, typed: Record<string, string>): Promise<string> => {
  const answer = await screens.post(WEATHER, { ...HOURS, ...typed });
  if (answer.status === 303) return screens.textAfter(answer);
  const seen = /name="seen" value="([^"]*)"/.exec(await answer.text())?.[1] ?? '';
  return screens.textAfter(await screens.post(WEATHER, { ...HOURS, ...typed, seen }));
};

const valuesOf = (html: string) =>
  Object.fromEntries(
    [...html.matchAll(/<input[^>]* name="((?:low|high|wind|humidity|rain) [^"]*)"[^>]* value="([^"]*)"/g)].map(
      ([, name = '', value = '']) => [name, value],
    ),
  );

describe('the weather of the coming days', () => {
  test('is asked for today and six days more, and kept for each day that is filled in', async () => {
    const screens = await screensOver(smallYard({ orders: [] }));
    const html = await (await screens.get(WEATHER)).text();
    expect(html).toContain('What will the coming days be like?');
    expect(html.match(/<legend>/g)).toHaveLength(7);
    expect(await weatherIn(screens)).toBeUndefined();
    const text = await saved(screens, {
      ...{ 'low 2027-04-08': '4', 'high 2027-04-08': '15', 'wind 2027-04-08': '20', 'humidity 2027-04-08': '45' },
      'rain 2027-04-08': '2.5',
      ...{ 'low 2027-04-10': '-2 C', 'high 2027-04-10': '50 F' },
    });
    expect(text).toMatch(/Weather of the coming days changed\..*2 of the coming 7 days are planned by the hour\./);
    expect(await weatherIn(screens)).toEqual({
      ...{ coldestAt: '05:00', warmestAt: '15:00' },
      days: [
        { date: '2027-04-08', minCelsius: 4, maxCelsius: 15, windKmh: 20, humidityPercent: 45, rainMm: 2.5 },
        { date: '2027-04-10', minCelsius: -2, maxCelsius: 10 },
      ],
    });
    const typed = valuesOf(await (await screens.get(WEATHER)).text());
    expect([typed['low 2027-04-08'], typed['wind 2027-04-08'], typed['low 2027-04-10']]).toEqual([
      '4 °C',
      '20 km/h',
      '-2 °C',
    ]);
    expect(await textOf(await screens.get('/yard'))).toContain('2 days from today on planned by the hour.');
  });

  test('is what it was to the last bit where nothing is changed, and gone where a day is emptied', async () => {
    const days = [
      {
        date: '2027-04-09',
        minCelsius: 4 + 1 / 3,
        maxCelsius: 9 + 1 / 7,
        windKmh: 12.3,
        humidityPercent: 61,
        rainMm: 1 / 3,
      },
    ];
    const known = { coldestAt: '06:00', warmestAt: '14:00', days };
    const screens = await screensOver({ ...smallYard({ orders: [] }), weather: known });
    const typed = valuesOf(await (await screens.get(WEATHER)).text());
    await saved(screens, { ...typed, coldestAt: '06:00', warmestAt: '14:00' });
    expect(await weatherIn(screens)).toEqual(known);
    const empty = Object.fromEntries(Object.keys(typed).map((name) => [name, '']));
    await saved(screens, empty);
    expect(await weatherIn(screens)).toBeUndefined();
    const [last] = await screens.database.read((tx) => recentHeads(tx, 1));
    await screens.post('/undo', { change: String(last!.id), back: '/changes' });
    expect(await weatherIn(screens)).toEqual(known);
  });

  test('keeps the days that have passed, in which pieces have set', async () => {
    const past = [{ date: '2027-04-05', minCelsius: 1, maxCelsius: 3 }];
    const screens = await screensOver({
      ...smallYard({ orders: [] }),
      weather: { coldestAt: '05:00', warmestAt: '15:00', days: past },
    });
    await saved(screens, { 'low 2027-04-09': '5', 'high 2027-04-09': '9' });
    expect((await weatherIn(screens))?.days.map(({ date }) => date)).toEqual(['2027-04-05', '2027-04-09']);
  });

  test('is read in the units of the yard', async () => {
    const screens = await screensOver(smallYard({ orders: [] }));
    await screens.database.write((tx) => setUnits(tx, 'US'));
    await saved(screens, { 'low 2027-04-09': '41', 'high 2027-04-09': '59', 'wind 2027-04-09': '10' });
    expect((await weatherIn(screens))?.days).toEqual([
      { date: '2027-04-09', minCelsius: 5, maxCelsius: 15, windKmh: 16.09344 },
    ]);
    expect(await (await screens.get(WEATHER)).text()).toContain('value="10 mph"');
  });

  test.each([
    [{ 'low 2027-04-09': '5' }, 'Fill in the lowest and the highest'],
    [{ 'low 2027-04-09': '9', 'high 2027-04-09': '5' }, 'That is lower than the lowest.'],
    [{ 'low 2027-04-09': '5', 'high 2027-04-09': '900' }, 'No yard is that warm or that cold.'],
    [{ 'low 2027-04-09': '5', 'high 2027-04-09': '9', 'wind 2027-04-09': '300' }, 'No yard works in that.'],
    [
      { 'low 2027-04-09': '5', 'high 2027-04-09': '9', 'humidity 2027-04-09': '101' },
      'Write a whole number, 0 to 100.',
    ],
    [{ 'low 2027-04-09': '5', 'high 2027-04-09': '9', 'rain 2027-04-09': '900' }, 'That is a flood.'],
    [{ coldestAt: '15:00', warmestAt: '5:00' }, 'A day is warmest after it is coldest.'],
  ])('%j is refused at its field', async (typed, said) => {
    const screens = await screensOver(smallYard({ orders: [] }));
    const answer = await screens.post(WEATHER, { ...HOURS, ...typed });
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain(said);
    expect(await weatherIn(screens)).toBeUndefined();
  });

  test('that brings frost before a date that was given shows what moves, and saves nothing yet', async () => {
    const [order] = smallYard().orders;
    const yard = smallYard({ orders: [{ ...order!, due: '2027-04-10' }] });
    const mixes = yard.mixes.map((mix) => ({ ...mix, minCelsius: 1, protectHours: 24 }));
    const screens = await screensOver({ ...yard, temperatures: [{ from: '2027-01-01', celsius: 9 }], mixes });
    const answer = await screens.post(WEATHER, { ...HOURS, 'low 2027-04-11': '-3', 'high 2027-04-11': '12' });
    const text = await textOf(answer);
    expect(answer.status).toBe(200);
    expect(text).toContain('7 days later');
    expect(await weatherIn(screens)).toBeUndefined();
  });
});
