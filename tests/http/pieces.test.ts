import { describe, expect, test } from 'vitest';
import { screensOver, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

const base = smallYard();
const yard = { ...base, finished: [{ casting: 'panel-900', count: 3 }] };
const count = (counted: string, was = '3') => ({ casting: 'panel-900', counted, was });

describe('pieces in the yard', () => {
  test('are there with whom the plan has them for', async () => {
    const { get } = await screensOver(yard);
    const text = await textOf(await get('/pieces'));
    expect(text).toMatch(/^3 pieces in the yard, (each for an order|\d of them for nobody yet)\./);
    expect(text).toContain('3 in the yard.');
  });

  test('are as many as were counted, until that is undone', async () => {
    const { get, post, textAfter } = await screensOver(yard);
    const answer = await post('/pieces/counted', count('5'));
    const change = new URL(answer.headers.get('Location')!, 'http://x').searchParams.get('done')!;
    const text = await textAfter(answer);
    expect(text).toMatch(/^.* counted: 5 in the yard, not 3\. Undo/);
    expect(text).toContain('5 pieces in the yard');
    await post('/undo', { change, back: '/pieces' });
    expect(await textOf(await get('/pieces'))).toMatch(/^3 pieces/);
  });

  test.each([
    ['', '3', 'How many are there? Write a whole number.'],
    ['2.5', '3', 'How many are there? Write a whole number.'],
    ['3', '3', 'The book says so already.'],
    ['5', '4', 'The book was changed meanwhile: it has 3 now.'],
    ['99999', '3', 'More than 10,000 is not taken.'],
  ])('counted "%s" where the page had %s: %s', async (counted, was, message) => {
    const { post } = await screensOver(yard);
    const refused = await post('/pieces/counted', count(counted, was));
    expect(refused.status).toBe(422);
    expect(await textOf(refused)).toContain(message);
  });
});
