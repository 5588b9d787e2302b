import { describe, expect, test } from 'vitest';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { type ForecastPlace, forecastAnswer } from '../../shared/forecast.ts';
import type { AskForecast } from '../../src/usecases/core/context.ts';
import { dayOf, forecastOf } from '../support/forecast-answer.ts';
import { screensOn, screensOver, type TestScreens } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';
import { yardContext } from '../support/yard-context.ts';

const { now } = smallYard().yard;
const FILE = '/yard/weather/file';

const sent = (screens: TestScreens, text: string) => {
  const body = new FormData();
  body.append('file', new File([text], 'weather.csv'));
  return screens.app.request(FILE, { method: 'POST', body });
};

const valuesOf = (html: string) =>
  Object.fromEntries(
    [...html.matchAll(/<input[^>]* name="((?:low|high|wind|humidity|rain) [^"]*)"[^>]* value="([^"]+)"/g)].map(
      ([, name = '', value = '']) => [name, value],
    ),
  );

test('a row a day fills in the form and saves nothing; what the file does not say stays', async () => {
  const known = { date: '2027-04-12', minCelsius: 3, maxCelsius: 9 };
  const screens = await screensOver({
    ...smallYard({ orders: [] }),
    weather: { coldestAt: '06:00', warmestAt: '14:00', days: [known] },
  });
  const answer = await sent(
    screens,
    'Date;Tmin;Tmax;Wind m/s;Rain mm\n9.4.2027;-1,5;8;5;2,4\n10.4.2027;2;12,5;;\n1.5.2027;9;20;1;0\n',
  );
  const html = await answer.text();
  expect(answer.status).toBe(200);
  expect(html).toContain('2 days are filled in. Nothing has been saved yet');
  expect(valuesOf(html)).toEqual({
    ...{
      'low 2027-04-09': '-1.5 °C',
      'high 2027-04-09': '8 °C',
      'wind 2027-04-09': '18 km/h',
      'rain 2027-04-09': '2.4 mm',
    },
    ...{ 'low 2027-04-10': '2 °C', 'high 2027-04-10': '12.5 °C' },
    ...{ 'low 2027-04-12': '3 °C', 'high 2027-04-12': '9 °C' },
  });
  expect(html).toContain('value="06:00"');
  expect((await screens.database.read((tx) => loadYardFile(tx, now))).weather?.days).toEqual([known]);
});

test('a row an hour gives the lowest and the highest, the strongest wind, the driest air and all rain', async () => {
  const screens = await screensOver(smallYard({ orders: [] }));
  const html = await (
    await sent(
      screens,
      [
        'time,temperature (°F),wind direction,wind mph,relative humidity,precipitation mm',
        '2027-04-09T05:00Z,41,180,5,90,1',
        '2027-04-09T15:00Z,59,200,10,45,0.5',
      ].join('\n'),
    )
  ).text();
  expect(valuesOf(html)).toEqual({
    ...{ 'low 2027-04-09': '5 °C', 'high 2027-04-09': '15 °C', 'wind 2027-04-09': '16 km/h' },
    ...{ 'humidity 2027-04-09': '45', 'rain 2027-04-09': '1.5 mm' },
  });
});

test('the days gone by tell in which order the coming ones are written', async () => {
  const screens = await screensOver(smallYard({ orders: [] }));
  // The 8th to the 12th of April as a program of the other side of the ocean writes them; the 31st of March gives it away.
  const rows = ['03/31/2027,1,9', '04/08/2027,2,10', '04/09/2027,3,11', '04/12/2027,4,12'];
  const html = await (await sent(screens, ['date,low,high', ...rows].join('\n'))).text();
  expect(valuesOf(html)).toEqual({
    ...{ 'low 2027-04-08': '2 °C', 'high 2027-04-08': '10 °C' },
    ...{ 'low 2027-04-09': '3 °C', 'high 2027-04-09': '11 °C' },
    ...{ 'low 2027-04-12': '4 °C', 'high 2027-04-12': '12 °C' },
  });
});

