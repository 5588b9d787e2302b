import { describe, expect, test } from 'vitest';
import { updateMould } from '../../db/stores/mould-store.ts';
import { LONGEST_NAME, LONGEST_NOTE } from '../../shared/text-limits.ts';
import { orderToTake } from '../../src/http/api/shapes.ts';
import { mostLetters } from '../../src/usecases/typed/text-limits.ts';
import { DEMO_PAGES } from '../support/demo-pages.ts';
import { formsIn, type PageForm } from '../support/page-form.ts';
import { demoScreens, screensOver, type TestScreens, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

/** Forms of the demo with free text in them, one of each kind. */
const formsWithText = async (demo: TestScreens): Promise<PageForm[]> => {
  const forms = new Map<string, PageForm>();
  for (const path of DEMO_PAGES.filter((one) => !one.includes('?')))
    for (const form of formsIn(await (await demo.get(path)).text()))
      if (form.texts.some((name) => mostLetters(name) !== null))
        forms.set(form.texts.join(), { ...form, action: form.action || path });
  return [...forms.values()];
};

test('a free text that is too long is refused at its field in every form, and all of it is given back', async () => {
  const demo = await demoScreens();
  const forms = await formsWithText(demo);
  expect(forms.length).toBeGreaterThan(12);
  const wrong: string[] = [];
  for (const { action, fields, texts } of forms) {
    const limited = texts.filter((name) => mostLetters(name) !== null);
    const long = Object.fromEntries(limited.map((name) => [name, 'x'.repeat(mostLetters(name)! + 1)]));
    const answer = await demo.post(action, { ...fields, ...long });
    const html = await answer.text();
    if (answer.status !== 422) wrong.push(`${action} answers ${answer.status}`);
    for (const [name, text] of Object.entries(long)) {
      if (!html.includes(`data-fault="${name}"`)) wrong.push(`${action} does not say so at ${name}`);
      if (!html.includes(text)) wrong.push(`${action} loses ${name}`);
    }
  }
  expect(wrong).toEqual([]);
}, 60_000);

describe('a text that is longer than that, from before there was a limit', () => {
  const NAME = 'Long Lane Allotments and Gardens '.repeat(3).trim();
  const NOTE = 'Said once, and\nwritten down at length. '.repeat(80).trim();
  const base = smallYard();
  const old = () =>
    screensOver({
      ...base,
      castings: base.castings.map((one) => ({ ...one, name: NAME })),
      moulds: [{ ...base.moulds[0]!, id: `${NAME} no. 1` }, base.moulds[1]!],
      orders: base.orders.map((one) => ({ ...one, customer: NAME })),
    });

  test('is read, and is saved with something else of the form', async () => {
    const { get, post, textAfter } = await old();
    expect(NAME.length).toBeGreaterThan(LONGEST_NAME);
    const [form] = formsIn(await (await get('/yard/panels/panel-900')).text());
    expect(form!.fields.name).toBe(NAME);
    const saved = await post('/yard/panels/panel-900', { ...form!.fields, cleanMinutes: '7' });
    expect(await textAfter(saved)).toContain(NAME);
    const path = `/yard/moulds/${encodeURIComponent(`${NAME} no. 1`)}`;
    const [mould] = formsIn(await (await get(path)).text());
    expect(await textAfter(await post(path, { ...mould!.fields, note: 'Once more.' }))).toContain('Once more.');
  });

  test('is refused as soon as it is another one', async () => {
    const { get, post } = await old();
    const [form] = formsIn(await (await get('/yard/panels/panel-900')).text());
    const saved = await post('/yard/panels/panel-900', { ...form!.fields, name: `${NAME}!` });
    expect(saved.status).toBe(422);
    expect(await textOf(saved)).toContain('That is too long. 60 letters are the most.');
  });

  test('is left alone with its line ends, however a browser ends lines', async () => {
    const { database, get, post, textAfter } = await old();
    expect(NOTE.length).toBeGreaterThan(LONGEST_NOTE);
    await database.write((tx) => updateMould(tx, '900 no. 2', { note: NOTE }));
    const path = '/yard/moulds/900%20no.%202';
    const [mould] = formsIn(await (await get(path)).text());
    const sent = { ...mould!.fields, note: NOTE.replaceAll('\n', '\r\n'), turnsSinceOil: '1' };
    await textAfter(await post(path, sent));
    const refused = await post(path, { ...sent, note: `${NOTE}!` });
    expect(await textOf(refused)).toContain('That is too long. 2,000 letters are the most.');
  });
});

test('the JSON interface has the same limits, each at its place', () => {
  const order = { lines: [{ what: 'kit:pair', quantity: 1 }] };
  const faults = (more: object) =>
    orderToTake
      .safeParse({ ...order, ...more })
      .error?.issues.map(({ path, message }) => `${path.join('.')}: ${message}`);
  expect(faults({ customer: 'x'.repeat(60), note: 'x'.repeat(2000) })).toBeUndefined();
  expect(faults({ customer: 'x'.repeat(61), note: 'x'.repeat(2001) })).toEqual([
    'customer: That is too long. 60 letters are the most.',
    'note: That is too long. 2,000 letters are the most.',
  ]);
});
