import { describe, expect, test } from 'vitest';
import { customers } from '../../db/stores/customer-store.ts';
import { openOrders, orderById } from '../../db/stores/order-store.ts';
import { demoScreens, screensOver, type TestScreens, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

const FILES = '/yard/files';

const look = async ({ app }: TestScreens, content: string | Uint8Array<ArrayBuffer>, name = 'yard.json') => {
  const body = new FormData();
  body.set('file', new File([content], name));
  return app.request(`${FILES}/look`, { method: 'POST', body });
};

/** The fields of the form that reads the file in. */
const held = async (answer: Response): Promise<Record<string, string>> => {
  const html = await answer.text();
  return Object.fromEntries(
    [...html.matchAll(/<input type="hidden" name="(file|revision)" value="([^"]*)"/g)].map(([, name, value]) => [
      name,
      value,
    ]),
  ) as Record<string, string>;
};

const exported = async ({ get }: TestScreens, name: string) => (await get(`${FILES}/${name}`)).text();

const everything = (screens: TestScreens) => exported(screens, 'archive.json');

describe('the page of files', () => {
  test('says what can be done, and gives each file its name', async () => {
    const { get } = await demoScreens();
    const text = await textOf(await get(FILES));
    expect(text).toMatch(/^Everything here can be saved as a file, and loaded again\./);
    expect(text).toContain('Nothing is ever removed by a CSV.');
    for (const [path, name] of [
      ['yard.json', 'larch-row-yard-2027-04-05.yard.json'],
      ['archive.json', 'larch-row-yard-2027-04-05.archive.json'],
      ['orders.csv', 'larch-row-yard-2027-04-05.orders.csv'],
      ['moulds-template.csv', 'moulds-template.csv'],
    ]) {
      const answer = await get(`${FILES}/${path}`);
      expect(answer.headers.get('Content-Disposition')).toBe(`attachment; filename="${name}"`);
    }
  });

  test('the same data is the same bytes, laid out to be read', async () => {
    const screens = await demoScreens();
    const text = await exported(screens, 'yard.json');
    expect(text).toMatch(/^\{\n {2}"format": "mould-rota\/yard",\n {2}"version": 2,\n {2}"yard": \{\n {4}"name"/);
    expect(await exported(screens, 'yard.json')).toBe(text);
  });
});

describe('a yard file', () => {
  test('is shown first, read in as it was shown, and taken back', async () => {
    const screens = await demoScreens();
    const before = await everything(screens);
    const file = JSON.parse(await exported(screens, 'yard.json'));
    file.moulds = file.moulds.filter(({ id }: { id: string }) => id !== '600 no. 1');
    file.castings.find(({ id }: { id: string }) => id === 'panel-900').kg = 14.25;
    const shown = await look(screens, JSON.stringify(file));
    expect(shown.status).toBe(200);
    const text = await textOf(shown.clone());
    expect(text).toMatch(/^This yard file would change this: 1 changed and 1 gone\. Nothing is loaded yet\./);
    expect(text).toContain('1 gone: 600 no. 1.');
    expect(text).toContain('Panel 900: weight 14.25 kg, until now 13.5 kg.');
    expect(text).toContain('Days of orders');
    expect(await everything(screens)).toBe(before);
    const done = await screens.textAfter(await screens.post(`${FILES}/read-in`, await held(shown)));
    expect(done).toMatch(/^Yard file loaded\./);
    expect(JSON.parse(await exported(screens, 'yard.json'))).toEqual(file);
    const change = /name="change" value="(\d+)"/.exec(await (await screens.get(`${FILES}?done=1`)).text())?.[1] ?? '';
    await screens.textAfter(await screens.post('/undo', { change, back: FILES }));
    expect({ ...JSON.parse(await everything(screens)), log: null }).toEqual({ ...JSON.parse(before), log: null });
  });

  test('of another name is looked at on a page of the yard as it is', async () => {
    const screens = await screensOver();
    const file = JSON.parse(await exported(screens, 'yard.json'));
    const html = await (
      await look(screens, JSON.stringify({ ...file, yard: { ...file.yard, name: 'Elsewhere' } }))
    ).text();
    expect(html).toContain('name Elsewhere, until now Small yard.');
    expect(html).toContain('<p class="yard-name">Small yard</p>');
  });

  test('is looked at again when the yard changed in between, and is held no longer once it was read in', async () => {
    const screens = await demoScreens();
    const file = JSON.parse(await exported(screens, 'yard.json'));
    file.yard.mixers = 2;
    const fields = await held(await look(screens, JSON.stringify(file)));
    await screens.post('/moulds/600%20no.%201/damaged', { note: 'Split' });
    const again = await screens.post(`${FILES}/read-in`, fields);
    expect(again.status).toBe(409);
    expect(await textOf(again.clone())).toContain(
      'The yard has changed since this was worked out. Nothing was loaded yet.',
    );
    expect(await textOf(again.clone())).toContain('until now damaged');
    const now = await held(again);
    expect(now.file).toBe(fields.file);
    expect((await screens.post(`${FILES}/read-in`, now)).status).toBe(303);
    const gone = await screens.post(`${FILES}/read-in`, now);
    expect(gone.status).toBe(409);
    expect(await textOf(gone)).toMatch(/^That file is held here no longer\. Nothing was loaded\./);
  });

  test('that says what is there already is not read in', async () => {
    const screens = await demoScreens();
    for (const name of [
      'yard.json',
      'archive.json',
      'orders.csv',
      'moulds.csv',
      'stock.csv',
      'orders.csv?numbers=commas',
    ]) {
      const answer = await look(screens, await exported(screens, name), name);
      expect(await textOf(answer)).toContain('The file says what the yard says already. There is nothing to load.');
    }
  });

  test('with faults is refused with all of them, so many shown', async () => {
    const screens = await demoScreens();
    const before = await everything(screens);
    const file = JSON.parse(await exported(screens, 'yard.json'));
    file.moulds[0].setFor = 'none such';
    file.castings[0].kg = -1;
    file.colour = 'red';
    const answer = await look(screens, JSON.stringify(file));
    expect(answer.status).toBe(422);
    const text = await textOf(answer);
    expect(text).toContain('Nothing was loaded, and nothing was changed.');
    expect(text).toContain('castings[0].kg: is negative');
    expect(text).toContain('colour: is not a field of this format');
    expect(text).toContain('moulds[0].setFor: no casting named "none such"');
    file.orders = Array.from({ length: 80 }, () => ({}));
    expect(await textOf(await look(screens, JSON.stringify(file)))).toMatch(/And \d+ more faults\./);
    expect(await everything(screens)).toBe(before);
  });
});

describe('a file that is none of these', () => {
  const png = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0]);
  const zip = new Uint8Array([0x50, 0x4b, 3, 4, 20, 0]);
  test.each<[string, string | Uint8Array<ArrayBuffer>, RegExp]>([
    ['an empty one', '', /The file is empty/],
    ['only spaces', ' \n\n', /The file is empty/],
    ['cut off in the middle', '{"format": "mould-rota/yard", "version": 1, "yard": {"na', /breaks off before its end/],
    ['no JSON', '{"format": yes}', /is no JSON/],
    ['another JSON', '{"format": "other"}', /neither a yard file nor an archive/],
    ['a picture', png, /a picture \(PNG\)/],
    ['a workbook', zip, /save it as CSV \(UTF-8\)/],
    [
      'no letters',
      new Uint8Array([...'mould,note\n1,caf'].map((c) => c.charCodeAt(0)).concat(0x81, 10)),
      /not written in UTF-8/,
    ],
    ['UTF-16', new Uint8Array([0xff, 0xfe, 0x61, 0]), /UTF-16/],
    [
      'deep',
      `{"format":"mould-rota/yard","version":1,"work":${'['.repeat(200_000)}${']'.repeat(200_000)}}`,
      /nested deeper/,
    ],
    [
      'of two million orders with nothing in them',
      `{"format":"mould-rota/yard","version":2,"orders":[${'{},'.repeat(2_000_000)}{}]}`,
      /more entries than any yard file/,
    ],
    [
      'a later archive',
      '{"format":"mould-rota/archive","version":2,"moulds":4}',
      /version: was written by a later version/,
    ],
    ['a CSV of something else', 'colour,size\nred,2\n', /none of the columns known here/],
    ['a CSV cut off', 'mould,note\n900 no. 1,"left', /never closed/],
  ])('%s', async (_what, content, words) => {
    const screens = await screensOver();
    const before = await everything(screens);
    const answer = await look(screens, content, 'some.file');
    expect(answer.status).toBe(422);
    const text = await textOf(answer);
    expect(text).toMatch(words);
    expect(text).toMatch(/^Nothing was loaded, and nothing was changed\./);
    expect(await everything(screens)).toBe(before);
  });

  test('no file chosen', async () => {
    const screens = await screensOver();
    const body = new FormData();
    body.set('file', new File([], ''));
    const answer = await screens.app.request(`${FILES}/look`, { method: 'POST', body });
    expect(answer.status).toBe(422);
    expect(await textOf(answer)).toContain('No file was chosen. Choose one, then check it.');
  });

  test('names that JavaScript takes for something else are fields that are not known', async () => {
    const screens = await screensOver();
    const file = (await exported(screens, 'yard.json')).replace(
      '"mixers": 1',
      '"mixers": 1, "__proto__": {"mixers": 9}, "constructor": 1',
    );
    const text = await textOf(await look(screens, file));
    expect(text).toContain('yard.__proto__: is not a field of this format');
    expect(text).toContain('yard.constructor: is not a field of this format');
    expect(({} as Record<string, unknown>).mixers).toBeUndefined();
  });

  test('50 MB', async () => {
    const screens = await screensOver();
    const answer = await look(screens, new Uint8Array(50_000_000));
    expect(answer.status).toBe(413);
    expect(await textOf(answer)).toMatch(/^The file is larger than 10 MB, so it was not taken\. Nothing was loaded/);
    // Every other form has the limit it had.
    expect((await screens.post(`${FILES}/read-in`, { file: 'x'.repeat(200_000) })).status).toBe(413);
  });
});

