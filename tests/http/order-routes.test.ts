import { describe, expect, test } from 'vitest';
import { addFinished, finishedPieces } from '../../db/stores/finished-store.ts';
import { openOrders, orderById } from '../../db/stores/order-store.ts';
import { bumpRevision, loadYardFile } from '../../db/stores/yard-store.ts';
import { createApp } from '../../src/http/app.ts';
import { demoScreens, screensOver, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

describe('the orders', () => {
  test('stand under the day they can be handed over, a sentence each', async () => {
    const { get } = await screensOver();
    const text = await textOf(await get('/orders'));
    expect(text).toContain('One order by Sat 10 Apr, none of them late.');
    expect(text).toContain('Sat 10 Apr School garden, promised Sat 10 Apr, on the day. 27-001 · 1 × Pair of panels');
  });

  test('that cannot be made stand apart with the reason', async () => {
    const moulds = smallYard().moulds.map((mould) => ({ ...mould, condition: 'retired' as const }));
    const { get } = await screensOver(smallYard({ moulds }));
    const text = await textOf(await get('/orders'));
    expect(text).toContain("Can't be made yet School garden can't be made yet, because no usable mould makes");
  });

  test('of an empty list say what to do', async () => {
    const { get } = await screensOver(smallYard({ orders: [] }));
    expect(await textOf(await get('/orders'))).toContain('Take the first order here');
  });

  test('of the past say how each ended', async () => {
    const { get } = await demoScreens();
    const text = await textOf(await get('/orders/past'));
    expect(text).toContain('Tom Keane, handed over Sat 3 Apr');
    expect(text).toContain('Declan Roche, cancelled');
  });

  test('held show until when, and a hold that ran out lapses with a notice', async () => {
    const { database, get } = await demoScreens();
    expect(await textOf(await get('/orders'))).toContain('held until Fri 9 Apr');
    const later = createApp({ database, now: () => '2027-04-10T06:00:00Z' });
    const html = await (await later.request('/orders')).text();
    const text = await textOf(new Response(html));
    expect(text).toContain('The date held for Ann Moran');
    const [, notice = ''] = /The date held for Ann Moran[\s\S]*?name="notice" value="(\d+)"/.exec(html) ?? [];
    expect(text).not.toContain('Ann Moran, ');
    const read = await later.request('/notices/read', {
      method: 'POST',
      body: new URLSearchParams({ notice, back: '/orders' }),
    });
    expect(read.headers.get('Location')).toBe('/orders');
    expect(await textOf(await later.request('/orders'))).not.toContain('The date held for Ann Moran');
  });
});

describe('one order', () => {
  test('says when it is ready and how it comes together', async () => {
    const { get } = await screensOver();
    const text = await textOf(await get('/orders/27-001'));
    expect(text).toMatch(/^School garden: ready Sat 10 Apr, on the day\. By today's plan\./);
    expect(text).toContain('Sat 10 Apr: pour 2 × Panel 900.');
    expect(text).toContain("By today's plan your order 27-001 will be ready by Sat 10 Apr, the day we said.");
  });

  test('that is not there is not found', async () => {
    const { get, post } = await screensOver();
    expect((await get('/orders/27-999')).status).toBe(404);
    expect((await post('/orders/27-999/cancel', {})).status).toBe(404);
    expect((await post('/orders/27-001/burn', {})).status).toBe(404);
    expect((await post('/orders/27-001/constructor', {})).status).toBe(404);
  });

  test('is promised a date', async () => {
    const { post, textAfter, database } = await screensOver();
    const text = await textAfter(await post('/orders/27-001/promise', { promisedOn: '2027-04-24' }));
    expect(text).toContain('Date promised to School garden.');
    expect(text).toContain('ready Sat 10 Apr, 14 days to spare.');
    expect(await database.read((tx) => orderById(tx, '27-001'))).toMatchObject({
      promisedOn: '2027-04-24',
      heldUntil: null,
    });
  });

  test('is held and then promised for good', async () => {
    const { post, textAfter, database } = await screensOver();
    const held = await textAfter(
      await post('/orders/27-001/hold', { promisedOn: '2027-04-24', heldUntil: '2027-04-13' }),
    );
    expect(held).toContain('Held Sat 24 Apr, until the end of Tue 13 Apr');
    await post('/orders/27-001/promise', { promisedOn: '2027-04-24' });
    expect((await database.read((tx) => orderById(tx, '27-001')))?.heldUntil).toBeNull();
  });

  test.each([
    ['promise', { promisedOn: '' }, 'Give the date that is promised.'],
    ['promise', { promisedOn: '2029-04-01' }, 'That is further off than is planned.'],
    ['promise', { promisedOn: '31 Apr' }, '31 Apr does not exist.'],
    ['hold', { promisedOn: '2027-04-24', heldUntil: '' }, 'Say until which day it is held.'],
    ['hold', { promisedOn: '', heldUntil: '2027-04-13' }, 'Say which date is held.'],
    ['hold', { promisedOn: '2027-04-24', heldUntil: '2027-04-01' }, 'That day has passed.'],
  ])('%s with %j is refused in words', async (action, typed, message) => {
    const { post, database } = await screensOver();
    const answer = await post(`/orders/27-001/${action}`, typed);
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain(message);
    expect((await database.read((tx) => orderById(tx, '27-001')))?.promisedOn).toBe('2027-04-10');
  });

  test.each([
    ['promise', 'Promise anyway'],
    ['hold', 'Hold it anyway'],
  ])('is asked about a day that has passed before it is saved: %s', async (action, anyway) => {
    const { post, database } = await screensOver();
    const days = { promisedOn: '7 Apr', heldUntil: '2027-04-13' };
    const answer = await post(`/orders/27-001/${action}`, days);
    const html = await answer.clone().text();
    expect(await textOf(answer)).toContain('Wed 7 Apr was yesterday.');
    expect(html).toContain(`formaction="/orders/27-001/${action}"`);
    expect(html).toContain(anyway);
    const promisedOn = async () => (await database.read((tx) => orderById(tx, '27-001')))?.promisedOn;
    expect(await promisedOn()).toBe('2027-04-10');
    const seen = /name="seen" value="([^"]+)"/.exec(html)?.[1] ?? '';
    expect((await post(`/orders/27-001/${action}`, { ...days, seen })).status).toBe(303);
    expect(await promisedOn()).toBe('2027-04-07');
  });

  test('is cancelled, and that is undone', async () => {
    const { post, textAfter, database } = await screensOver();
    const answer = await post('/orders/27-001/cancel', {});
    const change = new URL(answer.headers.get('Location') ?? '', 'http://x').searchParams.get('done') ?? '';
    expect(await textAfter(answer)).toContain('Order 27-001 cancelled (School garden).');
    expect(await database.read((tx) => openOrders(tx))).toHaveLength(0);
    await post('/undo', { change, back: '/orders/27-001' });
    expect(await database.read((tx) => openOrders(tx))).toHaveLength(1);
  });

  test('that was cancelled is taken up again from its page, under its number', async () => {
    const { get, post, textAfter, database } = await screensOver();
    await post('/orders/27-001/cancel', {});
    const html = await (await get('/orders/27-001')).text();
    expect(html).toContain('action="/orders/27-001/take-up"');
    expect(html).toContain('value="Sat 10 Apr 2027"');
    const asked = await post('/orders/27-001/take-up', { promisedOn: 'tomorrow' });
    expect(await textOf(asked)).toContain(
      "Fri 9 Apr can't be kept: by today's plan it is ready Sat 10 Apr, 1 day late.",
    );
    const text = await textAfter(await post('/orders/27-001/take-up', { promisedOn: '2027-04-10' }));
    expect(text).toContain('Order 27-001 taken up again (School garden).');
    expect(text).toContain('School garden: ready Sat 10 Apr, on the day.');
    expect(await database.read((tx) => openOrders(tx))).toMatchObject([{ id: '27-001', promisedOn: '2027-04-10' }]);
    expect(await (await get('/orders/27-001')).text()).not.toContain('take-up');
  });

  test('that no session is long enough to pack can be split on its page', async () => {
    const kits = smallYard().kits.map((kit) => ({ ...kit, packMinutes: 120 }));
    const orders = [{ id: '27-001', customer: 'School garden', lines: [{ kit: 'pair', quantity: 3 }] }];
    const { get, post, textAfter } = await screensOver(smallYard({ kits, orders }));
    const text = await textOf(await get('/orders/27-001'));
    expect(text).toContain('School garden: ready');
    expect(text).toContain('Split it into two');
    const after = await textAfter(await post('/orders/27-001/split', {}));
    expect(after).toContain('Order 27-001 split: the rest is 27-002.');
    expect(after).toContain('School garden: ready');
    expect(after).not.toContain('Split it');
  });

  test('is not cancelled twice', async () => {
    const { post } = await screensOver();
    await post('/orders/27-001/cancel', {});
    const again = await post('/orders/27-001/cancel', {});
    expect(again.status).toBe(422);
    expect(await textOf(again)).toMatch(
      /^Nothing was changed\. Order 27-001 was cancelled\. School garden: cancelled\./,
    );
  });
});

