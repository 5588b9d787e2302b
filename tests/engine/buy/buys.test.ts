import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlanBuy, PlanFile } from '../../../shared/plan.ts';
import { dateOfDay, dayNumber, minuteOf } from '../../../shared/time.ts';
import { readYardFile, type YardFile } from '../../../shared/yard-file.ts';
import { type BoughtMaterial, buysOf } from '../../../src/engine/buy/buys.ts';
import type { MaterialUse } from '../../../src/engine/buy/material-flow.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { audit } from '../../contract/audit-plan.mjs';

const dublin = calendarOf('Europe/Dublin');
const NOW = minuteOf('2027-04-05T07:30:00+01:00');
const mortar: BoughtMaterial = { id: 'mortar', onHand: 9, pack: 5, leadDays: 2, minimum: 0 };
const use = (instant: string, quantity: number): MaterialUse => ({ at: minuteOf(instant), quantity });
const incoming = (date: string, quantity: number) => ({ day: dayNumber(date), quantity });
/** "5 ordered 2027-04-08 for 2027-04-10". */
const lines = (buys: PlanBuy[]): string[] => buys.map((x) => `${x.quantity} ordered ${x.orderBy} for ${x.arrivesOn}`);
const bought = (material: Partial<BoughtMaterial>, uses: MaterialUse[], due: ReturnType<typeof incoming>[] = []) =>
  lines(buysOf({ ...mortar, ...material }, uses, due, NOW, dublin));

