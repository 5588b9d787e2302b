import { describe, expect, test } from 'vitest';
import { addWorkRecords } from '../../db/stores/work-record-store.ts';
import type { WorkRecord } from '../../shared/work-record.ts';
import { demoScreens, type TestScreens, textOf } from '../support/screens.ts';

const SCHOOL = '/orders/27-010';
const PAT = '/orders/27-018';

/** Two panels of one mix, timed, of which one more came out as scrap, and one of which nobody knows where it came from. */
const recordsOf = (order: string): WorkRecord[] => {
  const filled = { '600 no. 1': '2027-04-03T09:20:00Z', '600 no. 2': '2027-04-03T09:25:00Z' };
  const lost = { mould: '450 no. 1', casting: 'panel-450', filledAt: '2027-04-03T09:30:00Z' };
  const pieces = Object.entries(filled).map(([mould, filledAt]) => ({ mould, casting: 'panel-600', filledAt }));
  return [
    {
      ...{ kind: 'poured', at: '2027-04-03T09:30:00Z', mix: 'thin', bags: 1 },
      pours: [...pieces, lost].map((piece) => ({ ...piece, order })),
      ...{ mixedFrom: '2027-04-03T09:00:00Z', tappedAt: '2027-04-03T09:35:00Z' },
    },
    { ...lost, kind: 'stripped', at: '2027-04-03T11:00:00Z', cameOut: 'scrap', reason: 'blowholes' },
    { kind: 'packed', at: '2027-04-05T07:30:00Z', order, pieces, others: [{ casting: 'panel-450', count: 1 }] },
  ];
};
const pageOf = async ({ get }: TestScreens, path: string) => textOf(await get(path));
const changeOf = (answer: Response) => new URL(answer.headers.get('Location')!, 'http://x').searchParams.get('done')!;

describe('the money of an order', () => {
  test('is asked for, paid and owing, to the cent', async () => {
    const screens = await demoScreens();
    expect(await pageOf(screens, SCHOOL)).toContain('€880.00 asked, €260.00 paid, €620.00 owing.');
    const paid = await screens.post(`${SCHOOL}/pay`, { way: 'in', amount: '619,90', paidOn: '5 Apr', payNote: 'Cash' });
    expect(await screens.textAfter(paid)).toContain('€880.00 asked, €879.90 paid, €0.10 owing.');
    await screens.post(`${SCHOOL}/pay`, { way: 'in', amount: '0.10', paidOn: '' });
    const text = await pageOf(screens, SCHOOL);
    expect(text).toContain('€880.00 asked, all of it paid.');
    expect(text).toContain('Paid Mon 5 Apr 2027 (Cash): €619.90');
    const back = await screens.post(`${SCHOOL}/pay`, { way: 'back', amount: '60', paidOn: '' });
    expect(await screens.textAfter(back)).toContain('€880.00 asked, €820.00 paid, €60.00 owing.');
    await screens.post('/undo', { change: changeOf(paid), back: SCHOOL });
    expect(await pageOf(screens, SCHOOL)).toContain('€200.10 paid, €679.90 owing.');
  });

  test('begins with what the price list asks', async () => {
    const screens = await demoScreens();
    const html = await (await screens.get(PAT)).text();
    const asked = /the price list asks €([\d.]+)\./.exec(html)![1]!;
    expect(html).toMatch(new RegExp(`name="price"[^>]*value="${asked}"`));
    const saved = await screens.post(`${PAT}/price`, { price: asked, deposit: '20' });
    expect(await screens.textAfter(saved)).toContain(
      `€${asked} asked, nothing paid, €${asked} owing. Of the deposit of €20.00`,
    );
  });

  test('takes no payment without an amount, none of a day to come, and no deposit above the price', async () => {
    const screens = await demoScreens();
    const refused = async (form: string, fields: Record<string, string>) => {
      const answer = await screens.post(`${SCHOOL}/${form}`, fields);
      expect(answer.status).toBe(422);
      return textOf(answer);
    };
    expect(await refused('pay', { amount: '', paidOn: '' })).toContain('How much was paid?');
    expect(await refused('pay', { amount: '0', paidOn: '' })).toContain('How much was paid?');
    expect(await refused('pay', { amount: '5', paidOn: '6 Apr 2027' })).toContain('That day is still to come.');
    expect(await refused('pay', { amount: '-5', paidOn: '' })).toContain('"-5" is no price.');
    expect(await refused('price', { price: '100', deposit: '100.01' })).toContain('That is more than the price.');
    expect(await refused('price', { price: '', deposit: '5' })).toContain('A deposit of what price?');
    expect(await pageOf(screens, SCHOOL)).toContain('€880.00 asked, €260.00 paid, €620.00 owing.');
  });

  test('forgets a payment that was put down by mistake', async () => {
    const screens = await demoScreens();
    const html = await (await screens.get(SCHOOL)).text();
    const payment = /name="payment" value="(\d+)"/.exec(html)![1]!;
    const text = await screens.textAfter(await screens.post(`${SCHOOL}/unpay`, { payment }));
    expect(text).toContain('€880.00 asked, nothing paid, €880.00 owing.');
    expect((await screens.post(`${SCHOOL}/unpay`, { payment })).status).toBe(422);
  });

  test('of an order that is cancelled is to be paid back', async () => {
    const screens = await demoScreens();
    await screens.post(`${SCHOOL}/cancel`, {});
    expect(await pageOf(screens, SCHOOL)).toContain('€260.00 paid, €260.00 to be paid back.');
    expect(await pageOf(screens, '/orders')).toContain('School garden is to get back €260.00: cancelled.');
  });

  test('stays with the order whose parts go out', async () => {
    const screens = await demoScreens();
    const gone = await screens.post('/orders/27-018/hand-over-part', { part0: '1', evenShort: 'yes' });
    expect(gone.status).toBe(303);
    const before = /the price list asks (€[\d.]+)/.exec(await pageOf(await demoScreens(), PAT))![1]!;
    const text = await pageOf(screens, PAT);
    expect(text).toContain(`the price list asks ${before}`);
    expect(text).toContain('1 × Panel 600, as 27-019.');
    expect(await pageOf(screens, '/orders/27-019')).not.toContain('€');
  });
});

