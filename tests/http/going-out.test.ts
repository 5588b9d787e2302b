import { expect, test } from 'vitest';
import { demoScreens, textOf } from '../support/screens.ts';

test('what goes out on a day is there with its pieces, what they weigh, and in how many loads', async () => {
  const { get } = await demoScreens();
  const parts = await (await get('/going-out')).text();
  // The first in the demo is a box of clips: nothing to lift.
  expect(parts).toContain('16 × Corner clip');
  expect(parts).not.toMatch(/heaviest|0 kg/);
  const days = [...parts.matchAll(/href="\/going-out\?on=(\d{4}-\d\d-\d\d)"/g)].map(([, day]) => day);
  const text = await textOf(await get(`/going-out?on=${days[0]}&payload=60+kg`));
  expect(text).toMatch(/^1 order goes out .* kg\./);
  expect(text).toContain('The heaviest piece is');
  expect(text).toMatch(/(One load, not|loads, none) over 60 kg\./);
  expect(text).toContain('Panels stacked on edge topple');
  expect(text).toContain('25 kg (55 lb)');
});

test('where an order is taken is typed with it, and stands on its page and on the loading list, with its notes', async () => {
  const { get, post } = await demoScreens();
  const form = await (await get('/orders/27-010/edit')).text();
  expect(form).toMatch(/name="address"[^>]*value="The school, Church Lane, by the back gate"/);
  expect(await textOf(await get('/orders/27-010'))).toContain('Goes to The school, Church Lane, by the back gate');
  const filled = { what0: 'kit:planter', quantity0: '1', customer: 'Pat Dunne', slip: 'yes' };
  const taken = await post('/orders', { ...filled, address: ' 4 Mill Road ' });
  const page = new URL(taken.headers.get('Location') ?? '', 'http://x').pathname;
  expect(await textOf(await get(page))).toContain('Goes to 4 Mill Road');
  const list = await textOf(await get('/going-out?on=2027-05-01'));
  expect(list).toMatch(/Goes to: The school, Church Lane, by the back gate Gate is locked until 8\.45\..*Opening day/);
});

test('a day without any is said so, and a payload that cannot be read is told at its field', async () => {
  const { get } = await demoScreens();
  expect(await textOf(await get('/going-out?on=2027-04-06'))).toMatch(/^Nothing goes out tomorrow\./);
  const answer = await get('/going-out?on=2027-04-17&payload=heavy');
  expect(answer.status).toBe(422);
  expect(await answer.text()).toContain('id="payload-error"');
});

test('where a kit may hold earth it is said that no height is safe, on its page, its form, that of its order and the quote', async () => {
  const { get, post } = await demoScreens();
  await post('/orders/27-010/price', { price: '300', deposit: '' });
  const SIZE = '/kits/by-size?length=1235&width=635&courses=2&ground=80';
  for (const path of [SIZE, '/yard/kits/planter', '/orders/27-010', '/orders/27-010/quote']) {
    const text = await textOf(await get(path));
    expect(text).toMatch(/no height is said to be safe/i);
    expect(text).toMatch(/Ask someone (who is )?licensed/);
  }
});
