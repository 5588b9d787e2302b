import { expect, test } from 'vitest';
import { recentHeads } from '../../db/stores/change-store.ts';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { plannedYard, saturday } from '../support/planned-yard.ts';
import { screensOver, type TestScreens, textOf } from '../support/screens.ts';

const NOW = saturday('08:05');
const DAY = NOW.slice(0, 10);
const withWeather = (rainMm?: number) =>
  screensOver(
    plannedYard({
      yard: { ...plannedYard().yard, now: NOW },
      weather: { days: [{ date: DAY, minCelsius: 8, maxCelsius: 20, ...(rainMm === undefined ? {} : { rainMm }) }] },
    }),
  );
const daySaid = async ({ database }: TestScreens) =>
  (await database.read((tx) => loadYardFile(tx, NOW))).weather?.days.find(({ date }) => date === DAY);

test('Today asks the thermometer while something is to be mixed, goes by it, and takes it back', async () => {
  const screens = await withWeather();
  // At 8:30 by half a cosine from 5:00: 8 + 12 x (1 - cos 0.35 pi)/2 = 11.3 °C.
  expect(await textOf(await screens.get('/today'))).toContain('About 11.3 °C is expected now. How warm is it?');
  const text = await screens.textAfter(await screens.post('/today/thermometer', { thermometer: '16' }));
  expect(text).toContain('The thermometer reads 16 °C.');
  expect(text).toContain('About 16 °C is expected now.');
  const day = await daySaid(screens);
  expect(day?.maxCelsius).toBeGreaterThan(20);
  const [head] = await screens.database.read((tx) => recentHeads(tx, 1));
  await screens.post('/undo', { change: String(head!.id), back: '/today' });
  expect(await daySaid(screens)).toEqual({ date: DAY, minCelsius: 8, maxCelsius: 20 });
});

test('what is no temperature is refused at its field, and nothing is changed', async () => {
  const screens = await withWeather();
  for (const [typed, said] of [
    ['warm', 'is not a temperature'],
    ['160', 'No yard is that warm or that cold.'],
    ['', 'Nothing was written.'],
  ] as const) {
    const answer = await screens.post('/today/thermometer', { thermometer: typed });
    expect([answer.status, await textOf(answer)]).toEqual([422, expect.stringContaining(said)]);
  }
  expect((await daySaid(screens))?.maxCelsius).toBe(20);
});

test('a yard that says nothing of today is asked how warm it is planned', async () => {
  const screens = await screensOver(
    plannedYard({ yard: { ...plannedYard().yard, now: NOW }, temperatures: [{ from: '2027-01-01', celsius: 9 }] }),
  );
  expect(await textOf(await screens.get('/today'))).toContain('Today is planned at 9 °C. How warm is it?');
});

test('rain on a session is said, and the hours are called off at one tap', async () => {
  const screens = await withWeather(8);
  const text = await textOf(await screens.get('/today'));
  expect(text).toContain('Rain is expected today: 8 mm.');
  expect(text).toContain('No work today');
  const after = await screens.textAfter(await screens.post('/today/no-work', { date: DAY }));
  expect(after).toContain('No work on Sat 10 Apr');
  expect(after).not.toContain('Rain is expected');
});

test.each([[undefined], [0.4]])('no rain is said of a day with %s mm', async (rainMm) => {
  expect(await textOf(await (await withWeather(rainMm)).get('/today'))).not.toContain('Rain is expected');
});
