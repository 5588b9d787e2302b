import { expect, test } from 'vitest';
import { readWind, windText } from '../../../src/engine/units/wind.ts';

// NIST SP 811 (2008), appendix B: a mile is 1609.344 m, a nautical mile 1852 m.
test.each([
  ['20', 'metric', 20],
  ['12 mph', 'metric', 19.312128],
  ['10', 'US', 16.09344],
  ['20 km/h', 'US', 20],
  ['5 m/s', 'metric', 18],
  ['10 knots', 'metric', 18.52],
] as const)('%s in a %s yard is %d km/h', (text, system, kmh) => {
  expect(readWind(text, system)).toEqual({ ok: true, value: kmh });
});

test('what is no wind is refused in words', () => {
  expect(readWind('a breeze', 'metric')).toEqual({
    ok: false,
    reason: expect.stringContaining('Write it like 20 km/h.'),
  });
});

test.each([
  [16, 'US', '10 mph'],
  [19.6, 'metric', '20 km/h'],
] as const)('%d km/h in a %s yard is %s', (kmh, system, text) => {
  expect(windText(kmh, system)).toBe(text);
});
