import { describe, expect, test } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import { planFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { afterPack, afterPour, afterPrep, afterStrip } from '../../../src/usecases/plan/carry-on.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';

const at = (clock: string) => minuteOf(saturday(clock));
const yard = plannedYard();
const pours = [
  { mould: '900 no. 2', casting: 'panel-900', order: null },
  { mould: '900 no. 1', casting: 'panel-900', order: '27-001' },
];
const wellFormed = (plan: PlanFile | null): PlanFile => planFile.parse(plan);

/* By hand: no. 2 is set up from 8:22 to 8:45, the batch of 9:05 is poured by 9:29, no. 1 is stripped by 10:45, packed by 10:57. */
describe('a mould made ready', () => {
  test('has nothing left to do before its pour, and everything else stays', () => {
    const plan = wellFormed(afterPrep('900 no. 2', 'panel-900', at('08:47'))(handPlan(), yard, null));
    const ready = { prepStart: saturday('09:05'), prepEnd: saturday('09:05'), oiled: false };
    expect(plan).toEqual({ ...handPlan(), pours: [handPlan().pours[0], { ...handPlan().pours[1], ...ready }] });
  });

  test.each([
    ['08:29', false],
    ['08:30', true],
    ['09:00', true],
    ['09:01', false],
  ])('at %s is in time: %o', (clock, inTime) => {
    expect(afterPrep('900 no. 2', 'panel-900', at(clock))(handPlan(), yard, null) !== null).toBe(inTime);
  });

  test('for another piece, or without a pour to come, is not as planned', () => {
    expect(afterPrep('900 no. 2', 'panel-600', at('08:45'))(handPlan(), yard, null)).toBeNull();
    expect(afterPrep('900 no. 3', 'panel-900', at('08:45'))(handPlan(), yard, null)).toBeNull();
  });
});

describe('a batch poured', () => {
  const poured = (changes: Partial<Parameters<typeof afterPour>[0]> = {}) =>
    afterPour({ pours, bags: 1, filled: at('09:31'), ...changes })(handPlan(), yard, null);

  test('leaves its pieces to be stripped as planned, and none of its materials to be taken', () => {
    const plan = handPlan();
    plan.sticks.push({
      material: 'rod',
      openedAt: saturday('09:05'),
      cuts: [
        { lengthMm: 190, count: 2, for: 'B1' },
        { lengthMm: 190, count: 2, for: 'B2' },
      ],
    });
    const carried = wellFormed(afterPour({ pours, bags: 1, filled: at('09:31') })(plan, yard, null));
    expect(carried).toMatchObject({ batches: [], pours: [], score: { batches: 0, bags: 0 } });
    expect(carried.strips).toEqual([
      {
        mould: '900 no. 1',
        order: '27-001',
        stripStart: saturday('10:37'),
        stripEnd: saturday('10:45'),
        pieceReadyAt: saturday('10:45'),
      },
      {
        mould: '900 no. 2',
        stripStart: saturday('10:44'),
        stripEnd: saturday('10:52'),
        pieceReadyAt: saturday('10:52'),
      },
    ]);
    expect(carried.sticks.map(({ cuts }) => cuts.map((cut) => cut.for))).toEqual([['27-001'], ['B2']]);
    expect(carried.orders).toEqual(plan.orders);
  });

  test('is not as planned in part, for another order, with other bags, or at another time', () => {
    expect(poured()).not.toBeNull();
    expect(poured({ pours: pours.slice(1) })).toBeNull();
    expect(poured({ pours: pours.map((pour) => ({ ...pour, order: null })) })).toBeNull();
    expect(poured({ bags: 0.5 })).toBeNull();
    expect(poured({ filled: at('09:45') })).toBeNull();
    expect(poured({ filled: at('09:13') })).toBeNull();
  });
});

describe('a piece stripped', () => {
  const carried = () => afterPour({ pours, bags: 1, filled: at('09:29') })(handPlan(), yard, null)!;

  test('is in the yard for its order', () => {
    const after = { ...yard, finished: [...yard.finished, { casting: 'panel-900', count: 1, order: '27-001' }] };
    const plan = wellFormed(afterStrip('900 no. 1', at('10:50'))(carried(), after, null));
    expect(plan.strips.map(({ mould }) => mould)).toEqual(['900 no. 2']);
    expect(plan.orders[0]?.fromFinished).toEqual([
      { finished: 0, count: 1 },
      { finished: 1, count: 1 },
    ]);
  });

  test('for stock is nobody’s', () => {
    expect(afterStrip('900 no. 2', at('10:52'))(carried(), yard, null)?.orders).toEqual(handPlan().orders);
  });

  test('at another time, or not planned to be, makes the plan anew', () => {
    expect(afterStrip('900 no. 1', at('11:01'))(carried(), yard, null)).toBeNull();
    expect(afterStrip('900 no. 1', at('10:45'))(handPlan(), yard, null)).toBeNull();
  });
});

describe('an order packed', () => {
  const other = { id: '27-002', completesAt: saturday('09:00'), completesOn: '2027-04-10', daysLate: 0 };
  const planWith = (finished: number, count: number): PlanFile => ({
    ...handPlan(),
    orders: [...handPlan().orders, { ...other, fromFinished: [{ finished, count }] }],
  });
  const packed = (plan: PlanFile, places: [number, number][], finished: { casting: string; count: number }[]) =>
    afterPack('27-001', at('11:00'))(plan, { ...yard, finished }, { places: new Map(places) });

  test('has nothing left to do, and its lengths are cut', () => {
    const plan = wellFormed(packed(handPlan(), [], []));
    expect(plan.orders[0]).toEqual({
      id: '27-001',
      completesAt: saturday('10:57'),
      completesOn: '2027-04-10',
      daysLate: 0,
      fromFinished: [],
    });
    expect(plan.sticks).toEqual([]);
  });

  test('leaves other orders their pieces where these now stand', () => {
    const plan = wellFormed(
      packed(
        planWith(2, 3),
        [
          [1, 0],
          [2, 1],
        ],
        [
          { casting: 'a', count: 1 },
          { casting: 'b', count: 3 },
        ],
      ),
    );
    expect(plan.orders[1]?.fromFinished).toEqual([{ finished: 1, count: 3 }]);
  });

  test('with a piece meant for another makes the plan anew', () => {
    expect(packed(planWith(2, 3), [[1, 0]], [{ casting: 'a', count: 9 }])).toBeNull();
    expect(packed(planWith(0, 3), [[0, 0]], [{ casting: 'a', count: 2 }])).toBeNull();
  });

  test('at another time, or not to be packed, makes the plan anew', () => {
    expect(afterPack('27-001', at('11:13'))(handPlan(), yard, { places: new Map() })).toBeNull();
    expect(afterPack('27-009', at('11:00'))(handPlan(), yard, { places: new Map() })).toBeNull();
  });
});
