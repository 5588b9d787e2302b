import { describe, expect, test } from 'vitest';
import { setHabits } from '../../db/stores/habits-store.ts';
import { addIncoming, arrivalsOf, markArrived, materialById, onTheirWay } from '../../db/stores/material-store.ts';
import { setMaterialBuying } from '../../db/stores/supplier-store.ts';
import { setUnits } from '../../db/stores/units-store.ts';
import { bumpRevision } from '../../db/stores/yard-store.ts';
import { demoScreens, screensOver, type TestScreens, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';
import { countedNow } from '../support/stock-set.ts';

/*
 * The order wants a pair on Saturday 10 April and three rods are there for its pins. With one bag of mortar, 27.5 kg, both
 * panels (27.2 kg) are poured; with two pairs ordered a second bag has to be bought.
 */
const yardShortOfMortar = () =>
  smallYard({
    materials: [
      {
        id: 'mortar',
        name: 'Fast-setting mortar',
        unit: 'bag',
        onHand: 1,
        leadDays: 1,
        unitPrice: 21.5,
        supplier: 'Merchant',
        pack: 2,
      },
      { id: 'rod', name: 'Rod 12 mm', unit: 'stick', onHand: 3, stickMm: 3000, leadDays: 3, kerfMm: 3 },
    ],
    orders: [{ id: '27-001', customer: 'School garden', due: '2027-04-10', lines: [{ kit: 'pair', quantity: 2 }] }],
  });

const mortarIn = ({ database }: TestScreens) => database.read(async (tx) => (await materialById(tx, 'mortar'))?.onHand);
const comingIn = ({ database }: TestScreens) => database.read(onTheirWay);
const bought = { line: '0-0', material: 'mortar', quantity: '2', on: '2027-04-09', price: '43.00' };
const onTheWay = async (goods: { on: string; quantity: number }) => {
  const screens = await screensOver(yardShortOfMortar());
  const id = await screens.database.write(async (tx) => {
    await bumpRevision(tx);
    return addIncoming(tx, { ...goods, material: 'mortar', boughtOn: '2027-04-07', price: 43 });
  });
  return { ...screens, id: String(id) };
};

describe('buying', () => {
  test('says what to order by when, for whom, and what is in the yard', async () => {
    const { get } = await screensOver(yardShortOfMortar());
    const text = await textOf(await get('/buying'));
    expect(text).toMatch(/^Order 2 bags of Fast-setting mortar today\. One thing to order this week\./);
    expect(text).toContain(
      'Merchant order today 2 bags of Fast-setting mortar For School garden. Order today €43.00 Bought',
    );
    expect(text).toContain('Fast-setting mortar 1 bag in the yard, all spoken for.');
    expect(text).toContain('Nothing is on its way.');
  });

  test('has what is overdue first, and how each material goes on with the day it runs short', async () => {
    const yard = yardShortOfMortar();
    const screens = await screensOver({ ...yard, incoming: [{ material: 'rod', quantity: 1, on: '2027-04-06' }] });
    const text = await textOf(await screens.get('/buying'));
    expect(text).toMatch(/Overdue 1 stick of Rod 12 mm .* This week .* On its way Nothing else is on its way\./);
    expect(text).toMatch(/Fast-setting mortar 1 bag in the yard, all spoken for\. runs short Sat 10 Apr/);
  });

  test('puts what is bought on its way, and into stock when it arrives; both are undone', async () => {
    const screens = await screensOver(yardShortOfMortar());
    const { post, textAfter } = screens;
    const text = await textAfter(await post('/buying/bought', bought));
    expect(text).toContain('Fast-setting mortar bought, expected on Fri 9 Apr. Undo');
    expect(text).toContain('Nothing has to be bought for what is planned.');
    expect(text).toContain(
      '2 bags of Fast-setting mortar For School garden; bought Thu 8 Apr, €43.00. Expected Fri 9 Apr Arrived',
    );
    expect(text).toContain('1 bag in the yard, all spoken for; 2 more on Fri 9 Apr.');
    const [goods] = await comingIn(screens);
    expect(goods).toMatchObject({
      material: 'mortar',
      quantity: 2,
      on: '2027-04-09',
      boughtOn: '2027-04-08',
      price: 43,
    });
    const arrived = await post('/buying/arrived', { goods: String(goods?.id), came: '2' });
    expect(await textAfter(arrived)).toContain('3 bags in the yard, 2 spoken for, 1 spare.');
    expect(await comingIn(screens)).toEqual([]);
    const change = new URL(arrived.headers.get('Location') ?? '', 'http://x').searchParams.get('done') ?? '';
    await post('/undo', { change, back: '/buying' });
    expect(await mortarIn(screens)).toBe(1);
    expect(await comingIn(screens)).toHaveLength(1);
  });

  test('buys a whole trip at one tap, each thing as it stands there', async () => {
    const screens = await demoScreens();
    const html = await (await screens.get('/buying')).text();
    const form = html.split('action="/buying/trip-bought"').map((part) => part.split('</form>')[0] ?? '');
    const merchant = form.find((part) => part.includes('value="Builders&#39; merchant"')) ?? '';
    const fields = [...merchant.matchAll(/name="([^"]+)" value="([^"]*)"/g)].map(([, name, value]) => [name, value]);
    const before = await comingIn(screens);
    const bought = await screens.post('/buying/trip-bought', Object.fromEntries(fields));
    const change = new URL(bought.headers.get('Location') ?? '', 'http://yard').searchParams.get('done') ?? '';
    expect(await screens.textAfter(bought)).toMatch(/3 things bought: Builders.* merchant, the last expected/);
    expect((await comingIn(screens)).length - before.length).toBe(3);
    await screens.post('/undo', { change, back: '/buying' });
    expect(await comingIn(screens)).toEqual(before);
  });

  test('refuses a trip of which nothing is left, and one of a thing that is gone', async () => {
    const screens = await demoScreens();
    const none = await screens.post('/buying/trip-bought', { trip: 'trip-0', name: 'Grocer' });
    expect(await textOf(none)).toContain('Nothing is left to buy there.');
    const gone = { trip: 'trip-0', name: 'Grocer', material0: 'gold', quantity0: '1', on0: '2027-04-09', price0: '' };
    expect(await textOf(await screens.post('/buying/trip-bought', gone))).toContain('not in the stock book any more');
  });

  // The second bag is poured on the 10th and the pairs go out on the 17th; not to be had before that day, they wait for the 24th and on.
  test('plans without what is not to be had, and says first what that moves', async () => {
    const screens = await screensOver(yardShortOfMortar());
    const none = { material: 'mortar', line: '0-0', on: '2027-04-17' };
    const page = await (await screens.post('/buying/not-to-be-had', none)).text();
    expect(page).toContain('Nothing has been saved yet.');
    const seen = (/name="seen" value="([^"]*)"/.exec(page)?.[1] ?? '').replaceAll('&quot;', '"');
    const text = await screens.textAfter(await screens.post('/buying/not-to-be-had', { ...none, seen }));
    expect(text).toContain('Not to be had before Sat 17 Apr.');
    expect(text).toContain('Next: 2 bags of Fast-setting mortar by Thu 22 Apr.');
    expect(await (await screens.get('/yard/stock/mortar')).text()).toMatch(/name="leadDays"[^>]* value="1"/);
  });

  test('has what is nearly used up on the list, though no plan needs it', async () => {
    const oil = { id: 'oil', name: 'Release oil', unit: 'l', onHand: 2, leadDays: 0, pack: 5 };
    const screens = await screensOver(
      smallYard({ materials: [...smallYard().materials, { ...oil, minimum: 0, kerfMm: 0 }] }),
    );
    expect(await textOf(await screens.get('/buying'))).toMatch(/^Nothing has to be bought/);
    await screens.database.write(async (tx) => {
      await setMaterialBuying(tx, 'oil', { breaks: [], perTurn: 0.05, buyAt: 2 });
      await bumpRevision(tx);
    });
    expect(await textOf(await screens.get('/buying'))).toContain('5 l of Release oil Nearly used up.');
    expect(await textOf(await screens.get('/'))).toContain('5 l Release oil');
  });

  test('says what came longer ago than it keeps, first on the page and at the material', async () => {
    const base = yardShortOfMortar();
    const keeps = base.materials.map((one) => (one.id === 'mortar' ? { ...one, onHand: 5, shelfLifeDays: 60 } : one));
    const screens = await screensOver(smallYard({ ...base, materials: keeps }));
    await screens.database.write(async (tx) => {
      for (const [arrivedOn, quantity] of [
        ['2027-01-12', 6],
        ['2027-04-01', 2],
      ] as const) {
        const goods = { material: 'mortar', quantity, on: arrivedOn, boughtOn: null, price: null };
        await markArrived(tx, await addIncoming(tx, goods), { on: arrivedOn, at: `${arrivedOn}T07:00:00Z` });
      }
      await countedNow(tx, 'mortar', 5);
      await bumpRevision(tx);
    });
    const text = await textOf(await screens.get('/buying'));
    expect(text).toMatch(/^Nothing has to be bought.* Past its shelf life in the yard: Fast-setting mortar\./);
    const old = '3 bags came Tue 12 Jan and keep 60 days: check them before use.';
    expect(text).toContain(`3 spare. ${old}`);
    expect(await textOf(await screens.get('/yard/stock/mortar'))).toContain(old);
  });

  test('says of what is sold in packs what has no use before it goes off', async () => {
    const base = yardShortOfMortar();
    const keeps = base.materials.map((one) =>
      one.id === 'mortar' ? { ...one, pack: 12, onHand: 1, shelfLifeDays: 30 } : one,
    );
    const screens = await screensOver(smallYard({ ...base, materials: keeps }));
    // Two bags are used by 10 April, one of them is there: eleven of the twelve that come the day before are left 30 days later.
    expect(await textOf(await screens.get('/buying'))).toContain(
      "Keeps 30 days, until Sun 9 May: 11 bags have no use by then, by today's plan. Buy fewer if you can.",
    );
  });

  test('asks about ten times as much as was bought, and takes it when it is sent once more', async () => {
    const screens = await onTheWay({ on: '2027-04-09', quantity: 6 });
    const asked = await screens.post('/buying/arrived', { goods: screens.id, came: '600' });
    expect(asked.status).toBe(422);
    const page = await asked.text();
    expect(page).toContain('That is 100 times what was bought.');
    expect(page).toContain('<input type="hidden" name="sure" value="600"/>');
    expect(await mortarIn(screens)).toBe(1);
    await screens.post('/buying/arrived', { goods: screens.id, came: '600', sure: '600' });
    expect(await mortarIn(screens)).toBe(601);
  });

  test('writes down how much came, where it was not all of it', async () => {
    const screens = await onTheWay({ on: '2027-04-09', quantity: 6 });
    await screens.post('/buying/arrived', { goods: screens.id, came: '4' });
    expect(await screens.database.read((tx) => arrivalsOf(tx, 'mortar'))).toEqual([
      { quantity: 4, arrivedOn: '2027-04-08', useBy: null },
    ]);
    expect(await mortarIn(screens)).toBe(5);
    expect((await comingIn(screens)).map(({ quantity }) => quantity)).toEqual([2]);
  });

  test('counts the stock anew', async () => {
    const screens = await screensOver(yardShortOfMortar());
    const text = await screens.textAfter(
      await screens.post('/buying/counted', { line: '0', material: 'mortar', counted: '2,5' }),
    );
    expect(text).toContain('Fast-setting mortar counted: 2.5 in the yard, not 1.');
    expect(text).toContain('2.5 bags in the yard, 2 spoken for, 0.5 spare.');
    expect(await mortarIn(screens)).toBe(2.5);
  });

  test('counts sticks as whole ones and offcuts, and says both', async () => {
    const screens = await screensOver();
    expect(await (await screens.get('/buying')).text()).toContain('name="offcuts"');
    const form = { line: '1', material: 'rod', counted: '2', offcuts: '2232, 1400' };
    const text = await screens.textAfter(await screens.post('/buying/counted', form));
    expect(text).toContain('Rod 12 mm counted: 2 whole, offcuts 2232 mm, 1400 mm in the yard, not 3 whole.');
    expect(text).toMatch(/2 whole in the yard, .*Offcuts: 2232 mm and 1400 mm\./);
    const refused = await screens.post('/buying/counted', { ...form, offcuts: '2232, 5 m' });
    expect(refused.status).toBe(422);
    const html = await refused.text();
    expect(html).toContain('A whole one is 3000 mm. An offcut is shorter.');
    expect(html).toContain('value="2232, 5 m"');
  });

  test('keeps what did not come on its way', async () => {
    const screens = await onTheWay({ quantity: 4, on: '2027-04-06' });
    const text = await screens.textAfter(await screens.post('/buying/arrived', { goods: screens.id, came: '3' }));
    expect(text).toContain('4 bags in the yard');
    expect(await comingIn(screens)).toMatchObject([
      { quantity: 1, on: '2027-04-08', boughtOn: '2027-04-07', price: 10.75 },
    ]);
  });

  test('takes more than was bought as it came', async () => {
    const screens = await onTheWay({ quantity: 4, on: '2027-04-09' });
    await screens.post('/buying/arrived', { goods: screens.id, came: '5' });
    expect(await mortarIn(screens)).toBe(6);
    expect(await comingIn(screens)).toEqual([]);
  });

  test('gives a delivery another day, with what that moves in sight first', async () => {
    const materials = smallYard().materials.map((one) => ({ ...one, onHand: one.id === 'mortar' ? 0 : one.onHand }));
    const incoming = [{ material: 'mortar', quantity: 12, on: '2027-04-09' }];
    const screens = await screensOver(smallYard({ materials, incoming }));
    const [goods] = await comingIn(screens);
    const form = { goods: String(goods?.id), on: '24 Apr' };
    const asked = await screens.post('/buying/new-day', form);
    const html = await asked.clone().text();
    expect(await textOf(asked)).toMatch(
      /This moves one promise\. Nothing has been saved yet\..*School garden: .* later/,
    );
    expect(html).toContain('action="/buying/new-day"');
    expect((await comingIn(screens))[0]?.on).toBe('2027-04-09');
    const seen = /name="seen" value="([^"]+)"/.exec(html)?.[1] ?? '';
    const text = await screens.textAfter(await screens.post('/buying/new-day', { ...form, seen }));
    expect(text).toContain('Fast-setting mortar is expected on Sat 24 Apr.');
    expect((await comingIn(screens))[0]?.on).toBe('2027-04-24');
    const passed = await screens.post('/buying/new-day', { ...form, on: '2027-04-01' });
    expect(passed.status).toBe(422);
    expect(await passed.text()).toContain('That day has passed.');
  });

  test('gives up what will never come', async () => {
    const screens = await onTheWay({ quantity: 4, on: '2027-04-01' });
    expect(await textOf(await screens.get('/buying'))).toContain('Was expected Thu 1 Apr');
    expect(await screens.textAfter(await screens.post('/buying/not-coming', { goods: screens.id }))).toContain(
      'Fast-setting mortar is not coming.',
    );
    expect(await comingIn(screens)).toEqual([]);
    expect(await mortarIn(screens)).toBe(1);
  });

  test('shows an empty stock book for what it is', async () => {
    const base = smallYard();
    const { get } = await screensOver(
      smallYard({ materials: [], mixes: base.mixes.map((mix) => ({ ...mix, perBag: [] })), kits: [], orders: [] }),
    );
    const text = await textOf(await get('/buying'));
    expect(text).toContain('Nothing has to be bought for what is planned.');
    expect(text).toContain('The stock book is empty.');
  });

  test('shows the demo, several suppliers and weeks', async () => {
    const { get } = await demoScreens();
    const text = await textOf(await get('/buying'));
    expect(text).toContain('On its way 6 bags of Fast-setting mortar, 25 kg');
    expect(text).toContain('Corner clip 30 in the yard, 28 spoken for, 2 spare. Always keep 8.');
  });
});