describe('handing over', () => {
  const withPieces = async (count: number) => {
    const screens = await screensOver();
    await screens.database.write(async (tx) => {
      await addFinished(tx, { casting: 'panel-900', count, readyAt: null, order: null });
      await bumpRevision(tx);
    });
    return screens;
  };

  test('is refused with the shortfall while pieces are missing', async () => {
    const { post, database } = await withPieces(1);
    const answer = await post('/orders/27-001/hand-over', {});
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('these are not in the yard yet: 1 × Panel 900. Nothing was handed over.');
    expect((await database.read((tx) => finishedPieces(tx)))[0]?.count).toBe(1);
  });

  test('takes the pieces and what was cut out of stock', async () => {
    const { post, textAfter, database } = await withPieces(3);
    const text = await textAfter(await post('/orders/27-001/hand-over', {}));
    expect(text).toContain('School garden: handed over Thu 8 Apr.');
    expect((await database.read((tx) => finishedPieces(tx)))[0]?.count).toBe(1);
    // Two pins of 300 mm with a kerf of 3 each, out of one of three sticks of 3000.
    const { materials } = await database.read((tx) => loadYardFile(tx, '2027-04-08T12:00:00Z'));
    const rod = materials.find(({ id }) => id === 'rod');
    expect([rod?.onHand, rod?.offcuts]).toEqual([2, [{ lengthMm: 2394, count: 1 }]]);
  });

  test('goes ahead when the maker has counted', async () => {
    const { post, database } = await withPieces(1);
    expect((await post('/orders/27-001/hand-over', { evenShort: 'yes' })).status).toBe(303);
    expect(await database.read((tx) => finishedPieces(tx))).toHaveLength(0);
    expect((await database.read((tx) => orderById(tx, '27-001')))?.status).toBe('handed over');
  });
});

