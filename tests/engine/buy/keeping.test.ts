import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayNumber, minuteOf } from '../../../shared/time.ts';
import { lotsInYard, lotsKept } from '../../../src/engine/buy/keeping.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';

const dublin = calendarOf('Europe/Dublin');
const day = (date: string) => dayNumber(date);
const use = (instant: string, quantity: number) => ({ at: minuteOf(instant), quantity });

describe('which deliveries the stock is of', () => {
  it('what came last is there still', () => {
    const arrivals = [
      { day: 10, quantity: 6 },
      { day: 90, quantity: 6 },
    ];
    expect(lotsInYard(10, arrivals)).toEqual([
      { cameOn: 10, quantity: 4 },
      { cameOn: 90, quantity: 6 },
    ]);
    expect(lotsInYard(4, arrivals)).toEqual([{ cameOn: 90, quantity: 4 }]);
    expect(lotsInYard(0, arrivals)).toEqual([]);
  });

  it('what no delivery accounts for stands first, without a day', () => {
    expect(lotsInYard(8, [{ day: 90, quantity: 6 }])).toEqual([
      { cameOn: null, quantity: 2 },
      { cameOn: 90, quantity: 6 },
    ]);
    expect(lotsInYard(3, [])).toEqual([{ cameOn: null, quantity: 3 }]);
  });
});

describe('what becomes of lots that keep so many days', () => {
  // Came 12 January 2027, keeps 90 days: 31 - 12 + 28 + 31 = 78 days to the end of March, so until 12 April.
  const lot = { cameOn: day('2027-01-12'), quantity: 6 };

  it('the last day counts, in the yard’s own clock, and the day after is late', () => {
    const uses = [
      use('2027-04-12T23:30:00+01:00', 2),
      use('2027-04-13T00:00:00+01:00', 1),
      use('2027-02-01T09:00:00Z', 1),
    ];
    expect(lotsKept([lot], uses, 90, dublin)).toEqual([
      { keepsUntil: day('2027-04-12'), usedInTime: 3, usedLate: 1, left: 2 },
    ]);
  });

  it('lots are used one after another, and a use may be of two', () => {
    const next = { cameOn: day('2027-04-10'), quantity: 5 };
    expect(lotsKept([lot, next], [use('2027-04-20T09:00:00+01:00', 8)], 90, dublin)).toEqual([
      { keepsUntil: day('2027-04-12'), usedInTime: 0, usedLate: 6, left: 0 },
      { keepsUntil: day('2027-07-09'), usedInTime: 2, usedLate: 0, left: 3 },
    ]);
  });

  it('of what came nobody knows when nothing is late', () => {
    const uses = [use('2029-04-20T09:00:00+01:00', 8)];
    expect(lotsKept([{ cameOn: null, quantity: 3 }], uses, 0, dublin)).toEqual([
      { keepsUntil: null, usedInTime: 3, usedLate: 0, left: 0 },
    ]);
  });

  it('every bit of a lot is used in time, late, or left, and no use is met twice', () => {
    const quantity = fc.integer({ min: 1, max: 50 });
    const lots = fc.array(fc.record({ cameOn: fc.integer({ min: 20_000, max: 20_400 }), quantity }), { maxLength: 6 });
    const uses = fc.array(fc.record({ at: fc.integer({ min: 28_800_000, max: 29_400_000 }), quantity }), {
      maxLength: 12,
    });
    fc.assert(
      fc.property(lots, uses, fc.integer({ min: 0, max: 200 }), (all, wanted, keeps) => {
        const kept = lotsKept(all, wanted, keeps, dublin);
        kept.forEach(({ usedInTime, usedLate, left }, i) => {
          expect(usedInTime + usedLate + left).toBe(all[i]!.quantity);
        });
        const sum = (list: readonly { quantity: number }[]) => list.reduce((n, one) => n + one.quantity, 0);
        const used = kept.reduce((n, one) => n + one.usedInTime + one.usedLate, 0);
        expect(used).toBe(Math.min(sum(all), sum(wanted)));
      }),
    );
  });
});
