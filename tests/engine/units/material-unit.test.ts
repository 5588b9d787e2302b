import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { UnitSystem } from '../../../shared/units.ts';
import { readAmount, shownUnit } from '../../../src/engine/units/material-unit.ts';

const amountOf = (text: string, unit: string, system: UnitSystem = 'metric'): number => {
  const amount = readAmount(text, unit, system);
  if (!amount.ok) throw new Error(amount.reason);
  return amount.value;
};

describe('the unit that is shown', () => {
  // Exact by definition, NIST SP 811 (2008), appendix B, and NIST Handbook 44, appendix C: 1 lb = 0.45359237 kg = 16 oz,
  // 1 US qt = 0.946352946 l = 32 fl oz, 1 US fl oz = 29.5735295625 ml, 1 in = 25.4 mm, 1 ft2 = 0.09290304 m2.
  test.each([
    ['kg', 'lb', 1, 0.45359237],
    ['g', 'oz', 1, 28.349523125],
    ['l', 'qt', 1, 0.946352946],
    ['ml', 'fl oz', 1, 29.5735295625],
    ['mm', 'in', 1, 25.4],
    ['m', 'ft', 1, 0.3048],
    ['m2', 'sq ft', 1, 0.09290304],
  ])('of %s is %s in a US yard: %d of it is %f', (unit, word, one, kept) => {
    const shown = shownUnit(unit, 'US');
    expect(shown.word).toBe(word);
    expect(kept * shown.perUnit).toBeCloseTo(one, 12);
    expect(amountOf(`${one} ${word}`, unit)).toBe(kept);
    expect(amountOf(String(one), unit, 'US')).toBe(kept);
    expect(shownUnit(unit, 'metric')).toEqual({ word: unit, perUnit: 1 });
  });

  test.each(['bag', 'each', 'sheet', 'stick', ''])('of "%s" is the word itself', (unit) => {
    expect(shownUnit(unit, 'US')).toEqual({ word: unit, perUnit: 1 });
  });

  test('of what is kept in pounds is kilograms in a metric yard', () => {
    expect(shownUnit('lb', 'metric')).toEqual({ word: 'kg', perUnit: 0.45359237 });
    expect(shownUnit('Lbs.', 'US')).toEqual({ word: 'Lbs.', perUnit: 1 });
    expect(shownUnit('Litres', 'US').word).toBe('qt');
  });
});

describe('a typed amount', () => {
  test.each<[string, string, UnitSystem, number]>([
    ['700', 'g', 'metric', 700],
    ['0.7 kg', 'g', 'US', 700],
    ['2 lb', 'g', 'metric', 907.18474],
    ['1 lb 8 oz', 'kg', 'US', 0.680388555],
    ['24 fl oz', 'ml', 'metric', 709.7647095],
    ['2,5', 'bag', 'metric', 2.5],
    ['1 1/2', 'bag', 'US', 1.5],
    ['3 bags', 'bag', 'US', 3],
    ['1 bag', 'bags', 'US', 1],
    ['6 m²', 'm2', 'US', 6],
    ['6m2', 'm2', 'US', 6],
    ['65 ft2', 'm2', 'metric', 6.0386976],
  ])('%j of what is kept in %s, in a %s yard, is %f', (text, unit, system, kept) => {
    expect(amountOf(text, unit, system)).toBe(kept);
  });

  test.each([
    ['two', 'bag', '"two" is no number. Write it like 12 or 2.5.'],
    ['-3', 'bag', '"-3" is no number. Write it like 12 or 2.5.'],
    ['2 lb', 'bag', '"2 lb" is no number. Write it like 12 or 2.5.'],
    ['1,234', 'bag', '"1,234" is no number. "1,234" could be 1234 or 1.234. Write it without the comma.'],
    ['a pinch', 'g', '"a pinch" is not a weight. Write it like 12 g or 2.5 oz.'],
    ['3 l', 'g', '"l" is not a unit for a weight here. Write it like 12 g or 2.5 oz.'],
  ])('%j of what is kept in %s is refused', (text, unit, reason) => {
    expect(readAmount(text, unit, 'metric')).toEqual({ ok: false, reason });
  });

  test('written in the unit shown reads back to what it was, to 12 figures', () => {
    const units = fc.constantFrom('kg', 'g', 'l', 'ml', 'mm', 'm', 'm2', 'lb', 'oz', 'qt', 'bag');
    fc.assert(
      fc.property(
        units,
        fc.constantFrom<UnitSystem>('metric', 'US'),
        fc.integer({ min: 1, max: 1e6 }),
        (unit, system, n) => {
          const [kept, { word, perUnit }] = [n / 100, shownUnit(unit, system)];
          const back = amountOf(`${(kept * perUnit).toFixed(12)} ${word}`, unit, system);
          expect(Math.abs(back - kept)).toBeLessThan(1e-9);
        },
      ),
    );
  });

  test('typed in one system is what the same amount is in the other', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100_000 }), (ounces) => {
        expect(amountOf(`${ounces} oz`, 'g', 'metric')).toBe(amountOf(String(ounces), 'g', 'US'));
      }),
    );
  });
});
