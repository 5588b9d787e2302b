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
    expect(sheet).toMatch(/8:20 Mix Thin panel mix: .* Under way until 8:40/);
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
