import { expect, test } from 'vitest';
import { rainText, readRain } from '../../../src/engine/units/rain.ts';

// NIST SP 811 (2008), appendix B: an inch is 25.4 mm.
test.each([
  ['8', 'metric', 8],
  ['0.5', 'US', 12.7],
  ['12 mm', 'US', 12],
  ['1 in', 'metric', 25.4],
] as const)('%s in a %s yard is %d mm of rain', (text, system, mm) => {
  expect(readRain(text, system)).toEqual({ ok: true, value: mm });
});

test('what is no rain is refused in words', () => {
  expect(readRain('some', 'metric')).toEqual({ ok: false, reason: expect.stringContaining('Write it like 8 mm.') });
});

test.each([
  [8, 'US', '0.31 in'],
  [8.25, 'metric', '8.3 mm'],
] as const)('%d mm in a %s yard is %s', (mm, system, text) => {
  expect(rainText(mm, system)).toBe(text);
});
