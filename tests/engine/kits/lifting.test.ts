import { expect, test } from 'vitest';
import { liftingOf } from '../../../src/engine/kits/lifting.ts';

// HSE INDG143 rev 4 (01/20): 25 kg (seen), 16 kg (from memory); two people, L23: (25 + 25) x 2/3 = 33.3 kg (from memory).
// 13.6 and 22.7 kg are a thin and a thicker 0.91 m panel; a 63 kg panel is beyond any single person (common practice).
test.each([
  [13.6, 'one'],
  [16, 'one'],
  [16.1, 'one with care'],
  [22.7, 'one with care'],
  [25, 'one with care'],
  [25.1, 'two'],
  [33.3, 'two'],
  [33.4, 'more'],
  [63, 'more'],
])('%f kg: %s', (kg, lifting) => {
  expect(liftingOf(kg)).toBe(lifting);
});
