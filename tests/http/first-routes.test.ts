import { describe, expect, test } from 'vitest';
import { createApp } from '../../src/http/app.ts';
import { type Compute, computeWithoutThread } from '../../src/usecases/core/computations.ts';
import { randomYard } from '../support/random-yard.ts';
import { DEMO_NOW, demoScreens, screensOver, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

const saturdays = (end: string) => [{ rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '08:00', end }];

/*
 * The small yard by hand, with Saturdays from 8:00 to 11:30. The order that is there takes both moulds of 900 on Saturday
 * 10 April: prepared by 8:24, mixed by 8:34, filled by 8:41 and 8:48, stripped from 9:56 (75 minutes on) to 10:04. That
 * mould is clean and prepared again by 10:22, mixed for by 10:32, filled by 10:39 and could be stripped at 11:54: too
 * late, so one panel more is ready on the Saturday after. In a third mould it is filled in a second batch before 9:30 and
 * stripped before 11:30. By 10:30 there is no time even for that.
 */
describe('the first page', () => {
  test('answers with the date and the moulds that hold it up', async () => {
    // On the Monday: a mould begun now is built and sealed by Thursday.
    const yard = { ...smallYard().yard, now: '2027-04-05T09:00:00+01:00' };
    const { get } = await screensOver(smallYard({ yard, work: saturdays('11:30') }));
    const text = await textOf(await get('/?what=casting:panel-900&number=1&holds=yes'));
    expect(text).toContain('1 × Panel 900: ready Sat 17 Apr. Held up by: 900 moulds.');
    expect(text).toContain('One more 900 mould: Sat 10 Apr, 7 days sooner.');
  });

  test('finds out what holds the date only once that is looked at, and by a link without script', async () => {
    const { get } = await screensOver();
    const whole = await (await get('/?what=kit:pair&number=1')).text();
    expect(whole).toContain('href="/?what=kit%3Apair&amp;number=1&amp;holds=yes"');
    expect(whole).toContain('data-hx-trigger="intersect once delay:300ms, click"');
    const live = { 'HX-Request-Type': 'partial' };
    const soon = await (await get('/?what=kit:pair&number=1', live)).text();
    expect(soon).toContain('data-hx-get="/?what=kit%3Apair&amp;number=1&amp;holds=yes"');
    const later = await (await get('/?what=kit:pair&number=1&holds=yes', live)).text();
    expect(later).not.toContain('holds=yes');
    expect(later).toContain('data-hx-get="/two-at-once?what=kit%3Apair&amp;number=1"');
  });

  // A yard on which no mould and no hand alone brings the date so far forward as both do.
  test('finds out by hand what two changes at once would bring, on a page of its own or in place', async () => {
    const yard = randomYard(1010, 'typical');
    const { get } = await screensOver(yard);
    const path = `/two-at-once?what=${encodeURIComponent(`kit:${yard.kits[0]!.id}`)}&number=1`;
    const text = await textOf(await get(path));
    expect(text).toMatch(/^\w{3} \d+ \w{3} by today's plan, with two changes at once\./);
    expect(text).toMatch(/One more \S+ mould and one more pair of hands: .+ sooner\./);
    const part = await (await get(path, { 'HX-Request-Type': 'partial' })).text();
    expect(part).toMatch(/^<p>Two changes at once, where they bring more than one of them:<\/p><ul><li>/);
    const wrong = await get('/two-at-once?what=kit:pair&number=none');
    expect(wrong.status).toBe(422);
    expect(await textOf(wrong)).toMatch(/^Choose what is asked for, and how many\..*Back to the question$/);
  });

  test('names no moulds when more of them would not help', async () => {
    const { get } = await screensOver(smallYard({ work: saturdays('10:30') }));
    const text = await textOf(await get('/?what=casting:panel-900&number=1&holds=yes'));
    expect(text).toMatch(/ready Sat 17 Apr\. (?!Held up by: 900)/);
  });

  test('says why when it can never be made', async () => {
    const yard = smallYard();
    const moulds = yard.moulds.map((mould) => ({ ...mould, condition: 'retired' as const }));
    const { get } = await screensOver(smallYard({ moulds }));
    expect(await textOf(await get('/'))).toMatch(/: can't be made yet, because no usable mould makes/);
  });

  test.each([
    ['kit:pair', '', 'How many? Write a whole number'],
    ['kit:pair', '1.5', 'How many? Write a whole number'],
    ['kit:pair', '-3', 'How many? Write a whole number'],
    ['kit:pair', '0', 'How many? Has to be more than 0.'],
    ['kit:pair', '201', '200 is the most one line can ask for'],
    ['kit:pair', '999999999999', 'How many? Write a whole number'],
    ['kit:gone', '1', 'That is no longer made here'],
    ['nonsense', '1', 'Choose what is asked for.'],
    ['', '1', 'Choose what is asked for.'],
  ])('%j times %j is asked again, with what was typed', async (what, number, message) => {
    const { get } = await screensOver();
    const answer = await get(`/?${new URLSearchParams({ what, number })}`);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain(message);
    expect(html).toContain(`value="${number}"`);
  });

  test('gives a live question words in place of an error', async () => {
    const { get } = await screensOver();
    const answer = await get('/?what=kit:pair&number=', { 'HX-Request-Type': 'partial' });
    expect(answer.status).toBe(200);
    expect(await textOf(answer)).toContain('How many?');
  });

  test('shows the next session, what to buy and what is at risk', async () => {
    const { get } = await demoScreens();
    const text = await textOf(await get('/'));
    expect(text).toContain('The next session Today, Mon 5 Apr, 16:30 to 17:15. 17 Strip 1200 no. 1 and Coping no. 1');
    expect(text).toMatch(/Buy next \w{3} \d+ Apr: \d+/);
    expect(text).toMatch(/Late or at risk Nuala Byrne, promised Sat 3 Apr, \d+ days late\./);
  });

  test('in a yard with nothing in it says what is missing and what to do', async () => {
    const yard = smallYard({ kits: [], castings: [], moulds: [], orders: [], materials: [], mixes: [] });
    const { get } = await screensOver(yard);
    const text = await textOf(await get('/'));
    expect(text).toContain('There is nothing to make yet.');
    expect(text).toContain('No session has anything to do');
    expect(text).toContain('No order is open.');
  });
});

/* The same yard: one panel more on the 10th takes a place from the order of two, which is then a Saturday later. */
describe('a day that is wanted', () => {
  const asked = async (wantedOn: string, headers?: Record<string, string>) => {
    const { get } = await screensOver(smallYard({ work: saturdays('11:30') }));
    return get(`/?${new URLSearchParams({ what: 'casting:panel-900', number: '1', wantedOn })}`, headers);
  };

  test('is answered with a plain yes when it can be kept', async () => {
    const text = await textOf(await asked('2027-04-24'));
    expect(text).toContain('Yes, Sat 24 Apr can be kept, and no promised date moves.');
  });

  test('is answered with every date that it would push, and by how much', async () => {
    expect(await textOf(await asked('2027-04-10'))).toContain(
      'Sat 10 Apr could be kept, but a promised date would get later: ' +
        'School garden: Sat 10 Apr to Sat 17 Apr, 7 days later.',
    );
  });

  test('is answered with no when even before everything else it would be later', async () => {
    expect(await textOf(await asked('2027-04-09'))).toContain(
      "No, Fri 9 Apr can't be kept: even before everything else it would be later.",
    );
  });

  test('that has passed is said to have passed', async () => {
    expect(await textOf(await asked('2027-04-07'))).toContain('Wed 7 Apr has passed.');
  });

  test('that does not exist is asked for again, with what was typed', async () => {
    const answer = await asked('2027-02-30');
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain('30 Feb 2027 does not exist.');
    expect(html).toContain('value="2027-02-30"');
  });

  test('asked live waits for what it would push until the answer stands', async () => {
    const live = { 'HX-Request-Type': 'partial' };
    const soon = await (await asked('2027-04-10', live)).text();
    expect(soon).toContain('What it would push is being looked at.');
    expect(soon).toContain('wantedOn=2027-04-10&amp;holds=yes');
  });

  test('goes with the question into the order that is taken', async () => {
    const { get } = await screensOver();
    const html = await (await get('/orders/new?what=kit:pair&number=1&wantedOn=2027-05-08')).text();
    expect(html).toMatch(/name="wantedOn"[^>]*value="2027-05-08"|value="2027-05-08"[^>]*name="wantedOn"/);
  });
});

test('what stands below the question is looked at again only while a better plan is looked for', async () => {
  const { database, get } = await demoScreens();
  const improving = {
    planMade: () => {},
    improving: () => true,
    compute: async () => null,
    computeForRequest: async () => null,
  };
  const busy = createApp({ database, now: () => DEMO_NOW, background: improving });
  expect(await (await busy.request('/')).text()).toContain('data-hx-get="/standing"');
  expect(await (await busy.request('/standing', { headers: { 'HX-Request-Type': 'partial' } })).text()).toMatch(
    /^<div id="standing"[^>]*data-hx-get="\/standing"/,
  );
  expect(await (await get('/standing', { 'HX-Request-Type': 'partial' })).text()).not.toContain('data-hx-get');
});

test('the page is there before its date, which arrives when it is ready; two who ask wait for one answer', async () => {
  const { database } = await demoScreens();
  const asked: string[] = [];
  let letGo: () => void = () => {};
  const held = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  const compute: Compute = async (kind, question) => {
    asked.push(kind);
    if (kind === 'quote') await held;
    return computeWithoutThread(kind, question);
  };
  const background = { planMade: () => {}, improving: () => false, compute, computeForRequest: compute };
  const app = createApp({ database, now: () => DEMO_NOW, background });
  const early = await Promise.all(['/', '/'].map(async (path) => (await app.request(path)).text()));
  for (const html of early) {
    expect(html).toContain('when it can be ready is being worked out');
    expect(html).toContain('The next session');
    // Without script the browser goes on to where it waits.
    expect(html).toMatch(
      /<noscript><meta http-equiv="refresh" content="0;url=\/\?what=[^"]+&amp;wait=yes"\/><\/noscript>/,
    );
  }
  const [, part] = /data-hx-get="(\/\?what=[^"]+)" data-hx-trigger="load"/.exec(early[0]!)!;
  const waiting = [`${part}&wait=yes`, part!].map((path, i) =>
    app.request(path.replaceAll('&amp;', '&'), i === 0 ? {} : { headers: { 'HX-Request-Type': 'partial' } }),
  );
  letGo();
  for (const answer of await Promise.all(waiting)) expect(await textOf(answer)).toMatch(/: ready \w{3} \d+ \w{3}/);
  expect(await textOf(await app.request('/'))).toMatch(/: ready \w{3} \d+ \w{3}/);
  expect(asked.filter((kind) => kind !== 'quick plan').sort()).toEqual(['quote', 'trips']);
});