/** Citric acid is kept in grams: 57 of them to the bag, so that two pairs take 114 of the 100 there are. */
const yardShortOfAcid = () => {
  const yard = yardShortOfMortar();
  return smallYard({
    ...yard,
    materials: [
      { ...yard.materials[0]!, onHand: 20 },
      ...yard.materials.slice(1),
      { id: 'acid', name: 'Citric acid', unit: 'g', onHand: 100, leadDays: 1, pack: 500, unitPrice: 0.012 },
    ],
    mixes: yard.mixes.map((mix) => ({ ...mix, perBag: [...mix.perBag, { material: 'acid', quantity: 57 }] })),
  });
};

describe('a US yard', () => {
  const inUS = async (currency = 'USD') => {
    const screens = await screensOver(yardShortOfAcid());
    await screens.database.write(async (tx) => {
      await setUnits(tx, 'US');
      await setHabits(tx, { currency, weekStart: 'SU' });
    });
    return screens;
  };
  const acidIn = ({ database }: TestScreens) => database.read((tx) => materialById(tx, 'acid'));

  test('reads its own units and money, and its week begins on Sunday', async () => {
    const text = await textOf(await (await inUS()).get('/buying'));
    // 500 g are 17.64 oz, 100 g 3.53 oz: 1 oz = 28.349523125 g, NIST SP 811 (2008), appendix B.
    expect(text).toMatch(/^Order 17\.64 oz of Citric acid today\./);
    expect(text).toContain('$6.00');
    expect(text).toContain('Sold in packs of 17.64 oz.');
    expect(text).toContain('How much (oz)');
    expect(text).toContain('Citric acid 3.53 oz in the yard, all spoken for.');
    const later = await screensOver(yardShortOfAcid());
    expect(await textOf(await later.get('/buying'))).toContain('Order 500 g of Citric acid today');
  });

  test('puts exactly a pack on its way when the field is left as it was filled in', async () => {
    const screens = await inUS();
    const html = await (await screens.get('/buying')).text();
    expect(html).toContain('name="quantityWas" value="500"');
    const form = { line: '0-2', material: 'acid', quantity: '17.64', quantityWas: '500' };
    await screens.post('/buying/bought', { ...form, on: 'Fri 9 Apr', price: '$6.00' });
    expect(await comingIn(screens)).toMatchObject([{ quantity: 500, on: '2027-04-09', price: 6 }]);
  });

  test('sees again what was typed, in whatever unit', async () => {
    const screens = await inUS();
    const form = { line: '0-2', material: 'acid', quantity: '1 kg', quantityWas: '500', price: '' };
    const text = await screens.textAfter(await screens.post('/buying/bought', { ...form, on: '4/9' }));
    expect(text).toContain('1 kg of Citric acid');
    expect(text).toContain('4/9 was read as Fri, Apr 9, 2027, with the month first.');
    expect(await comingIn(screens)).toMatchObject([{ quantity: 1000, on: '2027-04-09' }]);
    const counted = await screens.textAfter(
      await screens.post('/buying/counted', { line: '2', material: 'acid', counted: '250 g' }),
    );
    expect(counted).toContain('Citric acid counted: 250 g in the yard, not 3.53 oz.');
    expect(counted).toContain('Citric acid 250 g in the yard');
    expect((await acidIn(screens))?.onHand).toBe(250);
    // A bare number counts what the field says, and once the stock is another one that is shown.
    await screens.post('/buying/counted', { line: '2', material: 'acid', counted: '10' });
    expect((await acidIn(screens))?.onHand).toBe(283.49523125);
    expect(await textOf(await screens.get('/buying'))).toContain('Citric acid 10 oz in the yard');
  });

  test('that pays in a currency without a smaller part has none', async () => {
    const screens = await inUS('JPY');
    expect(await textOf(await screens.get('/buying'))).toContain('¥6');
    const form = { line: '0-2', material: 'acid', quantity: '1 lb', on: 'tomorrow', price: '6.50' };
    const answer = await screens.post('/buying/bought', form);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain('JPY has no smaller part');
    expect(html).toContain('value="tomorrow"');
    expect(html).toContain('value="1 lb"');
  });
});

