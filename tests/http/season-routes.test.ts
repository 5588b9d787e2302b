import { expect, test } from 'vitest';
import { updateOrder } from '../../db/stores/order-store.ts';
import { addWorkRecords } from '../../db/stores/work-record-store.ts';
import { putSeason } from '../support/made-season.ts';
import { stripsBefore } from '../support/records.ts';
import { demoScreens, screensOn, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';
import { yardContext } from '../support/yard-context.ts';

test('a yard without a record is told what is missing, and how it comes to be there', async () => {
  const { get } = await demoScreens();
  const text = await textOf(await get('/season'));
  expect(text).toMatch(/^2027 so far: 1 order handed over and 1 of 1 date kept\./);
  for (const said of [
    'No piece that came out of its mould is on record',
    'Nothing was measured',
    'The stock book has nothing',
  ])
    expect(text).toContain(said);
  expect(text).toContain('Nothing on record moved the day of an order with a date');
});

test('a season stands there beside the one before, on the page and as a table', async () => {
  const context = await yardContext(smallYard());
  await context.database.write(async (tx) => {
    await putSeason(tx, '2027-04-03', 12);
    await putSeason(tx, '2026-04-04', 4);
  });
  const { get } = screensOn(context.database, context.now);
  const page = await get('/season');
  const html = await page.clone().text();
  const text = await textOf(page);
  // 12 Saturdays of two pieces, each fourth with one scrap.
  expect(text).toMatch(/^2027 so far: 24 pieces made, 3 orders handed over and 2 of 3 dates kept\./);
  expect(text).toContain('21 good, 3 scrap.');
  expect(text).toContain('Scrapped, and why: 3 × corner off.');
  expect(text).toContain(
    '3 × Pair of panels. No price is on record for them. 2 of 3 dates given were kept; the other was 7 days late.',
  );
  expect(text).toContain('A date counts as it was given last. As it was given first: 2 of 3 kept.');
  expect(text).toContain('Strip: Panel 900 8 10 24');
  // A bag for two pieces, by the recipe 13.6 / 27.5 of one each; half a bag in 24 pieces was missing.
  expect(text).toContain('Fast-setting mortar 0.49 bags half a bag 0.52 bags –');
  expect(text).toContain('900 no. 1 earned its place best: 12 good pieces.');
  expect(text).toContain('29 Mar 2 2');
  expect(html.match(/class="season-now"/g)!.length).toBeGreaterThan(12);

  const csv = await (await get('/season.csv?year=2027')).text();
  expect(csv).toContain('2027,scrap,corner off,pieces,3,');
  expect(csv).toContain('2027,promises,,late,7,days');
  expect(csv).toContain('2027,promises,,kept as given first,2,');
  const before = await textOf(await get('/season?year=2026'));
  expect(before).toMatch(/^2026: 8 pieces made, 3 orders handed over/);
  // What is recorded since is in it at once, and a date that was moved counts as it was given first.
  await context.database.write(async (tx) => {
    await addWorkRecords(
      tx,
      stripsBefore('2027-04-05', { mould: '900 no. 1', casting: 'panel-900', every: 9, days: 1 }),
    );
    await updateOrder(tx, '27-102', { promisedOn: '2027-04-10' });
    await updateOrder(tx, '27-101', { firstPromisedOn: null });
  });
  const since = await textOf(await get('/season'));
  expect(since).toMatch(/^2027 so far: 26 pieces made, 3 orders handed over and 3 of 3 dates kept\./);
  expect(since).toContain('As it was given first: 1 of 2 kept; of 1 order the first date is not on record.');
});
