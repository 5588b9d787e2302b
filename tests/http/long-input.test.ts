import { expect, test } from 'vitest';
import { plannedYard, saturday } from '../support/planned-yard.ts';
import { screensOver } from '../support/screens.ts';

const LONG = 'so long that nobody reads it '.repeat(100);

/** What a page says, without what stands in its fields. */
const saidOn = (html: string): string =>
  html
    .replaceAll(/<(input|textarea)\b[^>]*>([\s\S]*?<\/textarea>)?/g, ' ')
    .replaceAll(/<option[\s\S]*?<\/option>/g, ' ');

test.each([
  [
    '/today/poured',
    { mould0: '900 no. 1', filled0: 'yes', casting0: 'panel-900', when: 'typed', time: LONG, on: LONG, bags: LONG },
  ],
  ['/today/stripped', { mould: LONG, cameOut: 'good' }],
  ['/today/packed', { order: LONG }],
  ['/today/mixing', { mould: LONG, at: LONG }],
  ['/buying/bought', { material: 'mortar', line: 'else', quantity: LONG, on: LONG, price: LONG }],
  ['/orders', { what0: LONG, quantity0: LONG, wantedOn: LONG, promisedOn: LONG }],
  ['/yard/about', { name: LONG, horizonDays: LONG, mixers: LONG }],
])('what is typed into %s is not said back whole', async (path, form) => {
  const { post } = await screensOver(plannedYard({ yard: { ...plannedYard().yard, now: saturday('09:00') } }));
  const answer = await post(path, form);
  expect(answer.status).toBe(422);
  expect(saidOn(await answer.text())).not.toContain(LONG.slice(0, 80));
});

test('a long name makes no page of a notice', async () => {
  const yard = plannedYard();
  const { post, get } = await screensOver({
    ...yard,
    orders: yard.orders.map((one) => ({ ...one, customer: LONG.trim() })),
  });
  const taken = await post(`/orders/${yard.orders[0]!.id}/cancel`, {});
  const html = await (await get(taken.headers.get('Location') ?? '')).text();
  const [, words = ''] = /<p class="notice-words">([^<]*)</.exec(html) ?? [];
  expect(words).toMatch(/^Order \S+ cancelled \(so long/);
  expect(words.length).toBeLessThan(310);
});

test('a mould that is not named is asked for', async () => {
  const { post } = await screensOver();
  const html = await (await post('/today/stripped', { mould: '', cameOut: 'good' })).text();
  expect(html).toContain('Which mould? None was named.');
});