describe('orders from a spreadsheet', () => {
  test('are shown, read in, and taken back', async () => {
    const screens = await demoScreens();
    const csv =
      'Order;Customer;Phone;Asked  for;Wanted;CAN IT SLIP;note\r\n;Tom;"=1+1";"2 x Planter; 1,5 x Sleeve pipe 20 mm, 3 m";8.5.2027;not;"two\r\nlines"\r\n';
    const shown = await look(screens, `\uFEFF${csv}`, 'orders.csv');
    expect(await textOf(shown.clone())).toMatch(
      /^This list of orders would change this: 2 new\. .*1 new: 27-0\d\d Tom\./,
    );
    const { textAfter, post, database } = screens;
    expect(await textAfter(await post(`${FILES}/read-in`, await held(shown)))).toMatch(/^Orders loaded from a file\./);
    const order = (await database.read(openOrders)).at(-1);
    expect(order).toMatchObject({ wantedOn: '2027-05-08', promisedOn: null, weight: 6, note: 'two\r\nlines' });
    expect(order?.customer).toMatchObject({ name: 'Tom', phone: '=1+1' });
    expect(order?.lines.map(({ quantity }) => quantity)).toEqual([2, 1.5]);
    expect(await exported(screens, 'orders.csv')).toContain(`'=1+1`);
    await textAfter(await post('/undo', { change: '1', back: FILES }));
    expect(await database.read((tx) => orderById(tx, order?.id ?? ''))).toBeNull();
    expect((await database.read(customers)).some(({ name }) => name === 'Tom')).toBe(false);
  });

  test('with a date that cannot be kept say so before they are read in, and the dates that are kept are no news', async () => {
    const screens = await demoScreens();
    const csv = [
      'order,customer,asked for,promised',
      ',Tom,"6 x ""Trough 900 x 450, one course""",2027-04-10',
      ',Bea,1 x Herb square 450 x 450,2027-12-18',
    ].join('\n');
    const text = await textOf(await look(screens, csv, 'orders.csv'));
    expect(text).toMatch(
      /A date that can't be kept Tom 27-\d{3}, promised Sat 10 Apr: by today's plan it is ready \w{3} \d+ \w{3}, \d+ (days|weeks) late\./,
    );
    expect(text).not.toMatch(/Bea 27-\d{3}, promised/);
  });

  test('with a date further off than is planned are refused at the row', async () => {
    const screens = await demoScreens();
    const text = await textOf(await look(screens, 'order,asked for,promised\n,1 x Planter,2207-05-08\n', 'orders.csv'));
    expect(text).toContain('row 2, column promised: 2207-05-08 is further off than is planned');
  });

  test('with faults say each by row and column, and nothing is half read', async () => {
    const screens = await demoScreens();
    const before = await everything(screens);
    const csv = [
      'order,customer,asked for,wanted,can it slip',
      ',Ann,2 x Planter,2027-05-08,yes',
      ',Bea,2 x Castle,31/02/2027,perhaps',
      ',Cy,0 x Planter,4/5/2027,yes',
    ].join('\n');
    const text = await textOf(await look(screens, csv, 'orders.csv'));
    expect(text).toContain('row 3, column asked for: nothing here is called "Castle"');
    expect(text).toContain('row 3, column wanted: 31 Feb 2027 does not exist');
    expect(text).toContain('row 3, column can it slip: "perhaps" is none of not, rather not, yes');
    expect(text).toContain('row 4, column asked for: how many Planter? It has to be more than 0');
    expect(text).toContain('row 4, column wanted: 4/5/2027 can be read two ways, as 4 May 2027 or 5 Apr 2027.');
    expect(await everything(screens)).toBe(before);
  });
});

