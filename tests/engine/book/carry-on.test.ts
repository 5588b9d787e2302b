import { describe, expect, test } from 'vitest';
import { type PlanFile, planFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { record } from '../../../src/engine/book/carry-on.ts';
import type { WorkDone } from '../../../src/engine/book/work-done.ts';
import { plannedYard, handPlan as roughPlan, saturday } from '../../support/planned-yard.ts';

/** The plan by hand, with no. 2 stripped once the order is packed: one person is there. */
const handPlan = (): PlanFile => {
  const plan = roughPlan();
  Object.assign(plan.pours[1]!, {
    stripStart: saturday('10:57'),
    stripEnd: saturday('11:05'),
    pieceReadyAt: saturday('11:05'),
  });
  return plan;
};

const yardAt = (clock: string, changes: Partial<YardFile> = {}): YardFile => {
  const yard = plannedYard();
  return { ...yard, yard: { ...yard.yard, now: saturday(clock) }, ...changes };
};

/** The yard and the plan after some work; throws where it cannot have been done. */
const recorded = (works: readonly WorkDone[], clock: string, plan: PlanFile = handPlan(), yard = yardAt(clock)) =>
  works.reduce<{ yard: YardFile; plan: PlanFile | null }>(
    (under, work) => {
      const one = record(under, work);
      if (!one.ok) throw new Error(one.faults[0]?.message);
      return one.after;
    },
    { yard, plan },
  );

const wellFormed = (plan: PlanFile | null): PlanFile => planFile.parse(plan);
const setUp = (clock: string, changes: Partial<Extract<WorkDone, { kind: 'set up' }>> = {}): WorkDone => ({
  ...{ kind: 'set up', mould: '900 no. 2', casting: 'panel-900', coated: true, doneAt: saturday(clock) },
  ...changes,
});
const coated = (clock: string): WorkDone => ({ kind: 'coated', mould: '900 no. 2', doneAt: saturday(clock) });
const filled = (mould: string, clock: string, order: string | null) => ({
  ...{ mould, casting: 'panel-900', order, coated: mould === '900 no. 2', filledAt: saturday(clock) },
});
const bareSecond = { ...filled('900 no. 2', '09:29', null), coated: false };
const poured = (
  first = '09:22',
  last = '09:29',
  changes: Partial<Extract<WorkDone, { kind: 'poured' }>> = {},
): WorkDone => ({
  kind: 'poured',
  bags: 1,
  pours: [filled('900 no. 1', first, '27-001'), filled('900 no. 2', last, null)],
  ...changes,
});
const stripped = (mould: string, clock: string): WorkDone => ({
  ...{ kind: 'stripped', mould, cameOut: 'good', reason: '', doneAt: saturday(clock) },
});
const { lines } = plannedYard().orders[0]!;
const packed = (clock: string, changes: Partial<Extract<WorkDone, { kind: 'packed' }>> = {}): WorkDone => ({
  ...{ kind: 'packed', order: '27-001', lines, planned: [], evenShort: false, doneAt: saturday(clock) },
  ...changes,
});

/* By hand: no. 2 is coated from 8:22 to 8:33 and set up from 8:53 to 9:05, the batch of 9:05 is poured by 9:29, no. 1 is stripped by 10:45, packed by 10:57, no. 2 stripped by 11:05. */
describe('a mould made ready', () => {
  test('has nothing left to do before its pour, and everything else stays', () => {
    const plan = wellFormed(recorded([coated('08:33'), setUp('09:04', { coated: false })], '09:04').plan);
    const ready = { prepStart: saturday('09:05'), prepEnd: saturday('09:05') };
    const pours = [handPlan().pours[0], { ...handPlan().pours[1], ...ready }];
    expect(plan).toEqual({ ...handPlan(), coats: [], pours });
  });

  test.each([
    ['08:49', false],
    ['08:50', true],
    ['09:20', true],
    ['09:21', false],
  ])('at %s is in time: %o', (clock, inTime) => {
    expect(recorded([setUp(clock)], clock).plan !== null).toBe(inTime);
  });

  test('without the coat it was to get, or without a pour to come, is not as planned', () => {
    expect(recorded([setUp('09:05', { coated: false })], '09:05').plan).toBeNull();
    const plan = { ...handPlan(), coats: [], pours: [handPlan().pours[0]!] };
    expect(recorded([setUp('09:05')], '09:05', plan).plan).toBeNull();
  });

  test('with its coat, which nobody wrote down, has had both', () => {
    expect(recorded([setUp('09:05')], '09:05').plan?.coats).toEqual([]);
  });
});

describe('a mould coated', () => {
  test('leaves its coat out of the plan, and everything else stays', () => {
    expect(wellFormed(recorded([coated('08:33')], '08:33').plan)).toEqual({ ...handPlan(), coats: [] });
  });

  /* Dry at 9:00, five to nine and not 8:53: set up by 9:12, and the batch of 9:05 begins then. */
  test('later than planned moves what waits until it is dry', () => {
    const plan = recorded([coated('08:40')], '08:40').plan;
    expect([plan?.pours[1]?.prepStart, plan?.batches[0]?.start]).toEqual([saturday('09:00'), saturday('09:12')]);
  });

  test.each([
    ['08:17', false],
    ['08:18', true],
    ['08:48', true],
    ['08:49', false],
  ])('at %s is in time: %o', (clock, inTime) => {
    expect(recorded([coated(clock)], clock).plan !== null).toBe(inTime);
  });

  test('without a coat to come is not as planned', () => {
    expect(recorded([coated('08:33')], '08:33', { ...handPlan(), coats: [] }).plan).toBeNull();
  });

  test('and poured without that coat is not as planned either', () => {
    const bare = poured('09:22', '09:29', { pours: [filled('900 no. 1', '09:22', '27-001'), bareSecond] });
    expect(recorded([bare], '09:29').plan).toBeNull();
    expect(recorded([coated('08:33'), bare], '09:29').plan?.pours).toEqual([]);
  });
});

describe('of several pours to come', () => {
  test('the next one of the mould is ready, wherever it stands in the plan', () => {
    const plan = handPlan();
    const week = (clock: string) => `2027-04-17T${clock}:00+01:00`;
    const later = { ...plan.pours[1]!, id: 'P3', batch: 'B2', prepStart: week('08:10'), prepEnd: week('08:28') };
    const batch = { ...plan.batches[0]!, id: 'B2', start: week('08:53'), pours: ['P3'] };
    const two = { ...plan, pours: [later, ...plan.pours], batches: [batch, ...plan.batches] };
    const carried = recorded([setUp('09:05')], '09:05', two).plan;
    expect(carried?.pours.map(({ id, prepStart, prepEnd }) => [id, prepStart === prepEnd])).toEqual([
      ['P3', false],
      ['P1', false],
      ['P2', true],
    ]);
  });

  test('one of another piece than the mould was made ready for makes the plan anew', () => {
    const yard = yardAt('09:05');
    const kerb = { ...yard.castings[0]!, id: 'kerb' };
    const moulds = yard.moulds.map((mould) => ({
      ...{ ...mould, makes: [...mould.makes, { casting: 'kerb', changeMinutes: 0 }] },
    }));
    const both = { ...yard, moulds, castings: [...yard.castings, kerb] };
    expect(recorded([setUp('09:05')], '09:05', handPlan(), both).plan).not.toBeNull();
    expect(recorded([setUp('09:05', { casting: 'kerb' })], '09:05', handPlan(), both).plan).toBeNull();
  });
});

describe('a batch poured', () => {
  test('leaves its pieces to be stripped as planned, and none of its materials to be taken', () => {
    const plan = handPlan();
    plan.sticks.push({
      material: 'rod',
      openedAt: saturday('09:05'),
      cuts: [
        { lengthMm: 190, count: 2, for: 'B1' },
        { lengthMm: 190, count: 2, for: '27-001' },
      ],
    });
    const yard = yardAt('09:29');
    const cuts = [{ material: 'rod', lengthMm: 190, count: 1 }];
    const cutting = { ...yard, castings: yard.castings.map((casting) => ({ ...casting, cuts })) };
    const { plan: left, yard: after } = recorded([poured()], '09:29', plan, cutting);
    const carried = wellFormed(left);
    expect(carried).toMatchObject({ batches: [], pours: [], score: { batches: 0, bags: 0 } });
    const [one, two] = handPlan().pours;
    const strip = ({ mould, stripStart, stripEnd, pieceReadyAt }: NonNullable<typeof one>) => ({
      ...{ mould, stripStart, stripEnd, pieceReadyAt },
    });
    expect(carried.strips).toEqual([{ ...strip(one!), order: '27-001' }, strip(two!)]);
    expect(carried.sticks.map(({ cuts }) => cuts.map((cut) => cut.for))).toEqual([['27-001'], ['27-001']]);
    // What is left of the stick, 3000 less two of 190 and a kerf of 3 each, is needed when the order is packed.
    expect(carried.sticks.map(({ offcutMm }) => offcutMm)).toEqual([undefined, 2614]);
    expect(after.materials.find(({ id }) => id === 'rod')).toMatchObject({
      ...{ onHand: 2, offcuts: [{ lengthMm: 2614, count: 1 }] },
    });
    expect(carried.sticks.map(({ openedAt }) => openedAt)).toEqual([saturday('10:52'), saturday('10:52')]);
    expect(carried.orders).toEqual(plan.orders);
  });

  test('is not as planned in part, for another order, with other bags, or at another time', () => {
    const pours = [filled('900 no. 1', '09:22', '27-001'), filled('900 no. 2', '09:29', null)];
    const planAfter = (...work: Parameters<typeof poured>) => recorded([poured(...work)], '09:50').plan;
    expect(planAfter('09:22', '09:29')).not.toBeNull();
    expect(planAfter('09:22', '09:29', { pours: pours.slice(1) })).toBeNull();
    expect(planAfter('09:22', '09:29', { pours: pours.map((pour) => ({ ...pour, order: '27-009' })) })).toBeNull();
    // For nobody: whom it is for stays as planned.
    expect(planAfter('09:22', '09:29', { pours: pours.map((pour) => ({ ...pour, order: null })) })).not.toBeNull();
    expect(planAfter('09:22', '09:29', { bags: 0.5 })).toBeNull();
    expect(planAfter('09:38', '09:45')).toBeNull();
    expect(planAfter('09:06', '09:13')).toBeNull();
  });

  test('with one mould more than planned is not as planned', () => {
    const [only, other] = handPlan().pours;
    const plan = { ...handPlan(), pours: [only!], batches: [{ ...handPlan().batches[0]!, pours: [only!.id] }] };
    expect(recorded([poured()], '09:29', plan).plan).toBeNull();
    expect(recorded([poured()], '09:29', { ...plan, pours: [only!, other!] }).plan).not.toBeNull();
  });

  /* Full at 9:27 and not at 9:22, no. 1 is out at 10:50: an order that is not packed has its last piece then. */
  test('later than planned completes an order without packing later', () => {
    const plan = handPlan();
    const { packStart: _start, packEnd: _end, ...order } = plan.orders[0]!;
    const unpacked = { ...plan, orders: [{ ...order, completesAt: saturday('10:45') }] };
    const carried = recorded([poured('09:27', '09:34')], '09:34', unpacked).plan;
    expect(carried?.orders[0]?.completesAt).toBe(saturday('10:50'));
  });

  test('beyond the stock is not as planned: what comes of it is no longer known', () => {
    const yard = yardAt('09:29');
    const short = { ...yard, materials: yard.materials.map((one) => ({ ...one, onHand: 0.1 })) };
    expect(recorded([poured()], '09:29', handPlan(), short).plan).toBeNull();
  });

  /* Full five minutes late: 75 minutes on they may come out at 10:42 and 10:49; no. 1 is out at 10:50, in time for the packing. */
  test('later than planned moves what waits for it later, and no further', () => {
    const plan = wellFormed(recorded([poured('09:27', '09:34')], '09:34').plan);
    expect(
      plan.strips.map(({ mould, stripStart, stripEnd, pieceReadyAt }) => [mould, stripStart, stripEnd, pieceReadyAt]),
    ).toEqual([
      ['900 no. 1', saturday('10:42'), saturday('10:50'), saturday('10:50')],
      ['900 no. 2', saturday('10:57'), saturday('11:05'), saturday('11:05')],
    ]);
    expect(plan.orders[0]).toMatchObject({ packStart: saturday('10:52'), packEnd: saturday('10:57') });
  });

  /* Full at 10:14 and 10:21, stripped by one person from 11:29 to 11:45, when clearing up begins: not a minute is to spare. */
  test('so late that its strip no longer fits the session makes the plan anew', () => {
    const later = (instant: string) =>
      instant.replace(/T(..):(..)/, (_all, hours: string, minutes: string) => {
        const total = Number(hours) * 60 + Number(minutes) + 52;
        return `T${String(Math.floor(total / 60)).padStart(2, '0')}:${String(total % 60).padStart(2, '0')}`;
      });
    const text = JSON.stringify({ ...roughPlan(), orders: [], sticks: [], buys: [] });
    const plan = planFile.parse(JSON.parse(text.replace(/"2027-04-10T[^"]+"/g, later)));
    Object.assign(plan.pours[1]!, {
      stripStart: saturday('11:37'),
      stripEnd: saturday('11:45'),
      pieceReadyAt: saturday('11:45'),
    });
    expect(recorded([poured('10:14', '10:21')], '10:21', plan).plan?.strips[1]?.stripEnd).toBe(saturday('11:45'));
    expect(recorded([poured('10:15', '10:22')], '10:22', plan).plan).toBeNull();
  });
});

describe('a piece stripped', () => {
  test('is in the yard for its order', () => {
    const { plan } = recorded([poured(), stripped('900 no. 1', '10:50')], '10:50');
    expect(wellFormed(plan).strips.map(({ mould }) => mould)).toEqual(['900 no. 2']);
    expect(plan?.orders[0]?.fromFinished).toEqual([
      { finished: 0, count: 1 },
      { finished: 1, count: 1 },
    ]);
  });

  test('for stock is nobody’s', () => {
    expect(recorded([poured(), stripped('900 no. 2', '11:05')], '11:05').plan?.orders).toEqual(handPlan().orders);
  });

  test('at another time, or not planned to be, makes the plan anew', () => {
    expect(recorded([poured(), stripped('900 no. 1', '11:01')], '11:01').plan).toBeNull();
    const yard = yardAt('10:45', {
      inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('08:00') }],
    });
    expect(recorded([stripped('900 no. 1', '10:45')], '10:45', handPlan(), yard).plan).toBeNull();
  });

  test('out of a damaged mould that is to be poured again makes the plan anew: it comes back clean', () => {
    const { yard, plan } = recorded([poured()], '10:45');
    const damaged = {
      ...{ ...yard, yard: { ...yard.yard, now: saturday('10:45') } },
      moulds: yard.moulds.map((mould) => ({ ...mould, condition: 'damaged' as const, repairedOn: '2027-04-17' })),
    };
    const again = { ...handPlan().pours[0]!, prepStart: '2027-04-17T08:10:00+01:00' };
    const strips = (pours: PlanFile['pours']) =>
      recorded([stripped('900 no. 1', '10:45')], '10:45', { ...plan!, pours }, damaged).plan;
    expect(strips([])).not.toBeNull();
    expect(strips([again])).toBeNull();
  });

  test('that is not good makes the plan anew', () => {
    const mended: WorkDone = {
      kind: 'stripped',
      mould: '900 no. 1',
      cameOut: 'mend',
      reason: '',
      doneAt: saturday('10:45'),
    };
    expect(recorded([poured(), mended], '10:45').plan).toBeNull();
  });
});

describe('an order packed', () => {
  const both = () => recorded([poured(), stripped('900 no. 1', '10:45')], '10:57');
  const other = { id: '27-002', completesAt: saturday('10:57'), completesOn: '2027-04-10', daysLate: 0 };
  const withOther = (finished: number, count: number, lots: YardFile['finished']) => {
    const { yard, plan } = both();
    const orders = [...plan!.orders, { ...other, fromFinished: [{ finished, count }] }];
    return recorded(
      [packed('10:57')],
      '10:57',
      { ...plan!, orders },
      { ...yard, finished: [...yard.finished, ...lots] },
    );
  };

  test('has nothing left to do, and its lengths are cut', () => {
    const { yard, plan } = both();
    const left = wellFormed(recorded([packed('10:57')], '10:57', plan!, yard).plan);
    expect(left.orders[0]).toEqual({
      ...{ id: '27-001', completesAt: saturday('10:57'), completesOn: '2027-04-10', daysLate: 0, fromFinished: [] },
    });
    expect(left.sticks).toEqual([]);
  });

  test('leaves other orders their pieces where these now stand', () => {
    const { plan } = withOther(2, 3, [{ casting: 'panel-900', count: 3 }]);
    expect(plan?.orders[1]?.fromFinished).toEqual([{ finished: 0, count: 3 }]);
  });

  test('with a piece meant for another makes the plan anew', () => {
    expect(withOther(0, 1, []).plan).toBeNull();
  });

  test('takes the pieces the plan gives it, not the first in the list', () => {
    const { yard, plan } = both();
    const more = { ...yard, finished: [{ casting: 'panel-900', count: 2 }, ...yard.finished] };
    const planned = plan!.orders[0]!.fromFinished.map(({ finished, count }) => ({ finished: finished + 1, count }));
    expect(recorded([packed('10:57', { planned })], '10:57', plan!, more).yard.finished).toEqual([
      { casting: 'panel-900', count: 2 },
    ]);
  });

  test('with a piece of it still to be stripped, or short of its lengths, makes the plan anew', () => {
    const early = recorded([poured()], '10:57');
    const counted = packed('10:57', { evenShort: true });
    expect(recorded([counted], '10:57', early.plan!, early.yard).plan).toBeNull();
    const { yard, plan } = both();
    const short = yard.materials.map((one) => (one.id === 'rod' ? { ...one, onHand: 0.1 } : one));
    expect(recorded([packed('10:57')], '10:57', plan!, yard).plan).not.toBeNull();
    expect(recorded([packed('10:57')], '10:57', plan!, { ...yard, materials: short }).plan).toBeNull();
  });

  test('at another time, or not to be packed, makes the plan anew', () => {
    const { yard, plan } = both();
    expect(recorded([packed('11:13')], '11:13', plan!, yard).plan).toBeNull();
    const unpacked = { ...plan!, orders: [] };
    expect(recorded([packed('10:57')], '10:57', unpacked, yard).plan).toBeNull();
  });
});
