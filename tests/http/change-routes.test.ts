import { describe, expect, test } from 'vitest';
import { createApp } from '../../src/http/app.ts';
import { FRIDAY, fixedYard } from '../support/fixed-yard.ts';
import { screensOver, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

const damage = { note: 'split', repairedOn: '', cameOut: '' };

describe('the changes', () => {
  test('of a new yard are none, and it says where they come from', async () => {
    const { get } = await screensOver();
    expect(await textOf(await get('/changes'))).toMatch(/^Nothing has been changed yet\. Whatever is recorded/);
  });

  test('are linked from the first page and the orders', async () => {
    const { get } = await screensOver();
    for (const path of ['/', '/orders']) expect(await (await get(path)).text()).toContain('href="/changes"');
  });

  test('stand under their day, with the event, the dates it moved, and a way to undo it', async () => {
    const { get, post, textAfter } = await screensOver(
      smallYard({
        orders: [{ id: '27-001', customer: 'School garden', due: '2027-04-17', lines: [{ kit: 'pair', quantity: 2 }] }],
      }),
    );
    await post('/moulds/900 no. 2/damaged', damage);
    const text = await textOf(await get('/changes'));
    expect(text).toContain('One change since Thu 8 Apr, and it moved a date that was given.');
    expect(text).toContain(
      'Today, Thu 8 Apr 9:00 900 no. 2 marked damaged. Undo School garden: Sat 17 Apr to Sat 24 Apr, 7 days later; 7 days after the date given.',
    );
    const undone = await textAfter(await post('/undo', { change: '1', back: '/changes' }));
    expect(undone).toContain('900 no. 2 marked damaged. This was taken back.');
    expect(undone).toContain('9:00 Undone: 900 no. 2 marked damaged. Undo School garden: Sat 24 Apr to Sat 17 Apr');
  });

  test('that are undone lead to the list where the page of what they brought is gone', async () => {
    const { get, post } = await screensOver();
    const taken = await post('/orders', { what0: 'kit:pair', quantity0: '1', customer: 'Pat Dunne', slip: 'yes' });
    const [, order, change] = /^(\/orders\/\S+)\?done=(\d+)$/.exec(taken.headers.get('Location') ?? '') ?? [];
    const undone = await post('/undo', { change: change!, back: order! });
    const gone = await get(undone.headers.get('Location') ?? '');
    expect(gone.status).toBe(303);
    const text = await textOf(await get(gone.headers.get('Location') ?? ''));
    expect(text).toMatch(/^Undone: Order \S+ for Pat Dunne taken\./);
    expect((await get(`${order}`)).status).toBe(404);
  });

  test('tell what moved by plan only apart from the dates given', async () => {
    const { get, post } = await screensOver(
      smallYard({
        orders: [
          { id: '27-001', customer: 'School garden', due: '2027-06-26', lines: [{ kit: 'pair', quantity: 2 }] },
          { id: '27-002', customer: 'Pat Dunne', lines: [{ kit: 'pair', quantity: 1 }] },
        ],
      }),
    );
    const answer = await post('/moulds/900 no. 2/damaged', damage);
    const said = await textOf(await get(answer.headers.get('Location') ?? ''));
    expect(said).toContain('moved, and no date given did.');
    const text = await textOf(await get('/changes'));
    expect(text).toContain('One change since Thu 8 Apr, and it moved no date that was given.');
    expect(text).toMatch(/\d orders? without a promise also moved (School garden|Pat Dunne): Sat \d+ Apr to Sat/);
  });

  test('say why something that was fixed could not stay', async () => {
    const { friday } = await fixedYard();
    const app = createApp({ database: friday.database, now: () => FRIDAY });
    await app.request('/moulds/900 no. 2/damaged', { method: 'POST', body: new URLSearchParams(damage) });
    expect(await textOf(await app.request('/changes'))).toMatch(
      /Saturday was fixed, but the mix at 8:25 for 900 no\. 1 and 900 no\. 2 could not stay: [^.]*900 no\. 2/,
    );
  });

  /* Its rod is three days away, and nobody orders it: each day the order is a day further off. */
  test('say what time alone moved, leave a notice of it, and offer no undo for it', async () => {
    const { materials, orders } = smallYard();
    const { database } = await screensOver(
      smallYard({
        materials: materials.map((one) => ({ ...one, onHand: one.id === 'rod' ? 0 : one.onHand })),
        orders: [{ ...orders[0]!, due: '2027-04-17' }],
      }),
    );
    const at = (now: string) => createApp({ database, now: () => now });
    await at('2027-04-08T07:30:00Z').request('/');
    const later = at('2027-04-15T07:30:00Z');
    const first = await textOf(await later.request('/'));
    expect(first).toMatch(/^A new day, Thu 15 Apr\. .* 7 days after the date given\. Dismiss/);
    const html = await (await later.request('/changes')).text();
    expect(await textOf(new Response(html))).toContain(
      'A new day, Thu 15 Apr. School garden: Sat 17 Apr to Sat 24 Apr, 7 days later; 7 days after the date given.',
    );
    expect(html).not.toContain('Undo: 1');

    // The clock was wrong: what it said of a day that has not come is told no more, but that it was wrong.
    const right = at('2027-04-08T08:00:00Z');
    expect(await textOf(await right.request('/'))).toMatch(
      /^The clock was put back to Thu 8 Apr\. School garden is ready Sat 17 Apr now[^.]*\. Dismiss(?!.*A new day)/,
    );
    expect(await textOf(await right.request('/changes'))).toMatch(
      /^Two changes since Thu 8 Apr\..*Today, Thu 8 Apr.*The clock was put back.*Thu 15 Apr, by a clock that was ahead/,
    );
  });

  test('are shown sixty at a time, the older ones by a link', async () => {
    const { get, post } = await screensOver();
    for (let change = 0; change < 61; change += 1) await post('/moulds/900 no. 2/sealed', {});
    const html = await (await get('/changes')).text();
    expect(html).toContain('href="/changes?before=2"');
    const older = await textOf(await get('/changes?before=2'));
    expect(older).toMatch(/^One change since Thu 8 Apr, and it moved no date that was given\./);
    expect(older).toContain('Newest changes');
  });
});

test('the notice of a change is looked at again while a better plan is looked for', async () => {
  const { database, now } = { ...(await fixedYard()).friday };
  const background = {
    planMade: () => {},
    improving: () => true,
    compute: async () => null,
    computeForRequest: async () => null,
  };
  const app = createApp({ database, now: () => now, background });
  const answer = await app.request('/moulds/900 no. 2/sealed', { method: 'POST', body: new URLSearchParams() });
  const html = await (await app.request(answer.headers.get('Location') ?? '')).text();
  expect(html).toContain('data-hx-get="/changes/1/notice"');
  // Only what it came to is shown again: the notice, which has the focus, and its button stay as they are.
  const part = await (await app.request('/changes/1/notice', { headers: { 'HX-Request-Type': 'partial' } })).text();
  expect(part).toMatch(/^<div class="notice-effect">/);
  expect(part).not.toContain('<form');
  const settled = createApp({ database, now: () => now });
  expect(await (await settled.request('/changes/1/notice')).text()).not.toContain('data-hx-get="/changes');
  expect((await settled.request('/changes/99/notice')).status).toBe(404);
});
