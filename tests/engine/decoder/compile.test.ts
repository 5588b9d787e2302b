import { describe, expect, test } from 'vitest';
import { dayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { NEVER, NONE } from '../../../src/engine/decoder/problem.ts';
import { smallYard } from '../../support/small-yard.ts';

/** Thursday 8 April 2027, 09:00 in Dublin. */
const now = minuteOf('2027-04-08T09:00:00+01:00');
const midnight = (date: string) => minuteOf(`${date}T00:00:00+01:00`);
const base = smallYard();
const compiled = (changes: Partial<YardFileInput>) => compile(smallYard(changes));

describe('time', () => {
  test('the horizon ends with the last of its days', () => {
    const problem = compiled({ yard: { ...base.yard, horizonDays: 2 } });
    expect([problem.now, problem.today]).toEqual([now, dayNumber('2027-04-08')]);
    expect(problem.horizonEnd).toBe(midnight('2027-04-11'));
  });

  test('a hand-over day is the first on or after each day', () => {
    const { handover, today } = compiled({ yard: { ...base.yard, handoverDays: ['SA', 'TU'] } });
    const days = ['2027-04-08', '2027-04-10', '2027-04-11', '2027-04-13', '2027-04-14'];
    expect(days.map((date) => handover[dayNumber(date) - today])).toEqual(
      ['2027-04-10', '2027-04-10', '2027-04-13', '2027-04-13', '2027-04-17'].map(dayNumber),
    );
  });

  test.each([[undefined], [[]]])('with hand-over days %j every day is one', (handoverDays) => {
    const { handover, today } = compiled({ yard: { ...base.yard, handoverDays } });
    expect([...handover.slice(0, 3)]).toEqual([today, today + 1, today + 2]);
  });

  test('an order is late from the midnight after its date on', () => {
    const { aimMinutes } = compiled({ orders: [...base.orders, { id: 'open', lines: [] }] });
    expect([...aimMinutes]).toEqual([midnight('2027-04-11'), NEVER]);
  });

  test('an order is aimed at the date given, or else at the one asked for', () => {
    const dates = [{ due: '2027-04-10', wanted: '2027-04-07' }, { wanted: '2027-04-07' }, {}];
    const { orders, aimMinutes } = compiled({ orders: dates.map((own, i) => ({ id: `${i}`, lines: [], ...own })) });
    expect(orders.map(({ dueDay, wantedDay }) => [dueDay, wantedDay])).toEqual([
      [dayNumber('2027-04-10'), dayNumber('2027-04-07')],
      [NEVER, dayNumber('2027-04-07')],
      [NEVER, NEVER],
    ]);
    expect([...aimMinutes]).toEqual([midnight('2027-04-11'), midnight('2027-04-08'), NEVER]);
  });
});

describe('moulds', () => {
  const of = (more: Partial<YardFileInput['moulds'][number]>) =>
    compiled({ moulds: [{ ...base.moulds[0]!, ...more }, base.moulds[1]!] });

  test.each([
    [{ condition: 'retired' as const }, NEVER, [1]],
    [{ condition: 'damaged' as const }, NEVER, [1]],
    [{ condition: 'damaged' as const, repairedOn: '2027-04-12' }, midnight('2027-04-12'), [0, 1]],
    [{ condition: 'damaged' as const, repairedOn: '2027-04-01' }, now, [0, 1]],
    [{ condition: 'dirty' as const }, now, [0, 1]],
  ])('%j', (more, usableFrom, moulds) => {
    const problem = of(more);
    expect(problem.moulds[0]!.usableFrom).toBe(usableFrom);
    expect(problem.castings[0]!.moulds).toEqual(moulds);
  });

  test('only a ready one is set up already; a mended one is clean', () => {
    expect(of({ prepped: true }).moulds[0]!.prepped).toBe(true);
    expect(of({ prepped: true, condition: 'dirty' }).moulds[0]).toMatchObject({ prepped: false, dirty: true });
    expect(of({ condition: 'damaged', repairedOn: '2027-04-01' }).moulds[0]!.dirty).toBe(false);
  });

  test('one that is never coated is never due', () => {
    expect(of({}).moulds[0]!.oilEveryTurns).toBe(NEVER);
  });

  test('know how long changing over takes, and what they do not make', () => {
    const long = { ...base.castings[0]!, id: 'long' };
    const problem = compiled({
      castings: [...base.castings, long],
      moulds: [
        { ...base.moulds[0]!, makes: [{ casting: 'long', changeMinutes: 25 }, { casting: 'panel-900' }] },
        base.moulds[1]!,
      ],
    });
    expect(problem.moulds.map((m) => [...m.change])).toEqual([
      [0, 25],
      [0, NONE],
    ]);
    expect(problem.castings[1]!.moulds).toEqual([0]);
  });
});

describe('materials', () => {
  test('are plenty from the day on which they can be bought, or never', () => {
    expect(compile(base).materials.map((m) => m.plentyFrom)).toEqual([NEVER, midnight('2027-04-11')]);
  });

  test('that should have come already come now; arrivals are in order of time', () => {
    const incoming = [
      { material: 'mortar', quantity: 2, on: '2027-04-12' },
      { material: 'mortar', quantity: 1, on: '2027-04-01' },
    ];
    expect(compiled({ incoming }).materials[0]!.arrivals).toEqual([
      { at: now, quantity: 1 },
      { at: midnight('2027-04-12'), quantity: 2 },
    ]);
  });

  test('a mix is scarce until all that it and its castings need can be bought', () => {
    const buyable = base.materials.map((m, i) => ({ ...m, leadDays: i === 0 ? 2 : 5 }));
    const cuts = [{ material: 'rod', lengthMm: 190, count: 2 }];
    expect(compiled({ materials: buyable }).mixes[0]!.scarceUntil).toBe(midnight('2027-04-10'));
    const castings = [{ ...base.castings[0]!, cuts }];
    expect(compiled({ materials: buyable, castings }).mixes[0]!.scarceUntil).toBe(midnight('2027-04-13'));
  });
});

describe('an order', () => {
  // Two pairs and one single panel are five panels; two pairs take 2 x 2 pins and 2 x 5 minutes of packing.
  test('sums up its lines', () => {
    const lines = [
      { kit: 'pair', quantity: 2 },
      { casting: 'panel-900', quantity: 1 },
      { material: 'mortar', quantity: 0.5 },
    ];
    const kits = [{ ...base.kits[0]!, parts: [{ material: 'mortar', quantity: 1.5 }] }];
    const [order] = compiled({ kits, orders: [{ id: 'a', weight: 3, due: '2027-04-10', lines }] }).orders;
    expect(order).toEqual({
      weight: 3,
      dueDay: dayNumber('2027-04-10'),
      wantedDay: NEVER,
      aimDay: dayNumber('2027-04-10'),
      from: NONE,
      packMinutes: 10,
      mostSpells: 0,
      pieces: [{ casting: 0, count: 5 }],
      pieceCount: 5,
      parts: [{ material: 0, quantity: 3.5 }],
      cuts: [{ material: 1, lengthMm: 300, count: 4 }],
    });
  });

  test('of nothing takes nothing', () => {
    const lines = [
      { kit: 'pair', quantity: 0 },
      { casting: 'panel-900', quantity: 0 },
      { material: 'mortar', quantity: 0 },
    ];
    expect(compiled({ orders: [{ id: 'a', lines }] }).orders[0]).toMatchObject({
      dueDay: NEVER,
      packMinutes: 0,
      pieces: [],
      parts: [],
      cuts: [],
    });
  });
});

test('what is there is known by index and minute', () => {
  const problem = compiled({
    finished: [
      { casting: 'panel-900', count: 2 },
      { casting: 'panel-900', count: 1, readyAt: '2027-04-12T08:00:00+01:00', order: '27-001' },
      { casting: 'panel-900', count: 1, readyAt: '2027-04-02T08:00:00+01:00' },
    ],
    inMould: [{ mould: '900 no. 2', casting: 'panel-900', filledAt: '2027-04-03T11:00:00+01:00' }],
  });
  // Handed over on Saturdays, which are the days of packing too.
  const [soon, later] = ['2027-04-10', '2027-04-17'].map((day) => ({
    goodOn: dayNumber(day),
    packedOn: dayNumber(day),
  }));
  expect(problem.finished).toEqual([
    { casting: 0, count: 2, readyAt: now, order: NONE, ...soon },
    { casting: 0, count: 1, readyAt: minuteOf('2027-04-12T08:00:00+01:00'), order: 0, ...later },
    { casting: 0, count: 1, readyAt: now, order: NONE, ...soon },
  ]);
  expect(problem.inMould).toEqual([
    { mould: 1, casting: 0, filledAt: minuteOf('2027-04-03T11:00:00+01:00'), order: NONE, isBegun: false },
  ]);
});
