import { describe, expect, test } from 'vitest';
import { demoScreens, screensOver, textOf } from '../support/screens.ts';
import { sentAsShown } from '../support/sent-as-shown.ts';

const query = (changes: Record<string, string> = {}) =>
  new URLSearchParams({
    shape: 'rectangle',
    faces: 'outside',
    length: '1835',
    width: '935',
    courses: '3',
    ground: '100',
    ...changes,
  });
const at = (changes: Record<string, string> = {}) => `/kits/by-size?${query(changes)}`;
const partial = { 'HX-Request-Type': 'partial' };

describe('the page of kits by size', () => {
  test('answers first, then shows everything the kit takes', async () => {
    const { get } = await demoScreens();
    const answer = await get(at({ payload: '200' }));
    expect(answer.status).toBe(200);
    const text = await textOf(answer);
    expect(text).toMatch(
      /^1835 mm by 935 mm takes 18 panels and six pins\. Outside 1835 mm by 935 mm, inside 1765 mm by 865 mm/,
    );
    expect(text).toContain('Panel 900 18 13.5 kg 243 kg');
    expect(text).toContain(
      'Six pins of 700 mm: four at the corners and two at joints. 600 mm for the courses, 100 mm into the ground.',
    );
    expect(text).toContain('36 sleeves of 190 mm, cut from Sleeve pipe 20 mm, 3 m when the panels are cast.');
    expect(text).toContain('Two loads, none over 200 kg.');
    expect(text).toContain('they say when to look closer and are no legal limits. Your local rules come first.');
  });

  test('draws each course that differs, to scale, with the same facts as a table', async () => {
    const { get } = await demoScreens();
    const html = await (await get(at())).text();
    expect(html.match(/<svg class="kit-plan"/g)).toHaveLength(2);
    expect(html).toContain('aria-label="Courses 1 and 3 from above: 1835 by 935 millimetres outside"');
    // Six panels and six pins to a course.
    expect(html.match(/class="plan-panel"/g)).toHaveLength(12);
    expect(html.match(/class="plan-pin"/g)).toHaveLength(12);
    // From the side every course is drawn.
    expect(html.match(/<svg class="kit-from-side"/g)).toHaveLength(1);
    expect(html).toContain('From the side, from the top down');
    expect(await textOf(await get(at()))).toContain(
      'Courses 1 and 3, side by side Side Panels Top 2 × 900 Right 900 Bottom 2 × 900 Left 900',
    );
  });

  test('keeps what was typed, and starts with a size that can be made', async () => {
    const { get } = await demoScreens();
    expect(await (await get(at({ length: `6' 1/4"` }))).text()).toContain('value="6&#39; 1/4&quot;"');
    expect(await textOf(await get('/kits/by-size'))).toMatch(/^1235 mm by 935 mm takes eight panels and four pins\./);
  });

  test('says what can be made instead, with a link to each', async () => {
    const { get } = await demoScreens();
    const answer = await get(at({ length: '1800' }));
    const html = await answer.clone().text();
    expect(await textOf(answer)).toMatch(
      /^1800 mm by 935 mm can't be made from these panels\. 1835 mm by 935 mm can\./,
    );
    const href = /<a href="(\/kits\/by-size\?[^"]*)">1835 mm by 935 mm<\/a>/.exec(html)?.[1]?.replaceAll('&amp;', '&');
    expect(await textOf(await get(href ?? ''))).toMatch(/^1835 mm by 935 mm takes 18 panels/);
  });

  test('says what could not be read, at the field and first of all', async () => {
    const { get } = await demoScreens();
    const answer = await get(at({ length: 'long', courses: '0' }));
    expect(answer.status).toBe(422);
    const text = await textOf(answer);
    expect(text).toMatch(/^Length: "long" is not a length\. Write it like/);
    expect(text).toContain('How many courses? Write a whole number from 1 to 12.');
    const live = await get(at({ length: 'long' }), partial);
    expect(live.status).toBe(200);
    expect(await live.text()).toContain('data-hx-swap-oob="true"');
  });

  test('sends the answer and the rest, and no form, while the form is filled in', async () => {
    const { get } = await demoScreens();
    const html = await (await get(at(), partial)).text();
    expect(html).toMatch(/^<div id="kit-answer" aria-live="polite" data-hx-swap-oob="true">/);
    expect(html).toContain('id="kit-found"');
    expect(html).not.toContain('class="kit-form"');
  });

  test('asks for the sizes of panels where none is known', async () => {
    const { get } = await screensOver();
    expect(await textOf(await get('/kits/by-size'))).toMatch(/^No panel has a size yet\./);
  });
});

