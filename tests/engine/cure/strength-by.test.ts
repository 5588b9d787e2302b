import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { climateOf } from '../../../src/engine/cure/climate.ts';
import { CEMENTS, strengthBy, strongEnoughFrom } from '../../../src/engine/cure/strength-by.ts';

const calendar = calendarOf('Europe/Dublin');
const keptAt = (...celsius: [from: string, celsius: number][]) => ({
  calendar,
  climate: climateOf({ temperatures: celsius.map(([from, value]) => ({ from, celsius: value })) }, calendar),
});
const filled = minuteOf('2027-04-05T12:00:00+01:00');
const DAY = 1440;
const later = (days: number) => filled + days * DAY;

describe('how strong a piece is by then', () => {
  // EN 1992-1-1:2004, eq B.10: a day at 20 °C counts exp(13.65 - 4000 / 293) = 0.99812, seven of them 6.9869. Eq 3.2 then
  // is exp(s (1 - sqrt(28 / 6.9869))) = exp(-1.00188 s), with s 0.25, 0.20 and 0.38.
  test('the curve of its cement at 20 °C, which is taken where no temperature is expected', () => {
    for (const kept of [keptAt(['2027-01-01', 20]), keptAt()]) {
      expect(strengthBy('N', kept, filled, later(7))).toEqual({ share: expect.closeTo(0.77844, 5) });
      expect(strengthBy('R', kept, filled, later(7))).toEqual({ share: expect.closeTo(0.81842, 5) });
      expect(strengthBy('S', kept, filled, later(7))).toEqual({ share: expect.closeTo(0.68337, 5) });
    }
  });

  // ACI 209R-92, eq 2-1: 6.9869 / (4 + 0.85 x 6.9869) and 6.9869 / (2.3 + 0.92 x 6.9869).
  test('types I and III by ACI 209', () => {
    expect(strengthBy('I', keptAt(), filled, later(7))).toEqual({ share: expect.closeTo(0.70299, 5) });
    expect(strengthBy('III', keptAt(), filled, later(7))).toEqual({ share: expect.closeTo(0.80052, 5) });
  });

  // At 10 °C a day counts 0.61614 (eq B.10): ten days are 6.1614.
  test('cold days count for less, each by its own temperature', () => {
    const tenDays = { share: expect.closeTo(Math.exp(0.25 * (1 - Math.sqrt(28 / 6.1614))), 5) };
    expect(strengthBy('N', keptAt(['2027-01-01', 10]), filled, later(10))).toEqual(tenDays);
    // Half a day at 10 °C, then seven at 20 °C: 0.3081 + 6.9869 = 7.2949.
    const warmer = keptAt(['2027-01-01', 10], ['2027-04-06', 20]);
    const share = Math.exp(0.25 * (1 - Math.sqrt(28 / 7.2949)));
    expect(strengthBy('N', warmer, filled, later(7.5))).toEqual({ share: expect.closeTo(share, 5) });
  });

  test('no share where the code wants a test, nor in frost, and never more than all of it', () => {
    expect(strengthBy('R', keptAt(), filled, later(3))).toEqual({ unknown: 'young' });
    expect(strengthBy('R', keptAt(['2027-01-01', 5]), filled, later(6))).toEqual({ unknown: 'young' });
    expect(strengthBy('R', keptAt(['2027-01-01', -1]), filled, later(9))).toEqual({ unknown: 'frost' });
    expect(strengthBy('R', keptAt(), filled, later(60))).toEqual({ share: 1 });
  });
});

describe('from when a piece is strong enough', () => {
  test('the worked example: 7.72 days at 10 °C until 70 % of class N', () => {
    const from = strongEnoughFrom('N', keptAt(['2027-01-01', 10]), filled, 0.7)!;
    expect((from - filled) / DAY).toBeCloseTo(7.72, 2);
  });

  test('never before three days at 20 °C, and never in frost', () => {
    // Half of class R is there after 28 / (1 + ln 2 / 0.2)² = 1.4 days by the formula; three days of age are 4320 / 0.998125 =
    // 4328.1 minutes, and the first whole minute after them counts.
    expect(strongEnoughFrom('R', keptAt(), filled, 0.5)! - filled).toBe(4329);
    expect(strongEnoughFrom('R', keptAt(['2027-01-01', 12], ['2027-04-07', -3]), filled, 0.5)).toBeNull();
  });

  test('a share that no curve reaches is none', () => {
    expect(strongEnoughFrom('III', keptAt(), filled, 1.2)).toBeNull();
    expect(strongEnoughFrom('N', keptAt(['2027-01-01', 0]), filled, 0.99)).not.toBeNull();
  });

  test('at that minute it is as strong, and a day before it is not', () => {
    const celsius = fc.integer({ min: 1, max: 30 });
    const share = fc.integer({ min: 50, max: 95 }).map((percent) => percent / 100);
    fc.assert(
      fc.property(fc.constantFrom(...CEMENTS), celsius, celsius, share, (cement, first, then, wanted) => {
        const kept = keptAt(['2027-01-01', first], ['2027-04-09', then]);
        const from = strongEnoughFrom(cement, kept, filled, wanted);
        if (from === null) return;
        const [before, at] = [from - DAY, from + 1].map((minute) => strengthBy(cement, kept, filled, minute));
        expect('share' in at! ? at.share : 0).toBeGreaterThanOrEqual(wanted - 1e-9);
        expect('share' in before! ? before.share : 0).toBeLessThan(wanted);
      }),
    );
  });
});
