import { describe, expect, test } from 'vitest';
import { monthsBetween, monthsLike, seasonsGuess } from '../../../src/engine/begin/seasons.ts';
import { latitudeOf } from '../../../src/engine/begin/zone-latitudes.ts';

describe('where a zone lies', () => {
  // zone.tab of the IANA time zone database: +5320-00615, -3652+17446, +4124-08139 (Chicago +415100-0873900).
  test.each([
    ['Europe/Dublin', 53],
    ['Pacific/Auckland', -37],
    ['America/Chicago', 42],
    ['US/Eastern', 41],
    ['Europe/Kyiv', 50],
    ['UTC', null],
  ])('%s is at %s degrees', (timeZone, degrees) => {
    expect(latitudeOf(timeZone)).toBe(degrees);
  });

  test('is known of every zone that a browser may name by its place', () => {
    const unknown = Intl.supportedValuesOf('timeZone').filter((zone) => latitudeOf(zone) === null);
    expect(unknown.filter((zone) => zone.includes('/') && !zone.startsWith('Etc/'))).toEqual([]);
  });
});

describe('the months', () => {
  test('between two follow a cosine, turned round south of the equator', () => {
    expect(monthsBetween({ coldest: 4, warmest: 16 }, 'Europe/Dublin')).toEqual([
      ...[4, 4.8, 7, 10, 13, 15.2, 16, 15.2, 13, 10, 7, 4.8],
    ]);
    const south = monthsBetween({ coldest: 4, warmest: 16 }, 'Pacific/Auckland');
    expect([south[0], south[6], south[3]]).toEqual([16, 4, 10]);
  });

  test('like the present one have it as it is, and no July like November', () => {
    // At 53 degrees: 3/10 from 2 and 19 °C at 50 to -4 and 17 °C at 60 is 0.2 and 18.4.
    expect(seasonsGuess('Europe/Dublin')).toEqual({ coldest: 0.2, warmest: 18.4 });
    const months = monthsLike({ month: 10, celsius: 8.45 }, 'Europe/Dublin');
    // November is 120 degrees off July: 8.45 + 9.1 x 0.5 is the mean, 13; July has 9.1 more.
    expect([months[10], months[6], months[0]]).toEqual([8.45, 22.1, 3.9]);
  });

  test('a place that is nowhere is taken to be half way to the pole, and further ones like the last known', () => {
    expect(seasonsGuess('UTC')).toEqual({ coldest: 3, warmest: 21.5 });
    expect(seasonsGuess('Arctic/Longyearbyen')).toEqual({ coldest: -12, warmest: 11 });
  });
});
