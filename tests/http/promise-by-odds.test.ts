import { describe, expect, test } from 'vitest';
import { addWorkRecords } from '../../db/stores/work-record-store.ts';
import { fullDayWords } from '../../shared/day-words.ts';
import { readYardFile } from '../../shared/yard-file.ts';
import { quoteOrder } from '../../src/engine/quote/quote.ts';
import { besidePlan } from '../../src/plan-beside.ts';
import { exportYard } from '../../src/usecases/files/export-file.ts';
import { currentPlan } from '../../src/usecases/plan/make-plan.ts';
import { stripsBefore } from '../support/records.ts';
import { screensOn, screensOver, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';
import { yardContext } from '../support/yard-context.ts';

const LINES = [{ what: 'kit:pair', quantity: 2 }];
const ASKED = 'what=kit:pair&number=2';

/** The small yard with one session in hand, and half of all pieces scrap on its record. */
const recorded = async () => {
  const { yard } = smallYard();
  const context = await yardContext(smallYard({ yard: { ...yard, sessionsInHand: 1 } }));
  const half = { mould: '900 no. 1', casting: 'panel-900', every: 2 };
  await context.database.write((tx) => addWorkRecords(tx, stripsBefore('2027-04-08', half)));
  return { context, ...screensOn(context.database, context.now) };
};

describe('a date to promise', () => {
  test('goes by time in hand until enough is on record, and When? says so, and how sure it is when it is asked', async () => {
    const { yard } = smallYard();
    const { get } = await screensOver(smallYard({ yard: { ...yard, sessionsInHand: 1 } }));
    const text = await textOf(await get(`/?${ASKED}`));
    expect(text).toContain('With one session in hand');
    expect(text).toContain(
      'How sure is that day? A date to promise goes by its odds once 200 pieces and 100 days with work are on record (0 pieces and 0 days so far), and by time in hand until then.',
    );
    const [, offered] = /Pair of panels: ready (Sat \d+ \w+)\. With one session in hand/.exec(text) ?? [];
    const told = `${offered}, offered with one session in hand, is kept `;
    const page = await textOf(await get(`/how-sure?${ASKED}`));
    expect(page.startsWith(`2 × Pair of panels: ${told}`)).toBe(true);
    // The odds of that day are said once, and never as those of another day.
    expect(page.split(offered!)).toHaveLength(2);
    const part = await get(`/how-sure?${ASKED}`, { 'HX-Request-Type': 'partial' });
    expect(await part.text()).toContain(`<p><strong>${told}`);
    const wrong = await get('/how-sure?what=kit:pair&number=none');
    expect([wrong.status, (await textOf(wrong)).slice(0, 6)]).toEqual([422, 'Choose']);
  });

  test('is the first that is kept with the yard’s odds, the same on every page, for other programs and for a file', async () => {
    const { context, app, get, post, textAfter } = await recorded();
    const ready = async () =>
      (await (
        await app.request('/api/v1/ready', {
          ...{ method: 'POST', body: JSON.stringify({ lines: LINES }) },
          headers: { 'Content-Type': 'application/json' },
        })
      ).json()) as { earliestOn: string; promiseOn: string; promiseOdds: number };
    const { earliestOn, promiseOn, promiseOdds } = await ready();
    expect(promiseOdds).toBe(0.9);
    expect(promiseOn > earliestOn).toBe(true);
    const told = fullDayWords(promiseOn);
    const text = await textOf(await get(`/?${ASKED}`));
    expect(text).toContain(`ready ${told.replace(/ \d{4}$/, '')}. Kept 9 in 10 times, by the yard's record`);
    expect(text).toContain('if nothing goes wrong');
    expect(text).not.toContain('in hand');
    expect(await (await get(`/orders/new?${ASKED}`)).text()).toMatch(
      new RegExp(`name="promisedOn"[^>]* value="${told}"`),
    );
    const sure = await textOf(await get(`/how-sure?${ASKED}`));
    expect(sure).toContain(`${told.replace(/ \d{4}$/, '')}, the day offered, is the first kept 9 in 10 times or more.`);
    expect(sure).toContain('It depends most on rejects of 900 no. 1.');

    const read = readYardFile(JSON.parse((await exportYard(context)).text));
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    const order = { id: 'asked', weight: 1, lines: [{ kit: 'pair', quantity: 2 }] };
    const { plan, memory } = await currentPlan(context);
    const quote = quoteOrder(read.yard, order, { ...besidePlan(plan), ...(memory ? { memory } : {}) });
    expect(quote.promiseOn).toBe(promiseOn);
    expect(quote.odds?.map(({ share }) => share)).toEqual([0.5, 0.8, 0.9, 0.95]);
    expect(quote.odds?.[2]).toEqual({ share: 0.9, on: promiseOn });

    // An order that is taken without a date is offered one in the same way.
    const taken = { what0: 'kit:pair', quantity0: '2', customer: 'Brid Casey' };
    await textAfter(await post('/orders', taken));
    expect(await textOf(await get('/orders/27-002'))).toMatch(/is kept 9 in 10 times, by the yard's record\./);
  });

  test('comes sooner with lower odds, as the yard says', async () => {
    const { app, get, post, textAfter } = await recorded();
    const html = await (await get('/yard/about')).text();
    expect(html).toMatch(/<option value="0\.9" selected[^>]*>9 in 10 times/);
    const facts = { name: 'Small yard', timeZone: 'Europe/Dublin', system: 'metric', currency: 'EUR', weekStart: 'MO' };
    const figures = { sessionsInHand: '1', fixedHours: '24', horizonDays: '60', rackSpaces: '', mixers: '1' };
    const rest = { setUpMinutes: '0', clearUpMinutes: '0', batchWorthDays: '5', bagWorthDays: '0.5' };
    const form = {
      ...facts,
      ...figures,
      ...rest,
      'handoverDays:SA': 'yes',
      deliveryDaysInHand: '0',
      deliveredBy: '00:00',
    };
    expect(await textAfter(await post('/yard/about', { ...form, promiseOdds: '0.5' }))).toContain('Yard changed.');
    const asked = {
      method: 'POST',
      body: JSON.stringify({ lines: LINES }),
      headers: { 'Content-Type': 'application/json' },
    };
    const then = (await (await app.request('/api/v1/ready', asked)).json()) as Record<string, unknown>;
    expect(then.promiseOdds).toBe(0.5);
    const text = await textOf(await get(`/how-sure?${ASKED}`));
    const [, half, most] =
      /\w+ (\d+ \w+), the day offered, is the first kept 1 in 2 times.* 19 in 20 by \w+ (\d+ \w+)/.exec(text) ?? [];
    expect(Date.parse(`${half} 2027`)).toBeLessThan(Date.parse(`${most} 2027`));
    expect(await textOf(await get('/yard/goes-wrong'))).toContain('it is the first that is kept 1 in 2 times.');
  });
});
