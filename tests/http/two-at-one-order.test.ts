import { describe, expect, test } from 'vitest';
import { openOrders } from '../../db/stores/order-store.ts';
import { screensOver, textOf } from '../support/screens.ts';

const EDIT = '/orders/27-001/edit';

/** The fields of a form as a browser would send them. */
const fieldsIn = (html: string): Record<string, string> => {
  const form = /<form class="form" id="order".*?<\/form>/s.exec(html)?.[0] ?? '';
  const unescaped = (text: string) => text.replaceAll('&quot;', '"').replaceAll('&#39;', "'").replaceAll('&amp;', '&');
  const inputs = [...form.matchAll(/<input([^>]*)>/g)].flatMap(([, tag = '']): [string, string][] => {
    const [name, type] = [/name="([^"]*)"/.exec(tag)?.[1], /type="([^"]*)"/.exec(tag)?.[1]];
    if (!name || (type === 'radio' && !/ checked/.test(tag))) return [];
    return [[name, unescaped(/value="([^"]*)"/.exec(tag)?.[1] ?? '')]];
  });
  const selects = [...form.matchAll(/<select([^>]*)>(.*?)<\/select>/gs)].map(
    ([, tag = '', options = '']): [string, string] => [
      /name="([^"]*)"/.exec(tag)?.[1] ?? '',
      /<option value="([^"]*)" selected/.exec(options)?.[1] ?? '',
    ],
  );
  const note = /<textarea[^>]*>(.*?)<\/textarea>/s.exec(form)?.[1] ?? '';
  return Object.fromEntries([...inputs, ...selects, ['note', unescaped(note)]]);
};

/** Two people open the form of one order; the first saves it with something changed. */
const twoForms = async (first: Record<string, string>) => {
  const screens = await screensOver();
  const [mine, theirs] = [
    fieldsIn(await (await screens.get(EDIT)).text()),
    fieldsIn(await (await screens.get(EDIT)).text()),
  ];
  expect(mine.version).toContain('School garden');
  const saved = await screens.post(EDIT, { ...theirs, ...first, seen: 'any' });
  expect([200, 303]).toContain(saved.status);
  const order = async () => (await screens.database.read((tx) => openOrders(tx)))[0]!;
  return { ...screens, mine, order };
};

describe('an order that two people change at one time', () => {
  test('tells the second one what the first changed, takes it over where it was left alone, and loses nothing', async () => {
    const { post, mine, order } = await twoForms({ note: 'Gate code 4', phone: '020 910 0136' });
    const answer = await post(EDIT, { ...mine, note: 'Ring first' });
    expect(answer.status).toBe(422);
    expect(await order()).toMatchObject({ note: 'Gate code 4' });
    const html = await answer.text();
    const text = await textOf(new Response(html));
    expect(text).toContain('This order was changed while you did.');
    expect(text).toContain('It was changed to "Gate code 4" meanwhile. What you typed still stands here.');
    expect(text).toContain('It was changed meanwhile, from nothing.');
    const again = fieldsIn(html);
    expect([again.note, again.phone]).toEqual(['Ring first', '020 910 0136']);
    expect((await post(EDIT, again)).status).toBe(303);
    const saved = await order();
    expect([saved.note, saved.customer?.phone]).toEqual(['Ring first', '020 910 0136']);
  });

  test('is saved at once by the second where nobody changed it meanwhile', async () => {
    const { get, post, order } = await twoForms({ note: 'Gate code 4' });
    const fresh = fieldsIn(await (await get(EDIT)).text());
    expect((await post(EDIT, { ...fresh, note: 'Ring first' })).status).toBe(303);
    expect(await order()).toMatchObject({ note: 'Ring first' });
  });

  test.each(['no version', '{"lines":[null]}', '{"lines":[],"note":1}', 'null'])(
    'with %s as what it was filled in from is refused, and nothing is lost',
    async (version) => {
      const { post, mine, order } = await twoForms({ note: 'Gate code 4' });
      const answer = await post(EDIT, { ...mine, note: 'Ring first', version });
      expect(answer.status).toBe(422);
      expect(await answer.text()).toContain('Ring first');
      expect(await order()).toMatchObject({ note: 'Gate code 4' });
    },
  );
});
