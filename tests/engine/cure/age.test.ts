import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { ageingOf, ageRate } from '../../../src/engine/cure/age.ts';
import { climateOf } from '../../../src/engine/cure/climate.ts';
import {
  ageGained,
  calendar as auditCalendar,
  whenAged as auditWhenAged,
  weather,
} from '../../contract/audit-plan.mjs';
import { dateBetween } from '../../support/hours-yard.ts';

const dublin = calendarOf('Europe/Dublin');
const portland = { activationKelvin: 5000, referenceCelsius: 20 };
const at = minuteOf;

describe('equivalent age, ASTM C1074, eq 2 (from memory; factors worked out from the formula)', () => {
  // Q 5000 K is what C1074 suggests for Type I cement; Ts is 23 °C in North America, 20 °C in Europe.
  const celsius = [0, 5, 10, 15, 20, 23, 25, 30, 35, 40];
  it.each([
    [23, [0.2413, 0.3354, 0.4606, 0.6258, 0.8413, 1, 1.1199, 1.4768, 1.9299, 2.5006]],
    [20, [0.2868, 0.3986, 0.5475, 0.7438, 1, 1.1886, 1.3311, 1.7553, 2.2939, 2.9723]],
  ])('with reference %i °C', (reference, factors) => {
    expect(celsius.map((c) => Number(ageRate(c, 5000, reference).toFixed(4)))).toEqual(factors);
  });
  it('counts kelvin from 273.15, not 273', () => {
    // With 273 the factor at 40 °C, Ts 23 °C, is 2.5029.
    expect(ageRate(40, 5000, 23)).toBeCloseTo(2.5006, 4);
    expect(Math.exp(-5000 * (1 / 313 - 1 / 296))).toBeCloseTo(2.5029, 4);
  });
});

describe('through steps of temperature', () => {
  const climate = climateOf(
    {
      temperatures: [
        { from: '2027-04-01', celsius: 10 },
        { from: '2027-04-02', celsius: 20 },
      ],
    },
    dublin,
  );
  const ageing = ageingOf(portland, climate);
  const midnight = at('2027-04-02T00:00:00+01:00');
  it('adds up what each stretch is worth', () => {
    // 60 min at 10 °C count 32.85 (factor 0.5475, table above), 30 min at 20 °C count 30.
    expect(ageing.ageBetween(midnight - 60, midnight + 30)).toBeCloseTo(62.85, 2);
  });
  it('finds the first whole minute at which an age is reached', () => {
    // 75 min: 60 at 10 °C give 32.849, the other 42.151 take 42.151 min at 20 °C.
    expect(ageing.whenAged(midnight - 60, 75)).toBe(midnight + 43);
    // Wholly at 20 °C an hour is an hour; wholly at 10 °C 75 min take 75 / 0.54748 = 136.99.
    expect(ageing.whenAged(midnight, 60)).toBe(midnight + 60);
    expect(ageing.whenAged(midnight - 500, 75)).toBe(midnight - 500 + 137);
  });
  it('has any age of nothing at once', () => expect(ageing.whenAged(midnight, 0)).toBe(midnight));
});

