import { expect, test } from 'vitest';
import { oldText } from '../../../views/parts/server-away.tsx';

test.each([
  [0, 'less than a minute old'],
  [1, '1 minute old'],
  [119, '119 minutes old'],
  [120, '2 hours old'],
])('what is shown %i minutes after the server was heard of is said to be %s', (minutes, text) => {
  expect(oldText(minutes)).toBe(text);
});
