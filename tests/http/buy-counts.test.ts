import { expect, test } from 'vitest';
import { yardSeeds } from '../support/property-seed.ts';
import { randomYard } from '../support/random-yard.ts';
import { demoScreens, screensOver, type TestScreens } from '../support/screens.ts';
import { sentAsShown } from '../support/sent-as-shown.ts';

const ONE = /^One thing to order/;

/** How many things there are to buy, as each page says it in its words or shows it in its rows. */
const countsOn = async ({ get }: TestScreens) => {
  const [first, buying] = [await (await get('/')).text(), await (await get('/buying')).text()];
  const next = /<h2>Buy next<\/h2>(.*?)<\/section>/s.exec(first)?.[1] ?? '';
  const note = /class="answer-note"[^>]*>(.*?)</s.exec(buying)?.[1] ?? '';
  const said = [...note.matchAll(/\d+/g)].reduce((sum, [count]) => sum + Number(count), ONE.test(note) ? 1 : 0);
  return {
    first: (next.match(/<li>/g) ?? []).length + Number(/with (\d+) more/.exec(next)?.[1] ?? 0),
    rows: (buying.match(/<form class="buy" method="post" action="\/buying\/bought"/g) ?? []).length,
    said,
    lists: (buying.match(/Copy list/g) ?? []).length,
    trips: (buying.match(/class="supplier trip"/g) ?? []).length,
  };
};

const agreeOn = async (screens: TestScreens): Promise<number> => {
  const { first, rows, said, lists, trips } = await countsOn(screens);
  expect({ first, said }).toEqual({ first: rows, said: rows });
  // A list to take along, be it for one thing.
  expect(lists).toBe(trips);
  return rows;
};

test('the first page and Buying count the same things to buy, also once one is bought', async () => {
  const screens = await demoScreens();
  const before = await agreeOn(screens);
  expect(before).toBeGreaterThan(1);
  const html = await (await screens.get('/buying')).text();
  const [form = ''] = /<form class="buy" method="post" action="\/buying\/bought".*?<\/form>/s.exec(html) ?? [];
  const after = await screens.textAfter(
    await screens.post('/buying/bought', sentAsShown(form.replace('"buy"', '"form"'))),
  );
  expect(after).toContain('Undo');
  expect(await agreeOn(screens)).toBe(before - 1);
});

test.each(yardSeeds(3))('so they do in random yard %i', async (seed) => {
  await agreeOn(await screensOver(randomYard(seed)));
});
