import { describe, expect, it } from 'vitest';
import {
  activationKelvinOf,
  adjustedAgeDays,
  adjustedAgeRate,
  nurseSaulDegreeHours,
  nurseSaulHours,
} from '../../../src/engine/cure/maturity.ts';
import { EN_1992_S, en1992Ratio } from '../../../src/engine/cure/strength.ts';

describe('Nurse-Saul maturity, ASTM C1074, eq 1', () => {
  // From restatements of ASTM C1074, which name no edition; each was worked out again from eq 1.
  it('has the worked numbers that go with the method', () => {
    // 28 days at 15 °C, T0 -11 °C: 728 °C days.
    expect(nurseSaulDegreeHours([{ hours: 28 * 24, celsius: 15 }], -11) / 24).toBe(728);
    // 3500 °C h at 23 °C, T0 0 °C: 152 h, exactly 152.17.
    expect(nurseSaulHours(3500, 23, 0)!.toFixed(2)).toBe('152.17');
    // 3500 °C h in 3 days: 49 °C, exactly 48.61.
    expect((3500 / nurseSaulHours(1, 1, 0)! / 72).toFixed(2)).toBe('48.61');
    expect(nurseSaulDegreeHours([{ hours: 72, celsius: 48.61 }], 0)).toBeCloseTo(3500, 0);
  });
  it('has the numbers worked out from the formula, for both datum temperatures', () => {
    const dayAt20 = [{ hours: 24, celsius: 20 }];
    expect([nurseSaulDegreeHours(dayAt20, 0), nurseSaulDegreeHours(dayAt20, -10)]).toEqual([480, 720]);
    const halves = [
      { hours: 12, celsius: 20 },
      { hours: 12, celsius: 10 },
    ];
    expect([nurseSaulDegreeHours(halves, 0), nurseSaulDegreeHours(halves, -10)]).toEqual([360, 600]);
  });
  it('counts nothing below the datum, and never comes of age there', () => {
    const frost = [
      { hours: 12, celsius: 10 },
      { hours: 12, celsius: -5 },
    ];
    expect(nurseSaulDegreeHours(frost, 0)).toBe(120);
    expect(nurseSaulHours(100, 0, 0)).toBeNull();
  });
});

describe('temperature-adjusted age, CEB-FIP MC90 eq 2.1-87 = fib MC2010 eq 5.1-85 = EN 1992-1-1:2004 eq B.10', () => {
  it.each([
    [0, 0.3671],
    [5, 0.4778],
    [10, 0.6161],
    [15, 0.7875],
    [20, 0.9981],
    [25, 1.2551],
    [30, 1.5662],
    [35, 1.9406],
    [40, 2.388],
    [60, 5.1448],
  ])('at %i °C counts %f', (celsius, factor) => expect(adjustedAgeRate(celsius)).toBeCloseTo(factor, 4));

  const spans = [
    { hours: 12, celsius: 30 },
    { hours: 12, celsius: 10 },
    { hours: 24, celsius: 5 },
  ];
  it('adds up a record, and gives the age for the strength curve', () => {
    // 0.7831 + 0.3081 + 0.4778 = 1.5690 days of age in 2.0 days; in eq 3.2 of EN 1992-1-1:2004, class N: 0.4466.
    expect(spans.map((span) => adjustedAgeDays([span])!.toFixed(4))).toEqual(['0.7831', '0.3081', '0.4778']);
    expect(adjustedAgeDays(spans)!.toFixed(4)).toBe('1.5690');
    expect(en1992Ratio(adjustedAgeDays(spans)!, EN_1992_S.N).toFixed(4)).toBe('0.4466');
  });
  it('says nothing outside 0 to 80 °C', () => {
    expect([adjustedAgeRate(-0.1), adjustedAgeRate(80.1)]).toEqual([null, null]);
    expect(adjustedAgeDays([...spans, { hours: 1, celsius: -2 }])).toBeNull();
  });
});

it('turns measured activation energies into Q (Barnett et al 2006, Cem Concr Res: 34 and 60 kJ/mol)', () => {
  // "Near 4090 and 7220 K".
  expect([34, 60].map((energy) => Math.round(activationKelvinOf(energy) / 10) * 10)).toEqual([4090, 7220]);
});
