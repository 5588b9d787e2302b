import { describe, expect, test } from 'vitest';
import { type PlanFile, type PlanPour, planFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { shiftLater } from '../../../src/engine/book/shift-later.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';

const yardAt = (clock: string, crew = 1, changes: Partial<YardFile> = {}): YardFile => {
  const yard = plannedYard();
  const work = yard.work.map((hours) => ({ ...hours, crew }));
  return { ...yard, yard: { ...yard.yard, now: saturday(clock) }, work, ...changes };
};
const free = (mould: string, clock: string) => new Map([[mould, minuteOf(saturday(clock))]]);
const clockOf = (instant: string | undefined) => instant?.slice(11, 16);
const poursOf = (plan: PlanFile | null) =>
  plan?.pours.map((pour) => [pour.prepStart, pour.fillEnd, pour.stripStart, pour.pieceReadyAt].map(clockOf));
const packOf = (plan: PlanFile | null) => clockOf(plan?.orders[0]?.packStart);

test('a plan that holds comes back as it is', () => {
  const plan = handPlan();
  expect(shiftLater(plan, yardAt('08:10', 2))).toEqual(plan);
});

/*
 * No. 2 is free at 8:27 and not at 8:22: coated by 8:38, dry at 8:58, set up by 9:10. The batch of 9:05 begins five minutes later, the
 * moulds are full at 9:27 and 9:34, and one person strips them from 10:42 and 10:50 and packs at 10:58.
 */
test('a coat that begins later moves the set-up once it is dry, the batch, and what comes of it', () => {
  const plan = shiftLater(handPlan(), yardAt('08:20'), free('900 no. 2', '08:27'));
  expect(poursOf(plan)).toEqual([
    ['08:10', '09:27', '10:42', '10:50'],
    ['08:58', '09:34', '10:50', '10:58'],
  ]);
  expect(plan?.coats.map(({ start, end }) => [start, end].map(clockOf))).toEqual([['08:27', '08:38']]);
  expect([clockOf(plan?.batches[0]?.start), clockOf(plan?.batches[0]?.end)]).toEqual(['09:10', '09:34']);
  expect([packOf(plan), clockOf(plan?.orders[0]?.completesAt)]).toEqual(['10:58', '11:03']);
});

/* At 8:30 it cannot have begun at 8:22 in a mould that was full until 8:27: it counts as begun when it could. */
test('what could not have begun as planned began as soon as it could', () => {
  const plan = shiftLater(handPlan(), yardAt('08:30'), free('900 no. 2', '08:27'));
  expect(clockOf(plan?.coats[0]?.start)).toBe('08:27');
  expect(poursOf(plan)?.map(([prepStart]) => prepStart)).toEqual(['08:10', '08:58']);
});

/* Coated by 8:45 and dry at 9:05, as the book says: set up by 9:17, so that the batch of 9:05 begins then. */
test('a set-up waits until a coat that was given is dry', () => {
  const [first, second] = plannedYard().moulds;
  const moulds = [first!, { ...second!, condition: 'ready' as const, turnsSinceOil: 0, dryFrom: saturday('09:05') }];
  const plan = shiftLater({ ...handPlan(), coats: [] }, yardAt('08:45', 1, { moulds }));
  expect(poursOf(plan)?.[1]?.slice(0, 2)).toEqual(['09:05', '09:41']);
  expect(clockOf(plan?.batches[0]?.start)).toBe('09:17');
});

/* The coat of 11:30 is over by 11:45, dry on Saturday at 8:00 after a week and no later: the set-up there is not moved. */
test('a coat that would not be dry for a set-up of a later session makes the plan anew', () => {
  const plan = handPlan();
  const week = (clock: string) => `2027-04-17T${clock}:00+01:00`;
  const next: PlanPour = {
    ...{ id: 'P3', batch: 'B2', mould: '900 no. 2', casting: 'panel-900' },
    ...{ prepStart: week('08:10'), prepEnd: week('08:22'), fillStart: week('08:40'), fillEnd: week('08:47') },
    ...{ stripStart: week('10:02'), stripEnd: week('10:10'), pieceReadyAt: week('10:10') },
  };
  const batch = { ...plan.batches[0]!, id: 'B2', start: week('08:30'), mixEnd: week('08:40'), end: week('08:47') };
  const coat = { mould: '900 no. 2', start: saturday('11:30'), end: saturday('11:41') };
  const two = {
    ...{ ...plan, coats: [...plan.coats, coat], pours: [...plan.pours, next] },
    batches: [...plan.batches, { ...batch, pours: ['P3'] }],
  };
  const minutesToDry = 7 * 1440 - 211;
  const [first, second] = plannedYard().moulds;
  const drying = (oilDryMinutes: number) => ({ moulds: [first!, { ...second!, oilDryMinutes }] });
  const freed = free('900 no. 2', '08:27');
  expect(
    shiftLater(
      { ...two, coats: [coat], pours: [plan.pours[0]!, next] },
      yardAt('11:00', 1, drying(minutesToDry)),
      freed,
    ),
  ).not.toBeNull();
  expect(
    shiftLater(
      { ...two, coats: [coat], pours: [plan.pours[0]!, next] },
      yardAt('11:00', 1, drying(minutesToDry)),
      free('900 no. 2', '11:31'),
    ),
  ).toBeNull();
});

describe('with people enough', () => {
  const eightLate = (changes: Partial<YardFile> = {}, plan = handPlan()) =>
    shiftLater(plan, yardAt('08:20', 3, changes), free('900 no. 2', '08:30'));

  /* Full at 9:30 and 9:37: out from 10:45 and 10:52. The panel of the order is out at 10:53, a minute after its packing. */
  test('an order is packed when its last piece is out', () => {
    const plan = eightLate();
    expect(poursOf(plan)?.map(([, , stripStart]) => stripStart)).toEqual(['10:45', '10:52']);
    expect(packOf(plan)).toBe('10:53');
  });

  test('a piece that takes two of three waits for two', () => {
    const castings = plannedYard().castings.map((casting) => ({ ...casting, stripCrew: 2 }));
    expect(poursOf(eightLate({ castings }))?.map(([, , stripStart]) => stripStart)).toEqual(['10:45', '10:53']);
  });

  /** The next turn of no. 1: set up from 10:45 by another person, poured a week later. */
  const nextTurn = (): PlanFile => {
    const plan = handPlan();
    const week = (clock: string) => `2027-04-17T${clock}:00+01:00`;
    const next: PlanPour = {
      ...{ id: 'P3', batch: 'B2', mould: '900 no. 1', casting: 'panel-900' },
      ...{ prepStart: saturday('10:45'), prepEnd: saturday('11:03'), fillStart: week('08:40'), fillEnd: week('08:47') },
      ...{ stripStart: week('10:02'), stripEnd: week('10:10'), pieceReadyAt: week('10:10') },
    };
    const batch = { ...plan.batches[0]!, id: 'B2', start: week('08:30'), mixEnd: week('08:40'), end: week('08:47') };
    return { ...plan, pours: [...plan.pours, next], batches: [...plan.batches, { ...batch, pours: ['P3'] }] };
  };

  test('the next turn of a mould begins when its piece is out', () => {
    const next = eightLate({}, nextTurn())?.pours[2];
    expect([next?.prepStart, next?.prepEnd]).toEqual([saturday('10:53'), saturday('11:11')]);
    expect(next?.fillStart).toBe('2027-04-17T08:40:00+01:00');
  });

  /* No. 3 is full since 7:47 and comes out from 9:02 to 9:10, not from 8:50: until then there are not two of two for the batch. */
  test('a batch that takes two people waits for two', () => {
    const yard = yardAt('08:20', 2);
    const third = { ...yard.moulds[0]!, id: '900 no. 3' };
    const inMould = [{ mould: third.id, casting: 'panel-900', filledAt: saturday('07:47') }];
    const strip = { mould: third.id, stripStart: saturday('08:50'), stripEnd: saturday('08:58') };
    const plan = { ...handPlan(), strips: [{ ...strip, pieceReadyAt: saturday('08:58') }] };
    const startWith = (crew: number) => {
      const mixes = yard.mixes.map((mix) => ({ ...mix, crew }));
      return shiftLater(plan, { ...yard, inMould, mixes, moulds: [...yard.moulds, third] })?.batches[0]?.start;
    };
    expect(startWith(2)).toBe(saturday('09:10'));
    expect(startWith(1)).toBe(saturday('09:05'));
  });
});

describe('a plan is made anew', () => {
  /* The last mould is full at 9:34, 146 minutes before the session ends at 12:00. */
  test('when a batch could not be attended to the end of the session', () => {
    const attended = (attendMinutes: number) => {
      const mixes = plannedYard().mixes.map((mix) => ({ ...mix, attendMinutes }));
      return shiftLater(handPlan(), yardAt('08:20', 1, { mixes }), free('900 no. 2', '08:27'));
    };
    expect(attended(146)).not.toBeNull();
    expect(attended(147)).toBeNull();
  });

  /* Cured after a week and half an hour: a panel full at 9:22 is ready at 9:52 of the 17th, one of 9:27 at 9:57. */
  test('when a piece would be cured after its order is packed in a later session', () => {
    const plan = handPlan();
    const week = (clock: string) => `2027-04-17T${clock}:00+01:00`;
    Object.assign(plan.pours[0]!, { pieceReadyAt: week('09:52') });
    const packedAt = (start: string, end: string) => ({
      ...{
        ...plan,
        orders: [{ ...plan.orders[0]!, packStart: week(start), packEnd: week(end), completesAt: week(end) }],
      },
    });
    const mixes = plannedYard().mixes.map((mix) => ({ ...mix, cureHours: 168.5 }));
    const fiveLate = (start: string, end: string) =>
      shiftLater(packedAt(start, end), yardAt('08:20', 1, { mixes }), free('900 no. 2', '08:27'));
    expect(fiveLate('09:57', '10:02')).not.toBeNull();
    expect(fiveLate('09:52', '09:57')).toBeNull();
  });

  /* Hours from 20:00 to 4:00 are one session of two dates. Five minutes late: 9:05 is 9:10, and the packing of 10:57 ends at 11:03. */
  test.each([
    ['a batch still begins', 14 * 60 + 49, true],
    ['a batch would begin', 14 * 60 + 50, false],
    ['an order is still packed', 12 * 60 + 56, true],
    ['an order would be packed', 12 * 60 + 57, false],
  ])('when %s on the date it was to, in a session past midnight, %i minutes on: %o', (_what, minutes, holds) => {
    const { instantText } = calendarOf('Europe/Dublin');
    const on = (instant: string) => instantText(minuteOf(instant) + minutes);
    const moved = JSON.stringify(handPlan()).replace(/2027-04-10T[^"]+/g, on);
    const hours = { rule: 'FREQ=DAILY', from: '2027-01-02' };
    const nights = plannedYard({
      yard: { ...plannedYard().yard, now: on(saturday('08:20')) },
      work: [
        { ...hours, start: '20:00', end: '24:00' },
        { ...hours, start: '00:00', end: '04:00' },
      ],
    });
    const freed = new Map([['900 no. 2', minuteOf(on(saturday('08:27')))]]);
    expect(shiftLater(planFile.parse(JSON.parse(moved)), nights, freed) !== null).toBe(holds);
  });
});