describe('estimated and real', () => {
  test('stand beside each other once it is handed over, each part coming to what stands below it', async () => {
    const screens = await demoScreens();
    await screens.post(`${PAT}/price`, { price: '150', deposit: '' });
    expect(await pageOf(screens, PAT)).not.toContain('Estimated and real');
    expect((await screens.post(`${PAT}/hand-over`, { evenShort: 'yes' })).status).toBe(303);
    // Of pieces that nobody knows the mark of, nothing is said.
    expect(await pageOf(screens, PAT)).not.toContain('Estimated and real');
    await screens.database.write((tx) => addWorkRecords(tx, recordsOf('27-018')));
    const html = await (await screens.get(PAT)).text();
    const table = /class="real-cost"[\s\S]*?<tbody>([\s\S]*?)<\/tbody>/.exec(html)![1]!;
    const rows = [...table.matchAll(/€([\d.]+)<[\s\S]*?€([\d.]+)</g)].map(([, was, is]) => [was, is].map(Number));
    const [total, parts] = [rows.pop()!, rows];
    for (const column of [0, 1])
      expect(parts.reduce((sum, row) => sum + Math.round(row[column]! * 100), 0)).toBe(
        Math.round(total[column]! * 100),
      );
    const text = await pageOf(screens, PAT);
    expect(text).toMatch(
      /It cost (just what was estimated|€[\d.]+ (more|less) than estimated), and leaves \d+ % of the price\./,
    );
    expect(text).toContain('2 of 3 pieces are on record; 2 of 6 tasks timed by taps, the rest by the yard’s figures.');
    expect(text).toContain('1 piece for it came out as scrap.');
    expect(text).toContain('Estimated Mon 5 Apr Real');
  });
});

describe('a bill', () => {
  const linesOf = (text: string) =>
    [...text.matchAll(/\d × [A-Z][^€]*€([\d.]+)/g)].map(([, sum]) => Math.round(Number(sum) * 100));

  test('is kept as it was sent, with a number, and what has changed since is told', async () => {
    const screens = await demoScreens();
    await screens.post(`${PAT}/price`, { price: '100', deposit: '' });
    await screens.post(`${PAT}/pay`, { way: 'in', amount: '40', paidOn: '2027-04-05', payNote: 'Cash' });
    const sent = await screens.post(`${PAT}/bill`, {});
    expect(await screens.textAfter(sent)).toContain('Bill for Pat Dunne kept');
    await screens.post(`${PAT}/price`, { price: '90', deposit: '' });
    await screens.post(`${PAT}/pay`, { way: 'in', amount: '20.05', paidOn: '2027-04-05', payNote: '' });
    const first = await pageOf(screens, `${PAT}/bill/1`);
    expect(first).toContain('In all €100.00 Paid Mon 5 Apr 2027 (Cash): €40.00 Still to pay: €60.00');
    expect(first).toContain('This is not a tax invoice.');
    expect(linesOf(first).reduce((sum, line) => sum + line, 0)).toBe(10_000);
    expect(await pageOf(screens, `${PAT}/bill`)).toContain(
      'Since then: Price €90.00 instead of €100.00. Paid €60.05 instead of €40.00.',
    );
    await screens.post(`${PAT}/bill`, {});
    const text = await pageOf(screens, PAT);
    expect(text).toMatch(/Bill 27-018\/1, Mon 5 Apr 2027: €100\.00 Bill 27-018\/2, Mon 5 Apr 2027: €90\.00/);
    expect(text).toContain('nothing has changed since');
    expect(await pageOf(screens, `${PAT}/bill/2`)).toContain('Still to pay: €29.95');
    expect((await screens.get(`${PAT}/bill/3`)).status).toBe(404);
  });

  test('is gone again once it is undone, and needs a price', async () => {
    const screens = await demoScreens();
    expect((await screens.post(`${PAT}/bill`, {})).status).toBe(422);
    await screens.post(`${PAT}/price`, { price: '100', deposit: '' });
    const place = (await screens.post(`${PAT}/bill`, {})).headers.get('location')!;
    expect((await screens.get(`${PAT}/bill/1`)).status).toBe(200);
    await screens.post('/undo', { change: /done=(\d+)/.exec(place)![1]! });
    expect((await screens.get(`${PAT}/bill/1`)).status).toBe(404);
  });

  test('has quotes beside it, also one that was given before all were kept', async () => {
    const screens = await demoScreens();
    const school = '/orders/27-010';
    expect(await pageOf(screens, `${school}/quote/1`)).toContain('2 × Planter 1200 x 600, two courses €860.00');
    await screens.post(`${school}/quote`, {});
    const text = await pageOf(screens, school);
    expect(text).toMatch(/Quote 27-010\/1, [^€]*€860\.00 Quote 27-010\/2, [^€]*€880\.00/);
    expect(await pageOf(screens, `${school}/quote/1`)).toContain('€860.00');
  });
});

