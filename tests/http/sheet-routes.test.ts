import { describe, expect, test } from 'vitest';
import { plannedYard, saturday } from '../support/planned-yard.ts';
import { demoScreens, screensOn, screensOver, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';
import { yardContext } from '../support/yard-context.ts';

describe('the sheet for the wall', () => {
  test('is of the next session in which something is mixed, not of an hour of stripping before it', async () => {
    const { get } = await demoScreens();
    expect(await textOf(await get('/today'))).toContain('Today, 16:30 to 17:15: strip 2.');
    const sheet = await textOf(await get('/today/sheet'));
    expect(sheet).toMatch(/^Wednesday sheet: Wed 7 Apr, 18:00 to 20:30, \d pieces\./);
    expect(sheet).toContain("By today's plan of Mon 5 Apr.");
  });

  test('says what is done when, on which mould, for whom, and how often each is filled', async () => {
    const { get } = await screensOver(plannedYard());
    const sheet = await textOf(await get('/today/sheet'));
    expect(sheet).toContain('Saturday sheet: Sat 10 Apr, 8:00 to 12:00, 1 piece.');
    expect(sheet).toContain('(for School garden)');
    expect(sheet).toContain('Thin panel mix: 1 bag. Pour by ');
    expect(sheet).toMatch(/Mould Turn 1 900 no\. \d \d{1,2}:\d\d/);
  });

  test('is still of a session that is under way', async () => {
    const yard = plannedYard({ yard: { ...plannedYard().yard, now: saturday('08:30') } });
    const { get } = await screensOver(yard);
    expect(await textOf(await get('/today/sheet'))).toContain('Saturday sheet: Sat 10 Apr');
  });

  test('printed in the middle of a session it says what is under way and what is done', async () => {
    const now = saturday('07:30');
    const { database } = await yardContext(plannedYard({ yard: { ...plannedYard().yard, now } }));
    await screensOn(database, now).get('/today');
    await screensOn(database, saturday('08:22')).post('/today/prepared', {
      ...{ mould: '900 no. 1', casting: 'panel-900', sealed: '', step: '' },
    });
    const sheet = await textOf(await screensOn(database, saturday('08:25')).get('/today/sheet'));
    expect(sheet).toContain('Done so far: 8:20 900 no. 1 is ready to pour.');
    expect(sheet).toMatch(/8:25 Mix Thin panel mix: .* Under way until 8:40/);
    expect(sheet).not.toContain('Set up 900 no. 1');
  });

  test('of a session to come it says nothing of the kind', async () => {
    const { get } = await screensOver(plannedYard());
    expect(await textOf(await get('/today/sheet'))).not.toMatch(/Done so far|Under way/);
  });

  test('without a session it says how there comes to be one', async () => {
    const { get } = await screensOver(smallYard({ orders: [] }));
    const html = await (await get('/today/sheet')).text();
    expect(html).toContain('There is no session to print.');
    expect(html).toContain('<a href="/">');
  });

  test('stands on Today', async () => {
    const { get } = await screensOver();
    expect(await (await get('/today')).text()).toContain('href="/today/sheet"');
  });
});

describe('the evening before', () => {
  const THURSDAY = '2027-04-08T19:00:00+01:00';
  const garden = {
    id: '27-001',
    customer: 'School garden',
    due: '2027-04-10',
    lines: [{ casting: 'panel-900', quantity: 3 }],
  };

  test('is on Today until its day comes, with the moulds that can be got ready, and on a sheet of its own', async () => {
    const yard = plannedYard({ yard: { ...plannedYard().yard, now: THURSDAY }, orders: [garden] });
    const { get, post, textAfter, database } = await screensOver(yard);
    const today = await textOf(await get('/today'));
    expect(today).toMatch(/Before Saturday: weigh out for \d mix(es)?, coat 1 mould and set up \d moulds?\./);
    expect(today).toContain('Lay out for the pieces 0.16 m² of Mesh for each of 2 × Panel 900');
    expect(today).toContain('can be coated or set up already 8:25 to 8:35 Clean and coat 900 no. 2');
    const sheet = await textOf(await get('/today/evening'));
    expect(sheet).toMatch(/^Before Saturday: .* Sat 10 Apr, 8:00 to 12:00/);
    expect(sheet).toContain('900 no. 1: set it up for Panel 900');
    const done = { mould: '900 no. 1', casting: 'panel-900', sealed: '', step: '' };
    const after = await textAfter(await post('/today/prepared', done));
    expect(after).toContain('900 no. 1 is ready to pour. Undo');
    expect(await textOf(await screensOn(database, THURSDAY).get('/today/evening'))).not.toContain(
      '900 no. 1: set it up',
    );
  });

  test('is over on the day itself, and where nothing is to be done the sheet says so', async () => {
    const day = plannedYard({ yard: { ...plannedYard().yard, now: saturday('07:30') } });
    expect(await textOf(await (await screensOver(day)).get('/today'))).not.toContain('Before Saturday');
    const idle = plannedYard({ yard: { ...plannedYard().yard, now: THURSDAY }, orders: [] });
    expect(await textOf(await (await screensOver(idle)).get('/today/evening'))).toMatch(
      /^No session has anything to do\./,
    );
  });
});

test('nights that may bring frost are said on the sheet, where something is poured', async () => {
  const cold = await screensOver(smallYard({ temperatures: [{ from: '2027-04-01', celsius: 3 }] }));
  expect(await textOf(await cold.get('/today/sheet'))).toContain('About 3 °C is expected in the days after');
  expect(await textOf(await cold.get('/today/evening'))).toContain('frost at night');
  const mild = await screensOver(smallYard({ temperatures: [{ from: '2027-04-01', celsius: 9 }] }));
  expect(await textOf(await mild.get('/today/sheet'))).not.toContain('frost');
});