describe('buying just in time', () => {
  // 9 - 8 = 1 left; 4 asked on the 10th leave 3 short: one pack of 5, then 2 left; 3 on the 12th are 1 short.
  it('buys for the day on which something is missing, and no sooner', () => {
    const uses = [
      use('2027-04-12T09:00:00+01:00', 3),
      use('2027-04-06T10:00:00+01:00', 8),
      use('2027-04-10T09:00:00+01:00', 4),
    ];
    expect(bought({}, uses)).toEqual(['5 ordered 2027-04-08 for 2027-04-10', '5 ordered 2027-04-10 for 2027-04-12']);
  });

  // As above, each so many days sooner, but none before what is ordered today can be here, on the 7th.
  it.each([
    [1, ['5 ordered 2027-04-07 for 2027-04-09', '5 ordered 2027-04-09 for 2027-04-11']],
    [4, ['5 ordered 2027-04-05 for 2027-04-07', '5 ordered 2027-04-06 for 2027-04-08']],
    [7, ['10 ordered 2027-04-05 for 2027-04-07']],
  ])('with %i days in hand a delivery may be late', (daysInHand, expected) => {
    const uses = [
      use('2027-04-06T10:00:00+01:00', 8),
      use('2027-04-10T09:00:00+01:00', 4),
      use('2027-04-12T09:00:00+01:00', 3),
    ];
    expect(lines(buysOf(mortar, uses, [], NOW, dublin, { daysInHand }))).toEqual(expected);
  });

  it('buys nothing while what is there and on its way will do, to the last bag', () => {
    expect(bought({}, [use('2027-04-10T09:00:00+01:00', 9)])).toEqual([]);
    const due = [incoming('2027-04-10', 3)];
    expect(bought({}, [use('2027-04-10T00:00:00+01:00', 12)], due)).toEqual([]);
    expect(bought({}, [use('2027-04-09T23:59:00+01:00', 12)], due)).toEqual(['5 ordered 2027-04-07 for 2027-04-09']);
  });

  // Once a parcel that had not come was there again from the midnight of each new day.
  it('does not count on goods that are overdue', () => {
    const [uses, due] = [[use('2027-04-08T08:00:00+01:00', 4)], [incoming('2027-04-04', 4)]];
    expect(bought({ onHand: 0 }, uses, due)).toEqual(['5 ordered 2027-04-06 for 2027-04-08']);
    expect(bought({ onHand: 0 }, uses, [incoming('2027-04-05', 4)])).toEqual([]);
  });

  it('has what is brought there by its time of day, and what is fetched from the morning on', () => {
    const uses = [use('2027-04-10T09:00:00+01:00', 4), use('2027-04-12T18:00:00+01:00', 4)];
    const by = (leadDays: number, due: ReturnType<typeof incoming>[] = []) =>
      lines(buysOf({ ...mortar, onHand: 0, leadDays }, uses, due, NOW, dublin, { deliveredBy: '17:00' }));
    expect(by(2)).toEqual(['5 ordered 2027-04-07 for 2027-04-09', '5 ordered 2027-04-10 for 2027-04-12']);
    expect(by(0)).toEqual(['5 ordered 2027-04-10 for 2027-04-10', '5 ordered 2027-04-12 for 2027-04-12']);
    expect(by(2, [incoming('2027-04-10', 4)])).toEqual(['5 ordered 2027-04-07 for 2027-04-09']);
  });

  // Once what was fetched the same day was bought again for what had been due, because 00:00 came before now.
  it('buys nothing for today that a delivery due by now makes good', () => {
    expect(bought({ leadDays: 0, onHand: 3, minimum: 4 }, [], [incoming('2027-04-05', 2)])).toEqual([]);
    expect(bought({ leadDays: 0, onHand: 3, minimum: 4, pack: 1 }, [])).toEqual([
      '1 ordered 2027-04-05 for 2027-04-05',
    ]);
  });

  it('keeps the minimum from the first day on which something bought can be there', () => {
    expect(bought({ onHand: 2, minimum: 4, pack: 1 }, [])).toEqual(['2 ordered 2027-04-05 for 2027-04-07']);
    expect(bought({ onHand: 4, minimum: 4 }, [use('2027-04-06T09:00:00+01:00', 4)])).toEqual([
      '5 ordered 2027-04-05 for 2027-04-07',
    ]);
  });

  it('buys several packs where one is too few, and one buy a day however often something is missing', () => {
    const uses = [
      use('2027-04-10T09:00:00+01:00', 20),
      use('2027-04-10T12:00:00+01:00', 4),
      use('2027-04-10T15:00:00+01:00', 1),
    ];
    expect(bought({}, uses)).toEqual(['20 ordered 2027-04-08 for 2027-04-10']);
  });

  it('can have today what takes no days to come', () => {
    expect(bought({ leadDays: 0, onHand: 1 }, [use('2027-04-05T08:00:00+01:00', 2)])).toEqual([
      '5 ordered 2027-04-05 for 2027-04-05',
    ]);
  });

  it('counts in fractions: 3 x 0.1 is no more than 0.3', () => {
    const uses = [1, 2, 3].map(() => use('2027-04-20T08:00:00+01:00', 0.1));
    expect(bought({ onHand: 0.3, pack: 0.1 }, uses)).toEqual([]);
    expect(bought({ onHand: 0.2, pack: 0.1 }, uses)).toEqual(['0.1 ordered 2027-04-18 for 2027-04-20']);
  });

  it('buys nothing of what cannot be bought', () => {
    const { leadDays: _, ...unbuyable } = mortar;
    expect(buysOf(unbuyable, [use('2027-04-20T08:00:00+01:00', 50)], [], NOW, dublin)).toEqual([]);
  });

  // Clocks go forward in Dublin on 28 March 2027: a day of 23 hours is one day all the same.
  it('counts lead time in dates across a change of the clock', () => {
    const now = minuteOf('2027-03-27T12:00:00Z');
    const uses = [use('2027-03-29T00:10:00+01:00', 10)];
    expect(lines(buysOf(mortar, uses, [], now, dublin))).toEqual(['5 ordered 2027-03-27 for 2027-03-29']);
  });
});

interface Case {
  zone: string;
  deliveredBy: string;
  material: BoughtMaterial & { leadDays: number };
  uses: MaterialUse[];
  due: { day: number; quantity: number }[];
}

const ROUND_THE_CLOCK = { rule: 'FREQ=DAILY', from: '2027-01-01', start: '00:00', end: '24:00', crew: 99 };

/** A yard that packs an order, of one part each, at every use. */
const yardOf = (x: Case): YardFile => {
  const read = readYardFile({
    format: 'mould-rota/yard',
    version: 2,
    yard: {
      ...{ name: 'Parts', timeZone: x.zone, now: calendarOf(x.zone).instantText(NOW), horizonDays: 90 },
      deliveredBy: x.deliveredBy,
    },
    work: [ROUND_THE_CLOCK],
    closed: [],
    extra: [],
    temperatures: [],
    materials: [{ ...x.material, name: 'Lid', unit: 'each' }],
    incoming: x.due.map((d) => ({ material: x.material.id, quantity: d.quantity, on: dateOfDay(d.day) })),
    mixes: [],
    castings: [],
    moulds: [],
    kits: x.uses.map((u, i) => ({
      id: `kit-${i}`,
      name: 'Lid, packed',
      pieces: [],
      parts: [{ material: x.material.id, quantity: u.quantity }],
      cuts: [],
      packMinutes: 1,
    })),
    finished: [],
    inMould: [],
    orders: x.uses.map((_, i) => ({ id: `o-${i}`, lines: [{ kit: `kit-${i}`, quantity: 1 }] })),
  });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.yard;
};