describe('adding the kit', () => {
  test('leads back to its size, where it is known and can be asked for', async () => {
    const { post, textAfter } = await demoScreens();
    const answer = await post('/kits/by-size', { ...Object.fromEntries(query()), name: 'Long bed', packMinutes: '45' });
    const text = await textAfter(answer);
    expect(text).toContain('Long bed added to the kits.');
    expect(text).toContain('Ask when it could be ready');
  });

  test('or to the first page, with the kit chosen and its date', async () => {
    const { post, get, textAfter } = await demoScreens();
    const answer = await post('/kits/by-size', { ...Object.fromEntries(query()), name: 'Long bed', next: 'ask' });
    expect(answer.headers.get('Location')).toMatch(/^\/\?what=kit%3Along-bed&number=1&done=\d+$/);
    const html = await (await get(answer.headers.get('Location') ?? '')).text();
    expect(html).toContain('<option value="kit:long-bed" selected');
    expect(await textAfter(answer)).toMatch(/\w{3} \d+ \w{3}\./);
  });

  test('is refused with everything that was typed', async () => {
    const { post } = await demoScreens();
    const form = { ...Object.fromEntries(query()), name: 'Trough 900 x 450, one course' };
    const answer = await post('/kits/by-size', form);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain('There is a kit of that name. Give it another.');
    expect(html).toContain('value="Trough 900 x 450, one course"');
    // Once: what was typed for adding it is no part of the size.
    expect(html.match(/name="name"/g)).toHaveLength(1);
  });
});

describe('panel sizes', () => {
  test('are written down with the rest of a piece, and an old bookmark of them leads there', async () => {
    const { get } = await screensOver();
    const answer = await get('/kits/panels');
    expect([answer.status, answer.headers.get('Location')]).toEqual([301, '/yard/panels']);
    expect(await textOf(await get('/yard/panels'))).toContain('Size not given Weight 13.6 kg Cast from Thin panel mix');
  });

  test('make kits of a piece once they are given, and no longer once they are taken out', async () => {
    const { get, post } = await screensOver();
    const path = '/yard/panels/panel-900';
    const give = async (size: Record<string, string>) =>
      post(path, { ...sentAsShown(await (await get(path)).text()), ...size });
    expect((await give({ length: '900', height: '200', thickness: '35' })).status).toBe(303);
    expect(await textOf(await get('/kits/by-size'))).toContain('Made from Panel 900.');
    expect((await give({ length: '', height: '', thickness: '' })).status).toBe(303);
    expect(await textOf(await get('/kits/by-size'))).toMatch(/^No panel has a size yet\./);
  });

  test('are shown in the units of the yard, whatever they were typed in', async () => {
    const { get, post } = await demoScreens();
    const shown = sentAsShown(await (await get('/yard/about')).text());
    expect((await post('/yard/about', { ...shown, system: 'US' })).status).toBe(303);
    // 1235 mm is 48 10/16 in to the nearest sixteenth, 935 mm 36 13/16 in.
    expect(await textOf(await get('/kits/by-size'))).toMatch(
      /^4 ft 5\/8 in by 3 ft 13\/16 in takes eight panels and four pins\./,
    );
  });
});

test('an order shows how its kits stand', async () => {
  const { get } = await demoScreens();
  const list = await (await get('/orders')).text();
  const paths = [...new Set([...list.matchAll(/href="(\/orders\/\d\d-\d+)"/g)].map(([, path]) => path ?? ''))];
  const pages = await Promise.all(paths.map(async (path) => (await get(path)).text()));
  const planter = pages.find((html) => html.includes('<h2>Planter 1200 x 600, two courses</h2>'));
  expect(planter).toContain('aria-label="Course 1 from above: 1235 by 635 millimetres outside"');
  // An order for parts alone has nothing to draw.
  expect(pages.some((html) => !html.includes('kit-plan'))).toBe(true);
});

test('which panels are meant is no free text: whoever named a mix at length is not told to shorten it', async () => {
  const { post } = await demoScreens();
  const panels = `${'a-mix-that-is-named-at-length-'.repeat(3)} 190 35`;
  const answer = await post('/kits/by-size', { ...Object.fromEntries(query()), panels, name: 'Long wall' });
  expect([answer.status, answer.headers.get('Location')]).toEqual([303, expect.stringContaining('/kits/by-size?')]);
});
