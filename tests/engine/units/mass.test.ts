import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { massText, readMass } from '../../../src/engine/units/mass.ts';

const kgOf = (text: string, system: 'metric' | 'US' = 'metric') => {
  const mass = readMass(text, system);
  if (!mass.ok) throw new Error(mass.reason);
  return mass.value;
};

describe('a typed mass', () => {
  // 1 lb = 0.45359237 kg exactly: NIST SP 811 (2008), B.8; NIST Handbook 44, appendix C.
  test.each([
    ['1 lb', 0.45359237],
    ['30 lbs', 13.6077711],
    ['30 pounds', 13.6077711],
    ['3 lb 4 oz', 1.4741752025], // 3.25 lb
    ['3 lb 4', 1.4741752025],
    ['16 oz', 0.45359237],
    ['25 kg', 25],
    ['25', 25],
    ['13,6 kg', 13.6],
    ['500 g', 0.5],
    ['1.5 t', 1500],
  ])('%j is %f kg', (text, kg) => {
    expect(kgOf(text)).toBe(kg);
  });
  test('without a unit is pounds in a yard that weighs so', () => {
    expect(kgOf('55', 'US')).toBe(24.94758035);
  });
  test('is refused in words', () => {
    expect(readMass('heavy', 'US')).toEqual({
      ok: false,
      reason: '"heavy" is not a weight. Write it like 55 lb or 25 kg.',
    });
    expect(readMass('25 mm', 'metric')).toMatchObject({ ok: false });
    expect(readMass('25 kg 2', 'metric')).toMatchObject({ ok: false });
  });
});

test('a mass written out reads back to within half a step', () => {
  expect([massText(13.6077711, 'metric'), massText(13.6077711, 'US')]).toEqual(['13.6 kg', '30 lb']);
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 50_000 }), (tenths) => {
      expect(kgOf(massText(tenths / 10, 'metric'))).toBe(tenths / 10);
      expect(massText(kgOf(massText(tenths / 10, 'US')), 'US')).toBe(massText(tenths / 10, 'US'));
    }),
  );
});
