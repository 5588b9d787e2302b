import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readTemperature, temperatureSaid, temperatureText } from '../../../src/engine/units/temperature.ts';

const celsiusOf = (text: string, system: 'metric' | 'US' = 'metric') => {
  const temperature = readTemperature(text, system);
  if (!temperature.ok) throw new Error(temperature.reason);
  return temperature.value;
};

describe('a typed temperature', () => {
  // t/°C = (t/°F - 32)/1.8 exactly: NIST SP 811 (2008), B.8. -40 is the same on both scales; water freezes at 32 °F.
  test.each([
    ['32 F', 0],
    ['212 °F', 100],
    ['-40 F', -40],
    ['−40 °F', -40],
    ['68 degrees Fahrenheit', 20],
    ['12 C', 12],
    ['12,5 °C', 12.5],
    ['12', 12],
    ['-2', -2],
    ['12 °', 12],
    ['+5 C', 5],
  ])('%j is %f °C', (text, celsius) => {
    expect(celsiusOf(text)).toBe(celsius);
  });
  test('without a scale is °F in a yard that uses it', () => {
    expect(celsiusOf('50', 'US')).toBe(10);
    expect(celsiusOf('10 C', 'US')).toBe(10);
  });
  test.each([
    ['', 'Nothing was written. Write it like 12 C or 54 F.'],
    ['mild', '"mild" is not a temperature.'],
    ['12 K', '"12 K" is not a temperature.'],
    ['-300 C', '"-300 C" is colder than anything can be.'],
    ['1,200 C', '"1,200" could be 1200 or 1.2.'],
  ])('%j is refused: %s', (text, reason) => {
    const temperature = readTemperature(text, 'metric');
    expect(temperature.ok ? '' : temperature.reason).toContain(reason);
  });
});

test('a temperature written out reads back as it was written', () => {
  expect([temperatureText(12, 'metric'), temperatureText(12, 'US')]).toEqual(['12 °C', '53.6 °F']);
  fc.assert(
    fc.property(fc.integer({ min: -500, max: 2000 }), (tenths) => {
      expect(celsiusOf(temperatureText(tenths / 10, 'metric'))).toBe(tenths / 10);
      expect(temperatureText(celsiusOf(temperatureText(tenths / 10, 'US')), 'US')).toBe(
        temperatureText(tenths / 10, 'US'),
      );
    }),
  );
});

test('a temperature that is only said is in whole degrees Fahrenheit, and in tenths Celsius', () => {
  // 4 °C are 39.2 °F, 20 °C 68 °F, by t/°F = 1.8 t/°C + 32: NIST SP 811 (2008), appendix B.
  expect([4, 20, -0.5].map((celsius) => temperatureSaid(celsius, 'US'))).toEqual(['39 °F', '68 °F', '31 °F']);
  expect(temperatureSaid(4.5, 'metric')).toBe('4.5 °C');
});
