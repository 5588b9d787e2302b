import { describe, expect, test } from 'vitest';
import { setHabits } from '../../db/stores/habits-store.ts';
import { demoScreens, screensOver, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

describe('Turns', () => {
  test('says how many turns there are and draws each as a box that leads to its line in the table', async () => {
    const { get } = await screensOver();
    const answer = await get('/turns');
    const html = await answer.clone().text();
    expect(await textOf(answer)).toMatch(/^2 turns in 2 moulds, Sat 10 Apr\./);
    const boxes = [...html.matchAll(/<a href="#(turn-[^"]+)"><title>([^<]+)</g)];
    expect(boxes.map(([, , label]) => label)).toEqual([
      expect.stringMatching(
        /^School garden: Panel 900 in 900 no\. 1, poured Sat 10 Apr, \d+:\d\d, stripped Sat 10 Apr, \d+:\d\d$/,
      ),
      expect.stringMatching(/^School garden: Panel 900 in 900 no\. 2, poured Sat 10 Apr/),
    ]);
    for (const [, id] of boxes) expect(html).toContain(`<tr id="${id}">`);
  });

  test('has a heading over the sessions of each week, which begins on the day the yard says', async () => {
    const { get, database } = await demoScreens();
    const weeks = async () => [
      ...(await (await get('/turns?from=3')).text()).matchAll(/class="week-name"[^>]*>([^<]+)/g),
    ];
    expect((await weeks()).map(([, text]) => text)).toEqual(['This week', 'Week of Mon 12 Apr']);
    await database.write((tx) => setHabits(tx, { currency: 'USD', weekStart: 'SU' }));
    expect((await weeks()).map(([, text]) => text)).toEqual(['This week', 'Week of Sun 11 Apr']);
  });

  test('marks a mould out of use with a word, in the chart and in the table', async () => {
    const { get } = await screensOver(
      smallYard({
        moulds: smallYard().moulds.map((mould, index) =>
          index === 1 ? { ...mould, condition: 'damaged', repairedOn: '2027-05-01' } : mould,
        ),
      }),
    );
    const text = await textOf(await get('/turns'));
    expect(text).toContain('900 no. 2 is out of use until Sat 1 May.');
    expect(text).toContain('900 no. 2 Out of use until Sat 1 May');
    expect(text.match(/out of use until Sat 1 May/gi)).toHaveLength(3);
  });

  test('with nothing to pour says so', async () => {
    const { get } = await screensOver(smallYard({ orders: [] }));
    expect(await textOf(await get('/turns'))).toMatch(/^No mould has anything to do\./);
  });

  test('goes on to later sessions and back, and never past the last', async () => {
    const { get } = await demoScreens();
    const first = await (await get('/turns')).text();
    const [, after] = /href="(\/turns\?from=\d+)"/.exec(first) ?? [];
    const second = await (await get(after ?? '')).text();
    expect(second).toContain('href="/turns"');
    expect(second).toContain('Sessions before');
    for (const from of ['9999', 'x', '-1']) expect((await get(`/turns?from=${from}`)).status).toBe(200);
    expect(await (await get('/turns?from=9999')).text()).not.toContain('Sessions after');
  });
});
