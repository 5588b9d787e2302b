import { expect, test } from 'vitest';
import { setUnits } from '../../db/stores/units-store.ts';
import { screensOver, textOf } from '../support/screens.ts';

const partial = { 'HX-Request-Type': 'partial' };

test('a day that is typed is read by the yard, whatever the field is called', async () => {
  const { get, database } = await screensOver();
  const read = async (query: string) => textOf(await get(`/day?${query}`, partial));
  expect(await read('of=wantedOn&wantedOn=5/6')).toBe('That is Sat 5 Jun 2027, with the day first.');
  await database.write((tx) => setUnits(tx, 'US'));
  expect(await read('of=on&on=5/6')).toBe('That is Thu, May 6, 2027, with the month first.');
  expect(await read('of=on&on=31+Apr')).toBe(
    '31 Apr does not exist. Write a day like May 8, Sat, May 8 or 2027-05-08.',
  );
  expect(await read('of=on&on=%3Cb%3E')).toContain('"<b>" is no day.');
  expect(await read('of=on&on=')).toBe('');
  expect(await read('')).toBe('');
});

test('what the address says was read is read again, and nothing else is shown from it', async () => {
  const { get, post } = await screensOver();
  const answer = await post('/orders', { what0: 'kit:pair', quantity0: '1', wantedOn: '5/6', note: '7/8' });
  expect(answer.headers.get('Location')).toBe('/orders/27-002?done=1&read=5%2F6');
  const text = await textOf(await get('/orders/27-002?done=1&read=5%2F6&read=Buy+now&read=13%2F5'));
  expect(text).toContain('5/6 was read as Sat 5 Jun 2027, with the day first.');
  expect(text).not.toContain('Buy now');
  expect(text).not.toContain('13/5');
});