describe('at the edges', () => {
  it('is at its own reference temperature where the yard expects none', () => {
    const ageing = ageingOf({ activationKelvin: 5000, referenceCelsius: 23 }, climateOf({ temperatures: [] }, dublin));
    expect(ageing.ageBetween(1000, 1075)).toBe(75);
    expect(ageing.whenAged(1000, 75)).toBe(1075);
    expect(ageing.whenAged(1000, 74.5)).toBe(1075);
  });
  it('never comes of age in a cold that stops it, and does so at once where it was warm enough before', () => {
    const frozen = climateOf(
      {
        temperatures: [
          { from: '2027-01-01', celsius: 20 },
          { from: '2027-01-02', celsius: -270 },
        ],
      },
      dublin,
    );
    const ageing = ageingOf(portland, frozen);
    const start = at('2027-01-01T23:00:00Z');
    expect(ageing.whenAged(start, 60)).toBe(start + 60);
    expect(ageing.whenAged(start, 61)).toBe(Number.POSITIVE_INFINITY);
  });
  it('is reached before a cold spell in which nothing is gained, not after it', () => {
    const spell = [
      { from: '2027-01-01', celsius: 20 },
      { from: '2027-01-02', celsius: -270 },
      { from: '2027-01-03', celsius: -271 },
      { from: '2027-01-04', celsius: 20 },
    ];
    const ageing = ageingOf(portland, climateOf({ temperatures: spell }, dublin));
    const start = at('2027-01-01T23:00:00Z');
    expect(ageing.whenAged(start, 60)).toBe(start + 60);
    // As old as it is when the cold begins, to the last bit: 60 min and the 1e-6 that count as nothing.
    expect(ageing.whenAged(start, 60 + 1e-6)).toBe(start + 60);
    expect(ageing.whenAged(start, 61)).toBe(at('2027-01-04T00:01:00Z'));
  });
  it('stays a number at temperatures nobody works at', () => {
    const ageing = ageingOf(
      { activationKelvin: 5000, referenceCelsius: -273.1 },
      climateOf({ temperatures: [{ from: '2027-01-01', celsius: 20 }] }, dublin),
    );
    expect(ageing.ageBetween(0, 0)).toBe(0);
    expect(ageing.whenAged(0, 1000)).toBe(1);
  });
});

const anyWeather = fc.array(
  fc.record({ from: dateBetween('2027-01-01', '2027-06-30'), celsius: fc.double({ min: -15, max: 45, noNaN: true }) }),
  { maxLength: 40 },
);
const anyMix = fc.record({
  activationKelvin: fc.integer({ min: 0, max: 9000 }),
  referenceCelsius: fc.constantFrom(15, 20, 23),
});
const anyFrom = fc.integer({ min: at('2026-12-20T00:00:00Z'), max: at('2027-07-10T00:00:00Z') });
const anyAge = fc.oneof(
  fc.integer({ min: 0, max: 600 }),
  fc.integer({ min: 0, max: 60_000 }),
  fc.double({ min: 0, max: 9000, noNaN: true }),
);

describe('on any weather and mix', () => {
  it('finds the first minute of an age: reached then, not yet a minute before', () => {
    fc.assert(
      fc.property(anyWeather, anyMix, anyFrom, anyAge, (steps, mix, from, age) => {
        const ageing = ageingOf(mix, climateOf({ temperatures: steps }, dublin));
        const when = ageing.whenAged(from, age);
        expect(when).toBeGreaterThanOrEqual(from);
        expect(ageing.ageBetween(from, when)).toBeGreaterThanOrEqual(age - 1e-6);
        if (when > from) expect(ageing.ageBetween(from, when - 1)).toBeLessThan(age - 1e-6);
      }),
      { numRuns: 3000 },
    );
  });
  it('gains in two stretches what it gains in one', () => {
    fc.assert(
      fc.property(anyWeather, anyMix, anyFrom, fc.nat(200_000), fc.nat(200_000), (steps, mix, from, first, second) => {
        const { ageBetween } = ageingOf(mix, climateOf({ temperatures: steps }, dublin));
        const parts = ageBetween(from, from + first) + ageBetween(from + first, from + first + second);
        const whole = ageBetween(from, from + first + second);
        expect(Math.abs(parts - whole)).toBeLessThanOrEqual(1e-9 * Math.max(1, whole));
      }),
      { numRuns: 2000 },
    );
  });
  it('agrees with the audit, which goes step by step', () => {
    const zone = auditCalendar('Europe/Dublin');
    fc.assert(
      fc.property(anyWeather, anyMix, anyFrom, fc.nat(200_000), anyAge, (steps, mix, from, minutes, anAge) => {
        // Without weather the audit takes an age as reached from 1e-9 minutes below it, with weather from 1e-6.
        const age = steps.length > 0 ? anAge : Math.round(anAge);
        const ageing = ageingOf(mix, climateOf({ temperatures: steps }, dublin));
        const expected = weather({ temperatures: steps }, zone);
        expect(ageing.ageBetween(from, from + minutes)).toBeCloseTo(ageGained(expected, mix, from, from + minutes), 6);
        expect(ageing.whenAged(from, age)).toBe(auditWhenAged(expected, mix, from, age));
      }),
      { numRuns: 3000 },
    );
  });
});
