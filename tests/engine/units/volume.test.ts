import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readVolume, volumeText } from '../../../src/engine/units/volume.ts';

const litresOf = (text: string, system: 'metric' | 'US' = 'metric') => {
  const volume = readVolume(text, system);
  if (!volume.ok) throw new Error(volume.reason);
  return volume.value;
};

describe('a typed volume', () => {
  // 1 US qt = 57.75 in3 = 57.75 x 0.016387064 l = 0.946352946 l exactly: NIST Handbook 44, appendix C; NIST SP 811, B.8.
  test.each([
    ['1 qt', 0.946352946],
    ['5 US qt', 4.73176473], // the water of one bag, "4.7 l (5 US quarts)": common practice, no source
    ['1 gal', 3.785411784], // 231 in3
    ['1 fl oz', 0.0295735295625],
    ['32 fl. oz.', 0.946352946],
    ['1 gal 2 qt', 5.678117676],
    ['4.7 l', 4.7],
    ['4,7 litres', 4.7],
    ['750 ml', 0.75],
    ['4.7', 4.7],
  ])('%j is %f l', (text, litres) => {
    expect(litresOf(text)).toBe(litres);
  });
  test('without a unit is quarts in a yard that pours so', () => {
    expect(litresOf('5', 'US')).toBe(4.73176473);
  });
  test('is refused in words', () => {
    expect(readVolume('5 oz', 'US')).toEqual({
      ok: false,
      reason: '"oz" is not a unit for a volume here. Write it like 5 qt, 24 fl oz or 4.7 l.',
    });
  });
});

test('a volume written out reads back as it was written', () => {
  expect([volumeText(4.7, 'metric'), volumeText(4.7, 'US')]).toEqual(['4.7 l', '4.97 qt']);
  expect([volumeText(0.25, 'metric'), volumeText(0.25, 'US')]).toEqual(['250 ml', '8.5 fl oz']);
  fc.assert(
    fc.property(fc.integer({ min: 100, max: 50_000 }), (hundredths) => {
      expect(litresOf(volumeText(hundredths / 100, 'metric'))).toBe(hundredths / 100);
      expect(volumeText(litresOf(volumeText(hundredths / 100, 'US')), 'US')).toBe(volumeText(hundredths / 100, 'US'));
    }),
  );
});
