import { describe, expect, test } from 'vitest';
import { orderById } from '../../db/stores/order-store.ts';
import { screensOn, screensOver, textOf } from '../support/screens.ts';
import { yardInSpells } from '../support/yard-in-spells.ts';

/** The hidden fields of the form whose button says that an order is packed. */
const packForm = (html: string): Record<string, string> => {
  const form = html.split('<form').find((one) => one.includes('acked: School garden"')) ?? '';
  const fields = form.matchAll(/<input type="hidden" name="([^"]+)" value="([^"]*)"/g);
  return Object.fromEntries([...fields].map(([, name, value]) => [name!, value!]));
};

describe('an order that is packed over two sessions', () => {
  test('says so on its page, and how it could be split', async () => {
    const { get } = await screensOver(yardInSpells());
    const text = await textOf(await get('/orders/27-001'));
    expect(text).toContain('Sat 10 Apr, 8:00: pack, 240 of 360 minutes of it.');
    expect(text).toContain('Sat 17 Apr, 10:00: pack, 120 of 360 minutes of it.');
    expect(text).toContain('No session is long enough to pack all of it, so it is packed over several.');
    expect(text).toContain('Split it into two');
  });

  test('is packed with a tap on each Saturday, and keeps what was packed', async () => {
    const { database, get: look } = await screensOver(yardInSpells());
    await look('/orders');
    const at = (now: string) => screensOn(database, now);
    const first = at('2027-04-10T12:00:00+01:00');
    const page = await (await first.get('/today')).text();
    const text = await textOf(new Response(page));
    expect(text).toContain('Begin packing for School garden 240 of 360 minutes of it. It goes on Sat 17 Apr.');
    expect(text).toContain('This much packed');
    const after = await first.textAfter(await first.post('/today/packed', packForm(page)));
    expect(after).toContain('Packed for School garden, 240 minutes of it.');
    expect(after).toContain('Packed in part School garden, order 27-001: 240 of 360 minutes are done.');
    const order = await textOf(await first.get('/orders/27-001'));
    expect(order).toContain(
      '240 of 360 minutes of its packing are done. To change or cancel it, unpack it on Today first.',
    );
    expect(order).toContain('Sat 17 Apr, 10:00: pack, 120 of 360 minutes of it.');

    const sheet = await textOf(await at('2027-04-16T12:00:00+01:00').get('/today/sheet'));
    expect(sheet).toContain('School garden (the last 120 of 360 minutes)');
    const last = at('2027-04-17T12:00:00+01:00');
    const then = await (await last.get('/today')).text();
    expect(await textOf(new Response(then))).toContain('Go on packing for School garden The last 120 of 360 minutes.');
    expect(await last.textAfter(await last.post('/today/packed', packForm(then)))).toContain(
      'Packed, to be handed over School garden',
    );
    expect(await database.read((tx) => orderById(tx, '27-001'))).toMatchObject({ packedMinutes: null });
  });

  test('may have been packed for another time than planned', async () => {
    const { database, get: look } = await screensOver(yardInSpells());
    await look('/orders');
    const { get, post, textAfter } = screensOn(database, '2027-04-10T12:00:00+01:00');
    const fields = packForm(await (await get('/today')).text());
    const odd = await post('/today/packed', { ...fields, minutes: 'an hour' });
    expect(odd.status).toBe(422);
    expect(await textOf(odd)).toContain('How many minutes? Write a whole number, 1 to 10000.');
    expect(await textAfter(await post('/today/packed', { ...fields, minutes: '60' }))).toContain(
      '60 of 360 minutes are done.',
    );
  });

  test('is unpacked on Today when some of it is packed', async () => {
    const { database, get: look } = await screensOver(yardInSpells());
    await look('/orders');
    const { get, post, textAfter } = screensOn(database, '2027-04-10T12:00:00+01:00');
    await post('/today/packed', packForm(await (await get('/today')).text()));
    const after = await textAfter(await post('/today/unpacked', { order: '27-001' }));
    expect(after).toContain('Unpacked for School garden.');
    expect(after).not.toContain('Packed in part');
  });
});