describe('a purchase that cannot be', () => {
  test.each([
    [{ quantity: 'two' }, '"two" is no number. Write it like 12 or 2.5.'],
    [{ quantity: '1,234' }, '"1,234" is no number.'],
    [{ quantity: '-3' }, '"-3" is no number.'],
    [{ quantity: '' }, 'How much was bought? Write a number.'],
    [{ quantity: '0' }, 'Write a number above 0.'],
    [{ on: '2027-02-30' }, '30 Feb 2027 does not exist. Write a day like 8 May'],
    [{ on: '' }, 'When is it expected? Write a day.'],
    [{ on: '1 Jan 2040' }, 'That is further off than is planned. The last day is '],
    [{ on: '2027-04-07' }, 'That day has passed.'],
    [{ price: 'dear' }, '"dear" is no price. Write it like 129.00.'],
    [{ material: 'gold' }, 'Choose what was bought from the list.'],
  ])('%o is refused at its field, and the rest stays as typed', async (wrong, message) => {
    const screens = await screensOver(yardShortOfMortar());
    const answer = await screens.post('/buying/bought', { ...bought, price: '40', ...wrong });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html.replaceAll('&quot;', '"')).toContain(message);
    expect(html).toContain(`value="${'price' in wrong ? 'dear' : '40'}"`);
    expect(await comingIn(screens)).toEqual([]);
  });

  test.each([
    ['/buying/arrived', { goods: '99' }, 'That has arrived already'],
    ['/buying/not-coming', { goods: 'x' }, 'That has arrived already'],
    ['/buying/counted', { line: '0', material: 'mortar', counted: '' }, 'How much is there? Write a number.'],
    ['/buying/counted', { line: '0', material: 'mortar', counted: 'many' }, 'is no number'],
    ['/buying/counted', { line: '0', material: 'mortar', counted: '1' }, 'The stock book says so already.'],
    ['/buying/counted', { line: '0', material: 'gold', counted: '1' }, 'not in the stock book'],
  ])('%s %o', async (path, form, message) => {
    const screens = await screensOver(yardShortOfMortar());
    const answer = await screens.post(path, form);
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain(message);
    expect(await mortarIn(screens)).toBe(1);
  });

  test('arrives once, however often it is tapped', async () => {
    const screens = await onTheWay({ quantity: 4, on: '2027-04-09' });
    await screens.post('/buying/arrived', { goods: screens.id });
    const again = await screens.post('/buying/arrived', { goods: screens.id });
    expect(again.status).toBe(422);
    expect(await mortarIn(screens)).toBe(5);
  });

  test('is no other form', async () => {
    const { post } = await screensOver();
    expect((await post('/buying/sold', {})).status).toBe(404);
  });
});
