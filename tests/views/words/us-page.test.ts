import { expect, test } from 'vitest';
import { usManifest, usPage } from '../../../views/words/us-page.ts';

test.each([
  ['<a href="/moulds">Moulds</a>', '<a href="/moulds">Molds</a>'],
  ['<p title="grey" class="grey" id="mould-1">grey</p>', '<p title="gray" class="grey" id="mould-1">gray</p>'],
  [
    '<input type="text" value="grey mould" placeholder="8 May">',
    '<input type="text" value="grey mould" placeholder="May 8">',
  ],
  ['<input type="time" value="14:30">', '<input type="time" value="14:30">'],
  [
    '<input name="on" class="day" type="text" value="Sat 8 May 2027">',
    '<input name="on" class="day" type="text" value="Sat, May 8, 2027">',
  ],
  ['<textarea name="note">grey</textarea>', '<textarea name="note">grey</textarea>'],
  [
    '<textarea id="m" readonly="">Ready Sat 8 May</textarea>',
    '<textarea id="m" readonly="">Ready Sat, May 8</textarea>',
  ],
  ['<script>const grey = 1;</script>', '<script>const grey = 1;</script>'],
  ['<text x="3" data-hour="true">13</text><text>13</text>', '<text x="3" data-hour="true">1</text><text>13</text>'],
  ['<html lang="en-GB">', '<html lang="en-US">'],
])('of %s only what people read changes', (british, us) => expect(usPage(british, [])).toBe(us));

test('what the yard typed is found as it stands in a page', () => {
  expect(usPage('<p>Tom&#39;s mould &amp; Co: mould</p>', ["Tom's mould & Co"])).toBe(
    '<p>Tom&#39;s mould &amp; Co: mold</p>',
  );
});

test('a manifest keeps its addresses', () => {
  expect(usManifest('{"lang": "en","shortcuts": [{ "name": "Moulds", "url": "/moulds" }]}')).toBe(
    '{"lang": "en-US","shortcuts": [{ "name": "Molds", "url": "/moulds" }]}',
  );
});