describe('a quote', () => {
  test('lists what is asked, is no tax invoice, and tells later what has changed', async () => {
    const screens = await demoScreens();
    await screens.post(`${PAT}/price`, { price: '100', deposit: '' });
    const quote = await pageOf(screens, `${PAT}/quote`);
    expect(quote).toMatch(/2 × Panel 600 €(\d+\.\d\d) 1 × Panel 450 €(\d+\.\d\d) In all €100\.00/);
    const [, panels, panel] = /Panel 600 €([\d.]+) 1 × Panel 450 €([\d.]+)/.exec(quote)!;
    expect(Math.round(Number(panels) * 100) + Math.round(Number(panel) * 100)).toBe(10_000);
    expect(quote).toContain('This is not a tax invoice.');
    expect(await screens.textAfter(await screens.post(`${PAT}/quote`, {}))).toContain('nothing has changed since');
    await screens.post(`${PAT}/price`, { price: '90', deposit: '30' });
    const text = await pageOf(screens, PAT);
    expect(text).toContain('Since then: Price €90.00 instead of €100.00. Deposit €30.00 instead of none.');
  });

  test('is told from one that has another number of things in it', async () => {
    const screens = await demoScreens();
    await screens.post(`${PAT}/price`, { price: '100', deposit: '' });
    await screens.post(`${PAT}/quote`, {});
    const form = {
      customer: 'Pat Dunne',
      what0: 'casting:panel-600',
      quantity0: '5',
      slip: 'yes',
      what1: 'kit:trough',
      quantity1: '1',
    };
    expect((await screens.post(`${PAT}/edit`, form)).status).toBe(303);
    const text = await pageOf(screens, PAT);
    expect(text).toContain('Panel 600: 5 × instead of 2 ×.');
    expect(text).toContain('1 × Panel 450 is in it no longer.');
    expect(text).toContain('1 × Trough 900 x 450, one course is new.');
  });

  test('needs a price', async () => {
    const screens = await demoScreens();
    expect(await pageOf(screens, `${PAT}/quote`)).toContain('No quote yet: no price is said for Pat Dunne.');
    expect((await screens.post(`${PAT}/quote`, {})).status).toBe(422);
    expect((await screens.get('/orders/none/quote')).status).toBe(404);
  });
});

test('a bill says what was paid and what is left, and is no tax invoice', async () => {
  const bill = await pageOf(await demoScreens(), `${SCHOOL}/bill`);
  expect(bill).toContain('In all €880.00 Paid Sun 7 Mar 2027 (Bank): €260.00 Still to pay: €620.00');
  expect(bill.match(/This is not a tax invoice\./g)).toHaveLength(2);
});

test('Orders says who owes', async () => {
  const text = await pageOf(await demoScreens(), '/orders');
  expect(text).toContain('27-010 · 2 × Planter 1200 x 600, two courses · €620.00 owing');
  expect(text).toContain('Tom Keane owes €150.00: handed over Sat 3 Apr.');
});

test('on the sheet of paper of an order there is no money', async () => {
  const html = await (await (await demoScreens()).get(SCHOOL)).text();
  const [before = '', ...rest] = html.split('<section class="no-print order-money"');
  const after = rest.join('').split('</section>').slice(1).join('');
  expect(rest).toHaveLength(1);
  expect(before + after).not.toContain('€');
});
