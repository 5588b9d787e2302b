import { describe, expect, test } from 'vitest';
import { setHabits } from '../../db/stores/habits-store.ts';
import { updateOrder } from '../../db/stores/order-store.ts';
import { bumpRevision } from '../../db/stores/yard-store.ts';
import { demoScreens, screensOver, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

const partial = { 'HX-Request-Type': 'partial', 'HX-Target': 'div#found' };

/** Four orders that differ in everything that can be looked for. Saturdays only: 10 April 2027 is the first. */
const fourOrders = async () => {
  const line = (quantity: number) => [{ casting: 'panel-900', quantity }];
  const screens = await screensOver(
    smallYard({
      orders: [
        { id: '27-001', customer: 'School garden', due: '2027-04-10', lines: [{ kit: 'pair', quantity: 1 }] },
        { id: '27-002', customer: 'Ann Móran', due: '2027-04-10', lines: line(30) },
        { id: '27-003', customer: 'Pat Dunne', due: '2027-07-31', lines: line(1) },
        { id: '27-004', lines: line(1) },
      ],
    }),
  );
  await screens.database.write(async (tx) => {
    await updateOrder(tx, '27-003', { heldUntil: '2027-04-12' });
    await bumpRevision(tx);
  });
  return screens;
};
const numbers = (html: string) =>
  [...new Set([...html.matchAll(/href="\/orders\/(\d\d-\d+)"/g)].map(([, id]) => id))].sort();

describe('looking for an order', () => {
  test.each([
    ['find=garden', ['27-001']],
    ['find=MORAN', ['27-002']],
    ['find=27-003', ['27-003']],
    ['find=pair+school', ['27-001']],
    ['find=pair+ann', []],
    ['which=late', ['27-002']],
    ['which=held', ['27-003']],
    ['which=promised', ['27-001', '27-002']],
    ['which=no+date', ['27-004']],
    ['which=wanted', []],
    ['find=panel&which=late', ['27-002']],
    ['which=nonsense', ['27-001', '27-002', '27-003', '27-004']],
  ])('?%s finds %j', async (query, ids) => {
    const { get } = await fourOrders();
    const answer = await get(`/orders?${query}`);
    expect(answer.status).toBe(200);
    expect(numbers(await answer.text())).toEqual(ids);
  });

  test('says what was looked for, how to get all back, and where else to look', async () => {
    const { get } = await fourOrders();
    const answer = await get('/orders?find=ann&which=held');
    const html = await answer.clone().text();
    expect(await textOf(answer)).toMatch(
      /^No order found\. Looked for “ann”, only those whose date is held\. Show all orders · Look among past orders/,
    );
    expect(html).toContain('href="/orders/past?find=ann"');
    expect(html).toContain('value="ann"');
    expect(html).toContain('<option value="held" selected');
    expect(await textOf(await get('/orders?find=panel'))).toMatch(/^Four of four orders found\./);
  });

  test('answers with the first line and what was found alone, as it is typed', async () => {
    const { get } = await fourOrders();
    const html = await (await get('/orders?find=garden', partial)).text();
    expect(html).toMatch(/^<div id="find-answer" aria-live="polite" data-hx-swap-oob="true">/);
    expect(numbers(html)).toEqual(['27-001']);
    expect(html).not.toContain('<form');
  });

  test('"this week" is the week of the yard', async () => {
    const { get, database } = await fourOrders();
    // Thursday 8 April; the first orders are ready on Saturday the 10th. In a week from Saturday on that is the next one.
    expect(numbers(await (await get('/orders?which=this+week')).text())).toContain('27-001');
    await database.write((tx) => setHabits(tx, { currency: 'EUR', weekStart: 'SA' }));
    expect(numbers(await (await get('/orders?which=this+week')).text())).toEqual([]);
  });

  test('goes on among past orders, by how they ended', async () => {
    const { get } = await demoScreens();
    const all = numbers(await (await get('/orders/past')).text());
    expect(all.length).toBeGreaterThan(1);
    const first = await textOf(await get('/orders/past?which=handed+over'));
    expect(first).toMatch(/^(\w+|\d+) of \w+ past orders found\. Looked for only those that were handed over\./);
    expect(numbers(await (await get(`/orders/past?find=${all[0]}`)).text())).toEqual([all[0]]);
    expect(await textOf(await get('/orders/past?find=zebra'))).toMatch(
      /^No past order found\. Looked for “zebra”\. Show all past orders/,
    );
  });

  test('has no field where there is nothing to look for', async () => {
    const { get } = await screensOver(smallYard({ orders: [] }));
    const text = await textOf(await get('/orders'));
    expect(text).toContain('Take the first order here');
    expect(text).not.toContain('Find an order');
    expect(await textOf(await get('/orders/past'))).toContain('An order stands here once it is handed over');
  });
});

describe('looking for a mould', () => {
  const moulds = (html: string) =>
    [...html.matchAll(/<a href="\/mould\/[^"]+">All about ([^<]+)<\/a>/g)].map(([, id]) => id);

  test.each([
    ['find=450', ['450 no. 1', '450 no. 2']],
    ['find=600+no.+2', ['600 no. 2']],
    ['find=stop+board', ['1200 no. 3']],
    ['which=damaged', ['900 no. 2']],
    ['find=1200&which=clean', ['1200 no. 2', '1200 no. 3']],
    ['which=scrapped', []],
  ])('?%s finds %j', async (query, ids) => {
    const { get } = await demoScreens();
    expect(moulds(await (await get(`/moulds?${query}`)).text())).toEqual(ids);
  });

  test('is still looked for after one is marked, and after a mark that is refused', async () => {
    const { get, post, textAfter } = await demoScreens();
    const html = await (await get('/moulds?find=450')).text();
    expect(html).toContain('action="/moulds/450%20no.%201/damaged?find=450"');
    const answer = await post('/moulds/450%20no.%201/damaged?find=450', { note: 'Split' });
    expect(answer.headers.get('Location')).toMatch(/^\/moulds\?find=450&done=\d+$/);
    expect(await textAfter(answer)).toContain('Two of 12 moulds found. Looked for “450”. Show all moulds');
    const refused = await post('/moulds/450%20no.%202/damaged?find=450', { repairedOn: '31 Apr' });
    expect(refused.status).toBe(422);
    const text = await refused.text();
    expect(moulds(text)).toEqual(['450 no. 1', '450 no. 2']);
    expect(text).toContain('31 Apr does not exist.');
    expect(text).toContain('value="31 Apr"');
  });

  test('finds nothing in words', async () => {
    const { get } = await demoScreens();
    expect(await textOf(await get('/moulds?find=3000'))).toMatch(
      /^No mould found\. Looked for “3000”\. Show all moulds/,
    );
    const html = await (await get('/moulds?find=900&which=damaged', partial)).text();
    expect(moulds(html)).toEqual(['900 no. 2']);
    expect(html).not.toContain('class="find');
  });
});
