import { expect, test } from 'vitest';
import { isInUs } from '../../src/http/browser-region.ts';

test.each(['en-US', 'en-US,en;q=0.9', ' es-US ;q=1, en', 'en-Latn-US'])('"%s" is in the US', (languages) =>
  expect(isInUs(languages)).toBe(true),
);

test.each([undefined, '', '*', 'en', 'en-GB,en-US;q=0.8', 'fr-CA', 'not a language'])('"%s" is not', (languages) =>
  expect(isInUs(languages)).toBe(false),
);
