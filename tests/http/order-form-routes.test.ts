import { describe, expect, test } from 'vitest';
import { openOrders, updateOrder } from '../../db/stores/order-store.ts';
import { screensOver, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

const ROD = { id: 'rod', name: 'Rod 12 mm', unit: 'stick', onHand: 3, stickMm: 3000, leadDays: 3, kerfMm: 3 };
const filled = { what0: 'kit:pair', quantity0: '2', customer: 'Ann Moran', phone: '020 910 0136', slip: 'not' };

describe('taking an order', () => {
  test('leads to its page with its number and its date by today’s plan', async () => {
    const { post, textAfter, database } = await screensOver();
    const text = await textAfter(await post('/orders', { ...filled, wantedOn: '2027-05-08', note: 'Gate code 4' }));
    expect(text).toContain('Order 27-002 for Ann Moran taken.');
    expect(text).toMatch(/Ann Moran: ready Sat (17|24) Apr, \d+ days to spare\./);
    const [, taken] = await database.read((tx) => openOrders(tx));
    expect(taken).toMatchObject({
      id: '27-002',
      wantedOn: '2027-05-08',
      promisedOn: null,
      note: 'Gate code 4',
      weight: 6,
    });
    expect(taken?.lines).toEqual([{ kit: 'pair', quantity: 2 }]);
  });

  test('with nothing but a piece and a number is enough', async () => {
    const { post, textAfter } = await screensOver();
    const text = await textAfter(await post('/orders', { what0: 'casting:panel-900', quantity0: '1' }));
    expect(text).toContain('Order 27-002: ready');
  });

  test('says what has to be ordered today for its date, until it is ordered or the order is taken back', async () => {
    const mortar = { id: 'mortar', name: 'Fast-setting mortar', unit: 'bag', onHand: 0, leadDays: 2 };
    const { post, get, textAfter } = await screensOver(smallYard({ materials: [mortar, ROD], orders: [] }));
    const taken = await post('/orders', { what0: 'casting:panel-900', quantity0: '1' });
    const path = taken.headers.get('Location')!;
    expect(await textOf(await get(path))).toContain(
      'To be ordered today, or the days shift: 1 bag Fast-setting mortar.',
    );
    const buying = await (await get('/buying')).text();
    const line = /name="line" value="([^"]+)"/.exec(buying)![1]!;
    await post('/buying/bought', {
      line,
      material: 'mortar',
      quantity: '1',
      quantityWas: '1',
      on: '2027-04-10',
      price: '',
    });
    expect(await textOf(await get(path))).not.toContain('To be ordered today');
    const two = await post('/orders', { what0: 'casting:panel-900', quantity0: '2' });
    const again = two.headers.get('Location')!;
    expect(await textOf(await get(again))).toContain('To be ordered today');
    const change = /done=(\d+)/.exec(again)![1]!;
    const text = await textAfter(await post('/undo', { change, back: '/orders' }));
    expect(text).toContain('Undone: Order 27-002 taken');
    expect(text).not.toContain('To be ordered today');
  });

  test('reads a part by weight or length with a comma', async () => {
    const { post, database } = await screensOver();
    await post('/orders', { what0: 'material:mortar', quantity0: '1,5' });
    const [, taken] = await database.read((tx) => openOrders(tx));
    expect(taken?.lines).toEqual([{ material: 'mortar', quantity: 1.5 }]);
  });

  test.each([
    ['8 May', '2027-05-08'],
    ['8.5.', '2027-05-08'],
    ['next Saturday', '2027-04-10'],
    ['5/6', '2027-06-05'],
  ])('wanted on %j is wanted on %s', async (wantedOn, date) => {
    const { post, textAfter, database } = await screensOver();
    const text = await textAfter(await post('/orders', { ...filled, wantedOn }));
    expect((await database.read((tx) => openOrders(tx)))[1]?.wantedOn).toBe(date);
    if (wantedOn === '5/6') expect(text).toContain('5/6 was read as Sat 5 Jun 2027, with the day first.');
    else expect(text).not.toContain('was read as');
  });

  test.each([
    [{ what0: '', quantity0: '' }, 'Choose what is ordered, and how many.'],
    [{ what0: '', quantity0: '3' }, 'Choose what the 3 is for, or empty it.'],
    [{ quantity0: '' }, 'How many? Write a number.'],
    [{ quantity0: 'two' }, 'is no number. Write it like 12 or 2.5.'],
    [{ quantity0: '0' }, 'Has to be more than 0.'],
    [{ quantity0: '1.5' }, 'Has to be a whole number.'],
    [{ quantity0: '5000' }, '200 is the most one line can ask for.'],
    [{ what0: 'kit:gone' }, 'That is no longer made here.'],
    [{ what0: 'kit' }, 'Choose one from the list.'],
    [{ wantedOn: '2027-02-29' }, '29 Feb 2027 does not exist. Write a day like 8 May'],
    [{ wantedOn: '31 Apr' }, '31 Apr does not exist.'],
    [{ wantedOn: 'Sun 8 May' }, '8 May 2027 is a Saturday, not a Sunday.'],
    [{ wantedOn: 'soon' }, 'is no day. Write a day like 8 May'],
    [{ promisedOn: '8 May 2031' }, 'That is further off than is planned. The last day is Fri 7 Apr 2028.'],
    [{ promisedOn: '8 May 2207' }, 'Is the year 2207 right?'],
    [{ heldUntil: '2027-04-12' }, 'Say which date is held.'],
    [{ promisedOn: '2027-05-08', heldUntil: '2027-04-01' }, 'That day has passed.'],
    [{ slip: 'perhaps' }, 'Choose one of the three.'],
  ])('%j is shown again with what is wrong and all that was typed', async (typed, message) => {
    const { post, database } = await screensOver();
    const answer = await post('/orders', { ...filled, note: 'Kept & <safe>', ...typed });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain(message);
    expect(html).toContain('Everything you typed is still here.');
    expect(html).toContain('value="Ann Moran"');
    expect(html).toContain('Kept &amp; &lt;safe&gt;');
    expect(await database.read((tx) => openOrders(tx))).toHaveLength(1);
  });

  test('says everything that is wrong at once', async () => {
    const { post } = await screensOver();
    const typed = { what0: 'kit:pair', quantity0: 'x', promisedOn: '2031-01-01', wantedOn: '2027-13-01' };
    const html = await (await post('/orders', typed)).text();
    for (const message of ['is no number.', 'That is further off than is planned.', 'There is no month 13.'])
      expect(html).toContain(message);
  });

  test('gives more lines without losing what was typed', async () => {
    const { post } = await screensOver();
    const answer = await post('/orders', { ...filled, more: '4' });
    const html = await answer.text();
    expect(answer.status).toBe(200);
    expect(html).toContain('name="quantity3"');
    expect(html).toContain('value="Ann Moran"');
  });

  test('from the first page fills in the date to promise', async () => {
    const { get } = await screensOver();
    const html = await (await get('/orders/new?what=kit:pair&number=1')).text();
    expect(html).toContain('value="Sat 17 Apr 2027"');
    expect(html).not.toContain('value="Tue 13 Apr 2027"');
  });

  test('from the first page to hold a date fills in the date and until when', async () => {
    const { get } = await screensOver();
    const html = await (await get('/orders/new?what=kit:pair&number=1&hold=5')).text();
    expect(html).toContain('value="Sat 17 Apr 2027"');
    expect(html).toContain('value="Tue 13 Apr 2027"');
  });

  test('says while it is typed when it could be ready', async () => {
    const { post } = await screensOver();
    const partial = { 'HX-Request-Type': 'partial' };
    expect(await textOf(await post('/orders/ready', { what0: 'kit:pair', quantity0: '1' }, partial))).toContain(
      'Ready Sat 17 Apr',
    );
    expect(await textOf(await post('/orders/ready', { what0: '' }, partial))).toContain('Choose what is ordered');
  });

  // Three pairs are more than one Saturday's work: another day than one pair. What somebody typed stays.
  test('has the day to promise go along with that, as long as it is the one that was filled in', async () => {
    const { get, post } = await screensOver();
    const html = await (await get('/orders/new?what=kit:pair&number=1')).text();
    expect(html).toContain('<input type="hidden" name="filledIn" value="Sat 17 Apr 2027"/>');
    const asked = { what0: 'kit:pair', quantity0: '3', promisedOn: 'Sat 17 Apr 2027', filledIn: 'Sat 17 Apr 2027' };
    const ready = async (typed: Record<string, string>) =>
      (await post('/orders/ready', { ...asked, ...typed }, { 'HX-Request-Type': 'partial' })).text();
    const moved = await ready({});
    const [, day] = /Ready (\w+ \d+ \w+)/.exec(moved.replace(/<[^>]*>/g, '')) ?? [];
    expect(day).not.toBe('Sat 17 Apr');
    expect(moved).toContain('id="promised" class="says-when" data-hx-swap-oob="true"');
    expect(moved).toContain(`name="filledIn" value="${day} 2027"`);
    expect(moved).toContain(`value="${day} 2027" autocomplete`);
    const stays: Record<string, string>[] = [{ promisedOn: '8 May' }, { promisedOn: '' }, { filledIn: '' }];
    for (const typed of [...stays, { quantity0: '1' }]) expect(await ready(typed)).not.toContain('data-hx-swap-oob');
  });

  test('says so with the day before which nothing may be poured for it', async () => {
    const { post } = await screensOver();
    const ready = async (notBefore: string) =>
      textOf(
        await post('/orders/ready', { what0: 'kit:pair', quantity0: '1', notBefore }, { 'HX-Request-Type': 'partial' }),
      );
    expect(await ready('Sat 1 May 2027')).toMatch(/Ready (Sat [18]|Sat 8) May/);
    expect(await ready('no day')).toContain('Ready Sat 17 Apr');
  });
});

