import { describe, expect, test } from 'vitest';
import { faultsOn, formsIn, seenOn } from './page-form.ts';

const FORM = `<form method="get" action="/"><input name="find"/></form>
<form method="post" action="/today/poured" class="pour-form">
  <input type="hidden" name="bags" value="1.5"/><input type="hidden" name="mould0" value="900 &quot;no. 1&quot;"/>
  <input type="checkbox" name="filled0" value="yes" checked=""/><input type="checkbox" name="filled1" value="yes"/>
  <select name="order"><option value="">Stock</option><option value="27-001" selected="">School &amp; garden</option></select>
  <input name="who" value="Ann"/><input name="seen" value="3" readonly=""/><textarea name="note" rows="3">as planned</textarea>
  <button type="button" hidden="">Calendar</button>
  <button type="submit" class="button plain">Poured</button>
  <button type="submit" name="at" value="2027-04-10T09:30:00+01:00" formaction="/elsewhere">Poured at 9:30</button>
</form>`;

describe('A form of a page', () => {
  test('is read as a browser would send it, as it stands', () => {
    expect(formsIn(FORM).map(({ action, fields }) => ({ action, fields }))).toEqual([
      {
        action: '/today/poured',
        fields: {
          bags: '1.5',
          mould0: '900 "no. 1"',
          filled0: 'yes',
          order: '27-001',
          who: 'Ann',
          seen: '3',
          note: 'as planned',
        },
      },
    ]);
  });

  test('knows which of its fields take any text', () => {
    expect(formsIn(FORM)[0]?.texts).toEqual(['who', 'note']);
  });

  test('has the buttons that send it, each with what it adds and where it leads', () => {
    expect(formsIn(FORM)[0]?.buttons).toEqual([
      { words: 'Poured', value: '' },
      { words: 'Poured at 9:30', name: 'at', value: '2027-04-10T09:30:00+01:00', action: '/elsewhere' },
    ]);
  });
});

test('What a page says was wrong is given in its own words', () => {
  const html = '<main><p class="error" id="mould">900 no. 1 is out of use.</p><p>More.</p></main>';
  expect(faultsOn(html)).toBe('900 no. 1 is out of use.');
});

test('What a page asks about before it saves is known by its name, and a page that asks nothing has none', () => {
  expect(seenOn('<button type="submit" name="seen" value="27-001 2027-04-17">Save anyway</button>')).toBe(
    '27-001 2027-04-17',
  );
  expect(seenOn(FORM)).toBeUndefined();
});