describe('what a spreadsheet does to a file', () => {
  const csv = (text: string) => new Uint8Array([...text].map((letter) => letter.charCodeAt(0)));

  test('a day that could be two is read as the days of the other columns are', async () => {
    const screens = await demoScreens();
    const file = 'order,promised,held until\n27-010,05/29/2027,\n27-017,05/08/2027,04/09/2027\n';
    expect(await textOf(await look(screens, file, 'orders.csv'))).toContain('would change this: 1 changed.');
    const alone = await textOf(await look(screens, file.replace('05/29', '05/08'), 'orders.csv'));
    expect(alone).toContain('can be read two ways');
  });

  test('a title above the columns is passed over, and rows are counted with it', async () => {
    const screens = await demoScreens();
    const title = 'Stock of the yard, April,,\r\n,,,\r\n';
    const text = await textOf(await look(screens, `${title}material,in the yard\r\nCorner clip,31\r\n`, 'stock.csv'));
    expect(text).toContain('This list of stock would change this: 2 changed.');
    const wrong = await textOf(
      await look(screens, `${title}material,in the yard\r\nCorner clip,many\r\n`, 'stock.csv'),
    );
    expect(wrong).toMatch(/row 4, column in the yard/i);
  });

  test('other letters than UTF-8 are shown as they were read, and asked about before they are loaded', async () => {
    const screens = await screensOver();
    const file = csv('order,customer,asked for\r\n27-001,Se\u00e1n,1 x Pair of panels\r\n');
    const answer = await look(screens, file, 'orders.csv');
    expect(await textOf(answer.clone())).toMatch(/Are these letters right\? .* read as Windows-1252.*: Seán\./);
    const fields = await held(answer);
    const refused = await screens.post(`${FILES}/read-in`, fields);
    expect(refused.status).toBe(409);
    expect(await textOf(refused)).toContain('Say that you have checked what is asked here.');
    expect((await screens.database.read((tx) => orderById(tx, '27-001')))?.customer?.name).toBe('School garden');
    expect((await screens.post(`${FILES}/read-in`, { ...fields, checked: 'yes' })).status).toBe(303);
    expect((await screens.database.read((tx) => orderById(tx, '27-001')))?.customer?.name).toBe('Seán');
  });

  test('a figure that lost its decimal sign is asked about', async () => {
    const screens = await demoScreens();
    const file = 'material,price\r\nCitric acid,12\r\n';
    const answer = await look(screens, file, 'stock.csv');
    expect(await textOf(answer.clone())).toMatch(/Are these figures right\? .*Citric acid: price 0\.012 → 12\./);
    expect((await screens.post(`${FILES}/read-in`, await held(answer))).status).toBe(409);
    const usual = await look(screens, 'material,price\r\nCitric acid,€0.013\r\n', 'stock.csv');
    expect(await textOf(usual.clone())).not.toContain('Are these figures right?');
    expect((await screens.post(`${FILES}/read-in`, await held(usual))).status).toBe(303);
  });

  test('a changed phone is the same customer with a new phone, and never a second one', async () => {
    const screens = await demoScreens();
    const before = await screens.database.read(customers);
    const file = 'order,customer,phone\r\n27-010,School garden,020 910 0000\r\n';
    const answer = await look(screens, file, 'orders.csv');
    expect(await textOf(answer.clone())).toContain('School garden: phone 020 910 0000, until now 020 910 0142.');
    expect((await screens.post(`${FILES}/read-in`, await held(answer))).status).toBe(303);
    const after = await screens.database.read(customers);
    expect(after).toHaveLength(before.length);
    expect(after.find(({ name }) => name === 'School garden')?.phone).toBe('020 910 0000');
  });

  test('two rows that give one customer two different new phones are refused, at the second', async () => {
    const base = smallYard();
    const first = { ...base.orders[0]!, customer: 'School garden' };
    const screens = await screensOver({ ...base, orders: [first, { ...first, id: '27-002' }] });
    const before = await screens.database.read(customers);
    const rows = (second: string) =>
      `order,customer,phone\r\n27-001,School garden,020 910 0001\r\n27-002,School garden,${second}\r\n`;
    const refused = await look(screens, rows('020 910 0002'), 'orders.csv');
    expect(refused.status).toBe(422);
    expect(await textOf(refused)).toMatch(
      /row 3, column phone: another row has another new phone for "School garden"/i,
    );
    expect(await screens.database.read(customers)).toEqual(before);
    expect((await look(screens, rows('020 910 0001'), 'orders.csv')).status).toBe(200);
  });
});