describe('a date that is asked about first', () => {
  const seenIn = (html: string): string => /name="seen" value="([^"]+)"/.exec(html)?.[1] ?? '';
  const insteadIn = (html: string): string => /name="another-day" value="([^"]+)"/.exec(html)?.[1] ?? '';
  const tooSoon = { ...filled, quantity0: '4', promisedOn: '2027-04-10', note: 'Gate code 4' };

  test('is not kept: the form comes back with the effect, all that was typed, and two ways on', async () => {
    const { post, textAfter, database } = await screensOver();
    const answer = await post('/orders', tooSoon);
    expect(answer.status).toBe(200);
    const html = await answer.clone().text();
    expect(await textOf(answer)).toMatch(
      /^Sat 10 Apr can't be kept: by today's plan it is ready Sat \d+ (Apr|May), \d+ days late\. Nothing has been saved yet\./,
    );
    expect(html).toContain('Gate code 4');
    expect(html).toContain('value="2027-04-10"');
    expect(await database.read((tx) => openOrders(tx))).toHaveLength(1);
    expect(await textAfter(await post('/orders', { ...tooSoon, seen: seenIn(html) }))).toContain('taken.');
    expect((await database.read((tx) => openOrders(tx)))[1]?.promisedOn).toBe('2027-04-10');
  });

  test('gives way to the date that could be given instead', async () => {
    const { post, textAfter, database } = await screensOver();
    const instead = insteadIn(await (await post('/orders', tooSoon)).text());
    expect(instead).toMatch(/^promisedOn 2027-0\d-\d\d$/);
    expect(await textAfter(await post('/orders', { ...tooSoon, 'another-day': instead }))).toMatch(
      /on the day|to spare/,
    );
    expect((await database.read((tx) => openOrders(tx)))[1]?.promisedOn).toBe(instead.slice(-10));
  });

  test('was yesterday: next year is offered where none was typed', async () => {
    const { post } = await screensOver();
    const text = await textOf(await post('/orders', { ...filled, promisedOn: '7 Apr' }));
    expect(text).toMatch(/^Wed 7 Apr was yesterday\. By today's plan it is ready Sat 17 Apr, 10 days late\./);
    expect(text).toContain('Fri 7 Apr 2028 is meant');
    const answer = await post('/orders', { ...filled, promisedOn: '7 Apr', 'another-day': 'promisedOn 2028-04-07' });
    expect(answer.status).toBe(303);
    expect(await textOf(await post('/orders', { ...filled, promisedOn: '2027-04-07' }))).not.toContain('is meant');
  });

  test('is wanted, and has passed: it is asked about as well', async () => {
    const { post } = await screensOver();
    const text = await textOf(await post('/orders', { ...filled, wantedOn: '1 Apr' }));
    expect(text).toMatch(
      /^Thu 1 Apr, the day wanted, has passed\. Nothing has been saved yet\. Sat 1 Apr 2028 is meant/,
    );
  });

  test('an answer names a field of the form, or is none', async () => {
    const { post, database } = await screensOver();
    await post('/orders', { ...filled, 'another-day': 'id 2027-05-08' });
    await post('/orders', { ...filled, 'another-day': 'promisedOn soon' });
    expect(await database.read((tx) => openOrders(tx))).toHaveLength(3);
  });
});