const planOf = (x: Case, buys: PlanBuy[]): PlanFile => {
  const calendar = calendarOf(x.zone);
  return {
    format: 'mould-rota/plan',
    version: 2,
    batches: [],
    pours: [],
    coats: [],
    strips: [],
    unstripped: [],
    orders: x.uses.map((u, i) => ({
      id: `o-${i}`,
      packStart: calendar.instantText(u.at),
      packEnd: calendar.instantText(u.at + 1),
      completesAt: calendar.instantText(u.at + 1),
      completesOn: dateOfDay(calendar.dayOf(u.at + 1)),
      daysLate: 0,
      fromFinished: [],
    })),
    unplanned: [],
    sticks: [],
    buys,
    dropped: [],
    score: {
      unplannedWeight: 0,
      weightedDaysLate: 0,
      weightedDaysAfterWanted: 0,
      batches: 0,
      bags: 0,
      weightedCompletionDays: 0,
    },
  };
};

/** Uses, in quarters of a unit, over 40 days, with enough there for those before anything bought can come. */
const anyCase: fc.Arbitrary<Case> = fc
  .record({
    zone: fc.constantFrom('Europe/Dublin', 'America/Santiago', 'Australia/Lord_Howe', 'Asia/Kathmandu'),
    deliveredBy: fc.constantFrom('00:00', '00:00', '09:30', '17:00'),
    shelfLifeDays: fc.constantFrom(undefined, undefined, 0, 3, 12),
    openedDays: fc.constantFrom(undefined, undefined, 0, 2, 9),
    leadDays: fc.integer({ min: 0, max: 9 }),
    pack: fc.constantFrom(0.25, 1, 2.5, 6),
    minimum: fc.constantFrom(0, 0, 1, 4),
    spare: fc.integer({ min: 0, max: 40 }).map((n) => n / 4),
    uses: fc.array(
      fc.record({
        at: fc.integer({ min: NOW, max: NOW + 57_000 }),
        quantity: fc.integer({ min: 1, max: 40 }).map((n) => n / 4),
      }),
      { maxLength: 25 },
    ),
    due: fc.array(
      fc.record({ day: fc.integer({ min: -3, max: 40 }), quantity: fc.integer({ min: 1, max: 40 }).map((n) => n / 4) }),
      { maxLength: 4 },
    ),
  })
  .map(({ zone, deliveredBy, shelfLifeDays, openedDays, leadDays, pack, minimum, spare, uses, due }) => {
    const calendar = calendarOf(zone);
    const today = calendar.dayOf(NOW);
    const early = uses.filter((x) => x.at < calendar.midnightOf(today + leadDays + 1));
    // Each may open one and leave it to go past its days.
    const onHand = early.reduce<number>((sum, x) => sum + Math.ceil(x.quantity), 0) + spare;
    const dates = {
      ...(shelfLifeDays !== undefined && { shelfLifeDays }),
      ...(openedDays !== undefined && { openedDays }),
    };
    const material = { id: 'lid', onHand, pack, leadDays, minimum, ...dates };
    return { zone, deliveredBy, material, uses, due: due.map((x) => ({ ...x, day: today + x.day })) };
  });

const materialFaults = (x: Case, buys: PlanBuy[]): string[] =>
  audit(yardOf(x), planOf(x, buys)).faults.filter((fault) => fault.startsWith('R10'));
const buysFor = (x: Case): PlanBuy[] =>
  buysOf(x.material, x.uses, x.due, NOW, calendarOf(x.zone), { deliveredBy: x.deliveredBy });

describe('whatever is used and comes in', () => {
  it('the independent check finds no level too low, no pack too many, and no buy too early', () => {
    fc.assert(
      fc.property(anyCase, (x) => {
        expect(materialFaults(x, buysFor(x))).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it('no buy can be left out', () => {
    fc.assert(
      fc.property(anyCase, (x) => {
        const buys = buysFor(x);
        fc.pre(buys.length > 0);
        for (const buy of buys)
          expect(
            materialFaults(
              x,
              buys.filter((other) => other !== buy),
            ),
          ).not.toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});
