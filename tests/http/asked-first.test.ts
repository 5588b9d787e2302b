import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const textOf = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');

/* Kept by a phone without a signal, they would be shown to nobody when they are sent, and would do nothing. */
test('what Today shows before it does it never waits for a signal', () => {
  const shownFirst = [
    ...textOf('src/http/today-routes.tsx').matchAll(/^ {2}'?([\w-]+)'?: \{\s*save: (?:effectFirst|slipFirst)\b/gm),
  ].map(([, name = '']) => name);
  const neverWait = /const ASKED_FIRST = \/\^\\\/today\\\/\(([^)]*)\)\$\//.exec(textOf('views/assets/acts.js'))?.[1];
  expect(shownFirst.length).toBeGreaterThan(4);
  expect(neverWait?.split('|')).toEqual(shownFirst.sort());
});