test('columns that no name tells are asked for, and named by the maker', async () => {
  const screens = await screensOver(smallYard({ orders: [] }));
  const asked = await sent(screens, 'when,a,b\n2027-04-09,3,11\n');
  const html = await asked.text();
  expect(asked.status).toBe(422);
  expect(html).toContain('Which column is which?');
  expect(html).toContain('Say which column that is.');
  const table = /name="table" value="([^"]*)"/.exec(html)![1]!.replaceAll('&quot;', '"');
  const filled = await screens.post(FILE, { table, date: '0', low: '1', high: '2' });
  expect(valuesOf(await filled.text())).toEqual({ 'low 2027-04-09': '3 °C', 'high 2027-04-09': '11 °C' });
  const wrong = await screens.post(FILE, { table, date: '0', low: '0', high: '2' });
  expect([wrong.status, await wrong.text()]).toEqual([422, expect.stringContaining('is not a temperature')]);
});

test.each([
  ['', 'The file is empty.'],
  ['date,low,high\n2026-01-01,3,11\n', 'No row of the file is of today or the six days after it.'],
  ['date,low,high\n2027-04-09,"3,11\n', 'A quotation mark is opened and never closed'],
])('%j is refused at the field of the file', async (text, said) => {
  const answer = await sent(await screensOver(smallYard({ orders: [] })), text);
  expect([answer.status, await answer.text()]).toEqual([422, expect.stringContaining(said)]);
});

test('a table that was tampered with asks for the file again', async () => {
  const screens = await screensOver(smallYard({ orders: [] }));
  for (const table of ['', '{}', '{"header":[],"rows":[]}', 'x'.repeat(30_000)])
    expect((await screens.post(FILE, { table })).status).toBe(422);
});

describe('a forecast', () => {
  const PLACE = { latitude: '53,35', longitude: '-6.26', contact: 'yard@example.org' };

  const screensWith = async (forecast: AskForecast) => {
    const { database } = await yardContext(smallYard({ orders: [] }));
    return screensOn(database, now, { forecast });
  };

  test('is asked for nobody until it is switched on, fills in the form, saves nothing, and is switched off', async () => {
    const asked: ForecastPlace[] = [];
    const screens = await screensWith(async (place) => {
      asked.push(place);
      return forecastAnswer.parse(forecastOf(dayOf('2027-04-10', 4, 16)));
    });
    expect((await screens.post('/yard/weather/forecast', {})).status).toBe(422);
    const on = await screens.textAfter(await screens.post('/yard/weather/forecast/on', PLACE));
    expect(on).toContain('Data from MET Norway');
    expect(asked).toEqual([]);
    const filled = await (await screens.post('/yard/weather/forecast', {})).text();
    expect(asked).toEqual([{ latitude: 53.35, longitude: -6.26, contact: 'yard@example.org' }]);
    expect(valuesOf(filled)).toMatchObject({ 'low 2027-04-10': '4 °C', 'high 2027-04-10': '16 °C' });
    expect((await screens.database.read((tx) => loadYardFile(tx, now))).weather).toBeUndefined();
    await screens.textAfter(await screens.post('/yard/weather/forecast/off', {}));
    expect((await screens.post('/yard/weather/forecast', {})).status).toBe(422);
    expect(asked).toHaveLength(1);
  });

  test('that does not answer leaves the months as they are, in words', async () => {
    const screens = await screensWith(async () => null);
    await screens.post('/yard/weather/forecast/on', PLACE);
    const answer = await screens.post('/yard/weather/forecast', {});
    expect([answer.status, await answer.text()]).toEqual([
      422,
      expect.stringContaining('The forecast did not answer. The months hold'),
    ]);
  });

  test.each([
    [{ latitude: '95' }, 'Write degrees between -90 and 90'],
    [{ longitude: 'west' }, 'Write degrees between -180 and 180'],
    [{ contact: 'me' }, 'Write an e-mail address'],
  ])('with %j is refused at its field, with all that was typed', async (wrong, said) => {
    const screens = await screensWith(async () => null);
    const answer = await screens.post('/yard/weather/forecast/on', { ...PLACE, ...wrong });
    const html = await answer.text();
    expect([answer.status, html]).toEqual([422, expect.stringContaining(said)]);
    expect(html).toContain(`value="${Object.values(wrong)[0]}"`);
  });
});
