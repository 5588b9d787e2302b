import { expect, test } from 'vitest';
import { DayRead } from '../../../views/parts/day-field.tsx';
import { dayReadText } from '../../../views/parts/notice.tsx';

const textOf = async (typed: string, read: Parameters<typeof DayRead>[0]['read']) =>
  String((await DayRead({ typed, read })) ?? '').replace(/<[^>]+>/g, '');

test('how a day was read is said where it is written otherwise, and what is wrong with it always', async () => {
  expect(await textOf('5/6', { ok: true, date: '2027-06-05', order: 'day first' })).toBe(
    'That is Sat 5 Jun 2027, with the day first.',
  );
  expect(await textOf('8 May', { ok: true, date: '2027-05-08', order: null })).toBe('That is Sat 8 May 2027.');
  expect(await textOf('Sat 8 May 2027', { ok: true, date: '2027-05-08', order: null })).toBe('');
  expect(await textOf('31 Apr', { ok: false, reason: '31 Apr does not exist.' })).toBe('31 Apr does not exist.');
  expect(await textOf('', null)).toBe('');
});

test('after a form, too', () => {
  expect(dayReadText({ typed: '5/6', date: '2027-05-06', order: 'month first' })).toBe(
    '5/6 was read as Thu 6 May 2027, with the month first.',
  );
});
