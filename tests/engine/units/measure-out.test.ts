import { describe, expect, test } from 'vitest';
import { measureOutText } from '../../../src/engine/units/measure-out.ts';

describe('an amount to measure out', () => {
  test.each<[number, string, string]>([
    // Water for one, two and a half bags, 4.7 l each: common practice, no source.
    [4.7, 'l', '4.7 l'],
    [9.4, 'l', '9.4 l'],
    [2.35, 'l', '2.35 l'],
    [6.4389, 'l', '6.4 l'],
    [179.6, 'ml', '180 ml'],
    [0.0574, 'l', '55 ml'],
    [7.4, 'ml', '7 ml'],
    [0.9987, 'l', '1 l'],
    [0.0001, 'l', '1 ml'],
    [9.4, 'g', '9 g'],
    [114, 'g', '115 g'],
    [0.057, 'kg', '57 g'],
    [1.234, 'kg', '1.25 kg'],
    [12.46, 'kg', '12.5 kg'],
    [0.3, 'g', '0.3 g'],
  ])('%d %s is %s in a metric yard', (quantity, unit, text) => {
    expect(measureOutText(quantity, unit, 'metric')).toBe(text);
  });

  // 1 US qt = 32 fl oz = 0.946352946 l, 1 lb = 16 oz = 0.45359237 kg, by definition: NIST SP 811 (2008), appendix B.
  test.each<[number, string, string]>([
    [4.7, 'l', '5 qt less 2 fl oz'],
    [4.6, 'l', '5 qt less 4 fl oz'],
    [4.5, 'l', '4 qt 24 fl oz'],
    [5, 'qt', '5 qt'],
    [4.95, 'qt', '5 qt less 2 fl oz'],
    [180, 'ml', '6 fl oz'],
    [10, 'ml', '0.3 fl oz'],
    [0.946, 'l', '1 qt'],
    [57, 'g', '2 oz'],
    [9.4, 'g', '0.3 oz'],
    [1, 'kg', '2 lb 3.5 oz'],
    [453.5, 'g', '1 lb'],
  ])('%d %s is %s in a US yard', (quantity, unit, text) => {
    expect(measureOutText(quantity, unit, 'US')).toBe(text);
  });

  test.each([
    [2, 'bag'],
    [3, 'm'],
    [1, 'm2'],
    [0, 'l'],
  ])('%d %s is none', (quantity, unit) => {
    expect(measureOutText(quantity, unit, 'metric')).toBeNull();
  });
});
