import { describe, expect, test } from 'vitest';
import { FoundAnswer, isSearching, searchQuery } from '../../../views/parts/find-form.tsx';

describe('what was looked for', () => {
  test('stands in the address, and all of it does not', () => {
    expect(searchQuery({ find: 'Ann & Co', which: 'no date' })).toBe('?find=Ann+%26+Co&which=no+date');
    expect(searchQuery({ find: '', which: 'all' })).toBe('');
    expect([isSearching({ find: '', which: 'all' }), isSearching({ find: '', which: 'late' })]).toEqual([false, true]);
  });

  test.each([
    [3, 12, 'ann', 'that are late', 'Three of 12 orders found.', 'Looked for “ann”, only those that are late.'],
    [1, 1, 'ann', '', 'One of one order found.', 'Looked for “ann”.'],
    [0, 12, '', 'that are late', 'No order found.', 'Looked for only those that are late.'],
  ])('%d of %d: %s %s', async (count, all, find, which, answer, note) => {
    const props = { search: { find, which: which && 'late' }, count, all, which, what: 'order', path: '/orders' };
    const html = String(await FoundAnswer(props));
    expect(html).toContain(`<h1>${answer}</h1>`);
    expect(html.replace(/&#34;|&quot;/g, '"')).toContain(note);
    expect(html).toContain('<a href="/orders">Show all orders</a>');
  });
});
