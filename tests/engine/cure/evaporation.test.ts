import { expect, test } from 'vitest';
import { evaporation } from '../../../src/engine/cure/evaporation.ts';

// Uno 1998, ACI Materials Journal 95-M34, recomputed by hand; beside it Menzel's equation (PCA 1954, from memory), of which it
// is the short form: within 8 % of each other at every point.
test.each([
  [25, 25, 50, 10, 0.4244, 0.4262],
  [30, 35, 40, 20, 0.9339, 0.914],
  [20, 10, 50, 15, 0.6486, 0.6271],
  [35, 30, 30, 25, 2.2709, 2.4084],
  [32, 32, 50, 16, 0.8839, 0.9104],
  [31, 27, 50, 19, 1.1517, 1.192],
])(
  'mortar %d °C, air %d °C, %d %%, %d km/h: %d kg/m²/h',
  (mortarCelsius, airCelsius, humidityPercent, windKmh, uno, menzel) => {
    const lost = evaporation({ mortarCelsius, airCelsius, humidityPercent, windKmh });
    expect(lost).toBeCloseTo(uno, 4);
    expect(Math.abs(lost / menzel - 1)).toBeLessThan(0.08);
  },
);

test('the example beside the chart of ACI 305R: 87 °F, 80 °F, 50 %, 12 mph, about 0.25 lb/ft² an hour (from memory)', () => {
  const celsius = (fahrenheit: number) => (fahrenheit - 32) / 1.8;
  const lost = evaporation({
    mortarCelsius: celsius(87),
    airCelsius: celsius(80),
    humidityPercent: 50,
    windKmh: 12 * 1.609344,
  });
  // 1 lb/ft² is 4.882 kg/m². A chart is read to about 0.02 lb.
  expect(Math.abs(lost / 4.882 - 0.25)).toBeLessThan(0.02);
});

test('where dew would fall nothing is lost, nor at any frost', () => {
  expect(evaporation({ mortarCelsius: 15, airCelsius: 30, humidityPercent: 90, windKmh: 5 })).toBe(0);
  expect(evaporation({ mortarCelsius: 20, airCelsius: 20, humidityPercent: 100, windKmh: 10 })).toBe(0);
  expect(evaporation({ mortarCelsius: -30, airCelsius: -30, humidityPercent: 50, windKmh: 10 })).toBe(0);
});