describe('changing an order', () => {
  test('starts from how it stands and keeps its number', async () => {
    const { get, post, textAfter, database } = await screensOver();
    const html = await (await get('/orders/27-001/edit')).text();
    expect(html).toContain('value="School garden"');
    expect(html).toContain('value="Sat 10 Apr 2027"');
    const text = await textAfter(
      await post('/orders/27-001/edit', { ...filled, customer: 'School garden', quantity0: '1' }),
    );
    expect(text).toContain('Order 27-001 changed.');
    const [order] = await database.read((tx) => openOrders(tx));
    expect(order).toMatchObject({ id: '27-001', promisedOn: null, weight: 6 });
  });

  test('refuses what taking one refuses, and leaves it as it was', async () => {
    const { post, database } = await screensOver();
    const answer = await post('/orders/27-001/edit', { what0: 'kit:pair', quantity0: 'x' });
    expect(answer.status).toBe(422);
    expect((await database.read((tx) => openOrders(tx)))[0]?.lines).toEqual([{ kit: 'pair', quantity: 1 }]);
  });

  test('a date promised before today may stand', async () => {
    const { post, database } = await screensOver();
    await database.write((tx) => updateOrder(tx, '27-001', { promisedOn: '2027-04-01' }));
    const asBefore = { ...filled, quantity0: '1', promisedOn: '2027-04-01' };
    expect((await post('/orders/27-001/edit', asBefore)).status).toBe(303);
  });

  test('one that is not there is not found', async () => {
    const { get, post } = await screensOver();
    expect((await get('/orders/27-999/edit')).status).toBe(404);
    expect((await post('/orders/27-999/edit', filled)).status).toBe(404);
  });
});

test('a yard that makes nothing asks for no order, and says what comes first', async () => {
  const { get, post } = await screensOver(
    smallYard({ castings: [], moulds: [], kits: [], materials: [], mixes: [], orders: [] }),
  );
  const html = await (await get('/orders/new')).text();
  expect(html).toContain('Nothing can be ordered yet.');
  expect(html).toContain('href="/begin/four"');
  expect(html).not.toContain('<form');
  expect((await post('/orders', { what0: 'kit:pair', quantity0: '1' })).status).toBe(422);
});
