import { describe, expect, test } from 'vitest';
import { createApp } from '../../src/http/app.ts';
import { FRIDAY, fixedYard, SATURDAY_START } from '../support/fixed-yard.ts';
import { textOf } from '../support/screens.ts';

const onFriday = async () => {
  const { friday } = await fixedYard();
  const app = createApp({ database: friday.database, now: () => FRIDAY });
  const get = async (path: string) => textOf(await app.request(path));
  const post = async (path: string, form: Record<string, string>) =>
    app.request(path, { method: 'POST', body: new URLSearchParams(form) });
  const pageAfter = async (answer: Response) => get(answer.headers.get('Location') ?? '/missing');
  return { get, post, pageAfter };
};

describe('what is fixed of the next session', () => {
  test('is said on Today and on the first page, a day before it begins', async () => {
    const { get } = await onFriday();
    expect(await get('/today')).toContain('Saturday is fixed. Its mixes and pours stay as they are');
    expect(await get('/')).toContain('The next session Sat 10 Apr, 8:00 to 12:00. Saturday is fixed.');
  });

  test('is planned anew when asked, and that is undone', async () => {
    const { post, pageAfter, get } = await onFriday();
    const answer = await post('/today/planned-anew', { session: SATURDAY_START });
    expect(await pageAfter(answer)).toContain('Sat 10 Apr replanned. Undo No date moved.');
    const undone = await post('/undo', { change: '1', back: '/today' });
    expect(await pageAfter(undone)).toContain('Undone: Sat 10 Apr replanned.');
    expect(await get('/today')).toContain('Saturday is fixed.');
  });

  test('begins at another hour when the yard says so', async () => {
    const { post, pageAfter } = await onFriday();
    const text = await pageAfter(await post('/today/fixed-hours', { hours: '6' }));
    expect(text).toContain('Sessions are fixed 6 hours before they begin. Undo');
    expect(text).toContain('A session is fixed 6 hours before it begins');
    expect(text).not.toContain('Saturday is fixed.');
  });

  test.each([
    ['/today/planned-anew', { session: '2027-04-24T08:00:00+01:00' }, 'Nothing is fixed for that session any more.'],
    ['/today/fixed-hours', { hours: 'a day' }, 'How many hours? Write a whole number, 0 to 336.'],
    ['/today/fixed-hours', { hours: '400' }, 'How many hours? Write a whole number, 0 to 336.'],
  ])('%s with %j is refused in words', async (path, form, message) => {
    const { post } = await onFriday();
    const answer = await post(path, form as Record<string, string>);
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain(message);
    // On Today itself, where it was asked for, with what was typed.
    expect(html).toContain('aria-current="page">Today');
    if ('hours' in form) expect(html).toContain(`value="${form.hours}"`);
  });
});
