import { describe, expect, test } from 'vitest';
import { demoScreens, screensOver, type TestScreens, textOf } from '../support/screens.ts';
import { sentAsShown } from '../support/sent-as-shown.ts';

const pageOf = async ({ get }: TestScreens, path: string) => textOf(await get(path));
const changeOf = (answer: Response) => new URL(answer.headers.get('Location')!, 'http://x').searchParams.get('done')!;

describe('what costs are reckoned by', () => {
  test('may all be left out, and the price list says what it leaves out', async () => {
    const screens = await screensOver();
    const text = await pageOf(screens, '/prices');
    expect(text).toContain('1 kit, none with a price yet.');
    expect(text).toContain(
      'Not counted, because nobody said what it costs: Fast-setting mortar, Rod 12 mm, work, what a',
    );
    expect(text).toContain('scrap and two moulds.');
    expect(text).toContain('Costs more than');
  });

  test('is typed as money is written, shown again, and undone', async () => {
    const screens = await demoScreens();
    const before = await (await screens.get('/yard/costs')).text();
    const form = sentAsShown(before);
    expect(form).toMatchObject({ wageHour: '16.00', mouldTurns: '120', cost2: '66.00', mould2: '1200 no. 3' });
    const typed = { ...form, wageHour: '€1 250,50', sessionFixed: '12', rejectPercent: '2,5 %', cost2: '' };
    const saved = await screens.post('/yard/costs', typed);
    expect(await screens.textAfter(saved)).toContain('€1,250.50 an hour, €12.00 a session and a margin of 35 %.');
    const after = sentAsShown(await (await screens.get('/yard/costs')).text());
    expect(after).toMatchObject({ wageHour: '1250.50', sessionFixed: '12.00', rejectPercent: '2.5', cost2: '' });
    await screens.post('/undo', { change: changeOf(saved), back: '/yard/costs' });
    expect(sentAsShown(await (await screens.get('/yard/costs')).text())).toEqual(form);
  });

  test('that can’t be read is told at its field, and nothing is saved', async () => {
    const screens = await demoScreens();
    const form = sentAsShown(await (await screens.get('/yard/costs')).text());
    const typed = { ...form, wageHour: 'dear', sessionFixed: '1.234', rejectPercent: '100', turns0: '0', cost1: '$5' };
    const refused = await screens.post('/yard/costs', typed);
    expect(refused.status).toBe(422);
    const text = await textOf(refused);
    for (const words of [
      '"dear" is no price. Write it like 129.00.',
      'EUR has 2 decimals at most.',
      'How many of a hundred come out as scrap? Write a number, 0 to 95.',
      'How many turns? Write a whole number, 1 to 100000.',
      '"$5" is no price.',
    ])
      expect(text).toContain(words);
    expect(sentAsShown(await (await screens.get('/yard/costs')).text())).toEqual(form);
  });
});

describe('the price list', () => {
  test('has the parts of a cost, which come to it, and the price by the margin', async () => {
    const screens = await demoScreens();
    const csv = await (await screens.get('/prices.csv')).text();
    const [, ...rows] = csv.trim().split('\r\n');
    expect(rows.map((row) => row.split(',')[0])).toEqual([...Array(5).fill('kit'), ...Array(5).fill('piece')]);
    for (const row of rows) {
      // A name may have a comma in it.
      const cells = row.replace(/"[^"]*"/g, 'name').split(',');
      const cents = cells.slice(3, 10).map((cell) => Math.round(Number(cell) * 100));
      const cost = cents.pop()!;
      expect(
        cents.reduce((sum, one) => sum + one, 0),
        row,
      ).toBe(cost);
      if (cells[12] === 'margin') expect(Math.abs(Number(cells[11]) * 65 - cost), row).toBeLessThan(1);
    }
    expect(rows[0]).toContain(',440,typed,');
  });

  test('takes a price that is typed, and the margin’s again where that is taken away', async () => {
    const screens = await demoScreens();
    const trough = /Trough 900 x 450, one course (€[\d.]+) By the margin\.(.*?)Costs €([\d.]+)/;
    const [, margins, , cost] = trough.exec(await pageOf(screens, '/prices'))!;
    const saved = await screens.post('/prices/trough/price', { price: '210,00' });
    const after = await screens.textAfter(saved);
    expect(after).toContain(`Trough 900 x 450, one course €210.00 Typed; by the margin ${margins}.`);
    await screens.post('/prices/trough/price', { price: '' });
    expect(await pageOf(screens, '/prices')).toContain(`Trough 900 x 450, one course ${margins} By the margin.`);
    const cheap = await screens.textAfter(await screens.post('/prices/trough/price', { price: '100' }));
    expect(cheap).toContain(`It costs €${(Number(cost) - 100).toFixed(2)} more than that.`);
  });

  test('tells a price that can’t be read where it was typed', async () => {
    const screens = await demoScreens();
    const refused = await screens.post('/prices/trough/price', { price: 'a lot' });
    expect(refused.status).toBe(422);
    const html = await refused.text();
    expect(html).toContain('id="price-trough-error"');
    expect(html).toContain('value="a lot"');
  });
});

test('a session’s shares come to what it costs', async () => {
  const html = await (await (await demoScreens()).get('/prices/sessions')).text();
  const tables = html.split('<table').slice(1);
  expect(tables.length).toBeGreaterThan(5);
  for (const table of tables) {
    const cents = [...table.matchAll(/€([\d,]+)\.(\d\d)/g)].map(([, euros, rest]) =>
      Number(euros!.replace(',', '') + rest),
    );
    const total = cents.pop();
    expect(cents.reduce((sum, one) => sum + one, 0)).toBe(total);
  }
});

test.each(['/today', '/today/sheet', '/today/evening', '/going-out', '/moulds', '/turns'])(
  'nothing on the wall or in the yard says what it costs: %s',
  async (path) => {
    const answer = await (await demoScreens()).get(path);
    expect(answer.status).toBe(200);
    expect(await answer.text()).not.toMatch(/€|\bEUR\b|\bprice/i);
  },
);
