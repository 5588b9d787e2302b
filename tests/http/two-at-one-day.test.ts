import { describe, expect, test } from 'vitest';
import { onTheirWay } from '../../db/stores/material-store.ts';
import { orderById } from '../../db/stores/order-store.ts';
import { formsIn } from '../support/page-form.ts';
import { plannedYard } from '../support/planned-yard.ts';
import { screensOver, type TestScreens, textOf } from '../support/screens.ts';

/** A form of a page as it stands. */
const formOf = async ({ get }: TestScreens, path: string, action: string): Promise<Record<string, string>> => {
  const form = formsIn(await (await get(path)).text()).find((one) => one.action === action);
  if (!form) throw new Error(`There is no form ${action} on ${path}.`);
  return { ...form.fields };
};

/** Sends a form, and once more with what it asks about. */
const sent = async ({ post }: TestScreens, path: string, form: Record<string, string>): Promise<Response> => {
  const answer = await post(path, form);
  const seen = /name="seen" value="([^"]+)"/.exec(await answer.clone().text())?.[1];
  return seen ? post(path, { ...form, seen }) : answer;
};

describe('a date that two people give at one time', () => {
  const [page, promise, hold] = ['/orders/27-001', '/orders/27-001/promise', '/orders/27-001/hold'];
  const stored = ({ database }: TestScreens) => database.read((tx) => orderById(tx, '27-001'));

  test('is told to the second one, who has it so when it is sent again', async () => {
    const screens = await screensOver();
    const mine = await formOf(screens, page, promise);
    const theirs = { ...mine, promisedOn: '17 Apr 2027', heldUntil: '12 Apr 2027' };
    expect((await sent(screens, hold, theirs)).status).toBe(303);
    const answer = await sent(screens, promise, { ...mine, promisedOn: '24 Apr 2027' });
    expect(answer.status).toBe(422);
    expect(await stored(screens)).toMatchObject({ promisedOn: '2027-04-17', heldUntil: '2027-04-12' });
    const html = await answer.text();
    const text = await textOf(new Response(html));
    expect(text).toContain('It was changed to Sat 17 Apr meanwhile. What you typed still stands here');
    expect(text).toContain('It was changed to Mon 12 Apr meanwhile.');
    const again = formsIn(html).find(({ action }) => action === promise)!.fields;
    expect(again.promisedOn).toBe('24 Apr 2027');
    expect((await sent(screens, promise, { ...again })).status).toBe(303);
    expect(await stored(screens)).toMatchObject({ promisedOn: '2027-04-24', heldUntil: null });
  });

  test('is no news where both give the same', async () => {
    const screens = await screensOver();
    const mine = { ...(await formOf(screens, page, promise)), promisedOn: '17 Apr 2027' };
    expect((await sent(screens, promise, mine)).status).toBe(303);
    expect((await sent(screens, promise, mine)).status).toBe(303);
  });
});

test('a delivery that two people move is told to the second one', async () => {
  const incoming = [{ material: 'mortar', quantity: 4, on: '2027-04-09' }];
  const screens = await screensOver(plannedYard({ incoming }));
  const path = '/buying/new-day';
  const mine = await formOf(screens, '/buying', path);
  expect((await sent(screens, path, { ...mine, on: '16 Apr 2027' })).status).toBe(303);
  const answer = await screens.post(path, { ...mine, on: '14 Apr 2027' });
  expect(answer.status).toBe(422);
  const html = await answer.text();
  expect(html).toContain('It was changed to Fri 16 Apr meanwhile.');
  const again = formsIn(html).find(({ action, fields }) => action === path && fields.on === '14 Apr 2027')!.fields;
  expect((await sent(screens, path, { ...again })).status).toBe(303);
  expect((await screens.database.read(onTheirWay)).map(({ on }) => on)).toEqual(['2027-04-14']);
});