/*
 * Four kits are eight panels, promised for Saturday 17 April. Saturdays to 11:30 have time for two or three panels each,
 * and what is promised for the 17th needs a day of work more before then.
 */
describe('the page of a late order', () => {
  const lateYard = smallYard({
    work: [{ rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '08:00', end: '11:30' }],
    orders: [
      { id: '27-001', customer: 'School garden', due: '2027-04-17', lines: [{ kit: 'pair', quantity: 4 }] },
      { id: '27-002', customer: 'Pat Dunne', due: '2027-06-05', lines: [{ kit: 'pair', quantity: 1 }] },
    ],
  });
  const sentence = /One more session on Fri 9 Apr, 8:00 to 11:30: \w{3} \d+ \w{3}, \d+ days sooner\./;

  test('leads to what holds it, and says it in sentences when asked', async () => {
    const { get } = await screensOver(lateYard);
    const html = await (await get('/orders/27-001')).text();
    expect(html).toContain('href="/orders/27-001?holds=yes"');
    expect(html).toContain('data-hx-get="/orders/27-001/limits"');
    expect(await textOf(await get('/orders/27-001?holds=yes'))).toMatch(sentence);
    expect(await textOf(await get('/orders/27-001/limits', { 'HX-Request-Type': 'partial' }))).toMatch(sentence);
  });

  test('is the only one that does: an order in time is held by nothing', async () => {
    const { get } = await screensOver(lateYard);
    expect(await textOf(await get('/orders/27-002'))).not.toContain('Held up by');
    expect((await get('/orders/27-099/limits')).status).toBe(404);
  });
});
