import { describe, expect, test } from 'vitest';
import { type PlanFile, planFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { readYardFile, type YardFile, type YardFileInput } from '../../../shared/yard-file.ts';
import { goodsOfLines } from '../../../src/engine/book/goods.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { sessionsOf } from '../../../src/engine/calendar/sessions.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { withLateWorkDone } from '../../../src/usecases/plan/late-work-done.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';
import { randomYard } from '../../support/random-yard.ts';

/** The planned yard in the hour after its session, of which nothing is written down. */
const yardAfter = (changes: Partial<YardFileInput> = {}): YardFile =>
  plannedYard({ yard: { ...plannedYard().yard, now: saturday('12:20') }, ...changes });

const written = (yard: YardFile, plan: PlanFile = handPlan()) => {
  const found = withLateWorkDone(yard, plan);
  if (!found) throw new Error('nothing is late');
  expect(readYardFile(JSON.parse(JSON.stringify(found.yard))).ok).toBe(true);
  return found;
};
/** What comes of planning such a yard and putting the late work back. */
const planned = (yard: YardFile, plan?: PlanFile): PlanFile => {
  const found = written(yard, plan);
  return planFile.parse(found.putBack(planYard(found.yard, { effort: 'quick' })).plan);
};
const mouldOf = ({ moulds }: YardFile, id: string) => moulds.find((mould) => mould.id === id);
const onHand = ({ materials }: YardFile, id: string) => materials.find((one) => one.id === id)?.onHand;

/** The panel of no. 2 is stripped a week later. */
const leftInMould = (): PlanFile => {
  const plan = handPlan();
  const week = { stripStart: '2027-04-17T08:10:00+01:00', stripEnd: '2027-04-17T08:18:00+01:00' };
  plan.pours[1] = { ...plan.pours[1]!, ...week, pieceReadyAt: week.stripEnd };
  return plan;
};

/* By hand: both moulds are poured, stripped and dirty; the order has its panel of no. 1 and the finished one. */
/** The plan by hand of a mould that needs no coat. */
const uncoated = (): PlanFile => ({ ...handPlan(), coats: [] });

describe('a session of which nothing is written down', () => {
  test('counts as worked as planned', () => {
    const { yard } = written(yardAfter());
    expect(yard.inMould).toEqual([]);
    expect(yard.moulds.map(({ condition }) => condition)).toEqual(['dirty', 'dirty']);
    expect(mouldOf(yard, '900 no. 1')?.turnsSinceOil).toBe(1);
    expect(mouldOf(yard, '900 no. 2')?.turnsSinceOil).toBe(1);
    // The finished panel and that of no. 1 went into the order; that of no. 2 stands in the yard.
    expect(yard.finished.map(({ casting, count }) => [casting, count])).toEqual([['panel-900', 1]]);
    expect(yard.orders).toMatchObject([{ id: '27-001', lines: [] }]);
    expect(onHand(yard, 'mortar')).toBe(2);
    expect(onHand(yard, 'mesh')).toBeCloseTo(4 - 2 * 0.16, 9);
    expect(yard.materials.find(({ id }) => id === 'rod')).toMatchObject({
      ...{ onHand: 2, offcuts: [{ lengthMm: 3000 - 2 * 303, count: 1 }] },
    });
  });

  test('stays in the plan just as it was', () => {
    const { batches, pours, orders, score } = planned(yardAfter());
    expect([batches, pours, orders]).toEqual([handPlan().batches, handPlan().pours, handPlan().orders]);
    expect(score).toMatchObject({ batches: 1, bags: 1 });
  });

  test('gives the order the very piece that was planned for it, not the first one out', () => {
    const plan = handPlan();
    const [{ order: _order, ...one }, two] = plan.pours as [(typeof plan.pours)[0], (typeof plan.pours)[0]];
    const swapped = planned(yardAfter(), { ...plan, pours: [one, { ...two, order: '27-001' }] });
    expect(swapped.pours.map(({ id, order }) => [id, order])).toEqual([
      ['P1', undefined],
      ['P2', '27-001'],
    ]);
  });

  test('has no packing of an order that is packed already', () => {
    const orders = yardAfter().orders.map((order) => ({ ...order, lines: [] }));
    const onlyPacked = { ...uncoated(), batches: [], pours: [] };
    expect(withLateWorkDone({ ...yardAfter(), orders }, onlyPacked)).toBeNull();
    expect(withLateWorkDone(yardAfter({ finished: [{ casting: 'panel-900', count: 2 }] }), onlyPacked)).not.toBeNull();
  });

  const moulds = (now: string) =>
    withLateWorkDone(plannedYard({ yard: { ...plannedYard().yard, now } }), handPlan())?.yard.moulds.map(
      ({ condition, prepped }) => `${condition}${prepped ? ', set up' : ''}`,
    );

  test('counts step by step as its times pass, and however long after it', () => {
    expect(moulds(saturday('08:00'))).toBeUndefined();
    expect(moulds(saturday('08:21'))).toEqual(['ready', 'dirty']);
    expect(moulds(saturday('08:22'))).toEqual(['ready, set up', 'dirty']);
    expect(moulds(saturday('10:45'))).toEqual(['dirty', 'ready']);
    expect(moulds('2027-06-12T09:00:00+01:00')).toEqual(['dirty', 'dirty']);
  });
});

describe('work under way', () => {
  const midway = (now: string, changes: Partial<YardFile> = {}, notDone: string[] = []) =>
    withLateWorkDone(plannedYard({ yard: { ...plannedYard().yard, now }, ...changes }), handPlan(), new Set(notDone));
  const onHand = (yard: YardFile | undefined) => yard?.materials.map((material) => material.onHand);

  /* Mixed from 9:05, the last mould full at 9:29: until it is washed up its bag is gone, and no mould is full by the book. */
  test('holds what it is done with, and its materials are out of stock', () => {
    const yard = midway(saturday('09:10'))?.yard;
    expect(yard?.begun).toMatchObject({
      batches: [{ id: 'B1', start: saturday('09:05') }],
      pours: [{ id: 'P1' }, { id: 'P2' }],
      strips: [],
    });
    expect(yard?.inMould).toEqual([]);
    expect(onHand(yard)).not.toEqual(onHand(plannedYard()));
  });

  test('is what has begun, the very minute included, and is not over', () => {
    const begun = (now: string) => midway(now)?.yard.begun?.batches.length ?? 0;
    expect([saturday('09:04'), saturday('09:05')].map(begun)).toEqual([0, 1]);
    const { end } = handPlan().batches[0]!;
    expect(begun(end)).toBe(0);
  });

  test('ends where somebody says that it was not begun, or cannot have begun', () => {
    const name = `late-batch-${minuteOf(saturday('09:05'))}-${encodeURIComponent('900 no. 1')}`;
    expect(midway(saturday('09:10'), {}, [name])?.yard.begun).toBeUndefined();
    const full = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('08:30') }];
    expect(midway(saturday('09:10'), { inMould: full })?.yard.begun).toBeUndefined();
  });

  test('goes on in a mould that is mended by its day, though nobody marked it so', () => {
    const { mould, prepStart } = handPlan().pours[1]!;
    const damaged = { condition: 'damaged' as const, repairedOn: '2027-04-10' };
    const moulds = plannedYard().moulds.map((one) => (one.id === mould ? { ...one, ...damaged } : one));
    expect(midway(prepStart, { moulds })?.yard.begun?.preps.map((prep) => prep.mould)).toContain(mould);
    const later = moulds.map((one) => ({ ...one, repairedOn: '2027-04-11' }));
    expect(midway(prepStart, { moulds: later })?.yard.begun?.preps ?? []).toEqual([]);
  });

  test('is in the plan made round it as it was', () => {
    const { yard, putBack } = midway(saturday('09:10'))!;
    const { plan } = putBack(planYard(yard, { effort: 'quick' }));
    expect(plan.batches).toContainEqual(handPlan().batches[0]);
    expect(plan.pours.map(({ id, mould, fillEnd }) => [id, mould, fillEnd])).toEqual(
      expect.arrayContaining(handPlan().pours.map(({ id, mould, fillEnd }) => [id, mould, fillEnd])),
    );
  });
});

describe('a piece that is stripped in a later session', () => {
  test('is in its mould until then', () => {
    const { yard } = written(yardAfter(), leftInMould());
    expect(yard.inMould).toEqual([{ mould: '900 no. 2', casting: 'panel-900', filledAt: saturday('09:29') }]);
  });

  test('has the strip and the order that the new plan gives it', () => {
    const order = { id: '27-002', customer: 'Ann', due: '2027-04-24', lines: [{ casting: 'panel-900', quantity: 1 }] };
    const orders = [...yardAfter().orders, order];
    const plan = planned(yardAfter({ orders }), leftInMould());
    const [, second] = plan.pours;
    expect(second).toMatchObject({ mould: '900 no. 2', order: '27-002', fillEnd: saturday('09:29') });
    expect(second?.stripStart).toMatch(/^2027-04-17T08:/);
    expect(plan.pours).toHaveLength(2);
    expect(plan.strips).toEqual([]);
  });

  test('is kept beside a plan in which it would never come out', () => {
    const found = written(yardAfter(), leftInMould());
    const plan = planYard(found.yard, { effort: 'quick' });
    const never = { ...plan, strips: [], unstripped: [{ mould: '900 no. 2', reason: 'no hours' }] };
    const { plan: back, aside } = found.putBack(never);
    expect([back.batches, back.unstripped]).toEqual([[], []]);
    expect(aside?.pours.map(({ mould }) => mould)).toEqual(['900 no. 1', '900 no. 2']);
  });
});

describe('work that is written down in part', () => {
  const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:22'), order: '27-001' }];
  const { batches: _batches, pours: _pours, ...rest } = handPlan();
  const stripTimes = {
    stripStart: saturday('10:37'),
    stripEnd: saturday('10:45'),
    pieceReadyAt: saturday('10:45'),
  };
  const poured: PlanFile = {
    ...rest,
    ...{ batches: [], pours: [], strips: [{ mould: '900 no. 1', order: '27-001', ...stripTimes }] },
  };

  test('keeps the strip and the packing that follow', () => {
    const { yard } = written(yardAfter({ inMould }), poured);
    expect(yard.inMould).toEqual([]);
    expect(yard.finished).toEqual([]);
    const plan = planned(yardAfter({ inMould }), poured);
    expect([plan.strips, plan.orders]).toEqual([poured.strips, poured.orders]);
  });

  const scrapped = yardAfter().moulds.map((mould, place) =>
    place === 0 ? { ...mould, condition: 'retired' as const } : mould,
  );

  test.each([
    ['of which a mould is full already', { inMould }],
    ['for a mould that is scrapped since', { moulds: scrapped }],
  ])('keeps a batch %s to be answered, and counts nothing of it', (_of, changes) => {
    const yard = yardAfter(changes);
    const found = written(yard, uncoated());
    expect(found.yard).toEqual(yard);
    const { plan, aside } = found.putBack(planYard(yard, { effort: 'quick' }));
    expect(aside).toMatchObject({ batches: [{ start: saturday('09:05') }], strips: [], orders: [] });
    expect(aside?.pours.map(({ mould }) => mould)).toEqual(['900 no. 1', '900 no. 2']);
    const ids = [...plan.batches, ...plan.pours, ...aside!.batches, ...aside!.pours].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('lets go of a batch for a mould that is no longer there', () => {
    const moulds = yardAfter().moulds.slice(1);
    expect(withLateWorkDone(yardAfter({ moulds }), uncoated())).toBeNull();
  });

  test('gives an order a piece of nobody in place of one that is gone', () => {
    const plan = planned(yardAfter({ finished: [] }));
    expect(plan.pours.map(({ id, order }) => [id, order])).toEqual([
      ['P1', '27-001'],
      ['P2', '27-001'],
    ]);
    expect(plan.orders).toEqual([{ ...handPlan().orders[0], fromFinished: [] }]);
  });

  test('lets go of an order that is short of pieces', () => {
    const found = written(yardAfter({ finished: [] }), leftInMould());
    expect(found.yard.orders[0]?.lines).not.toEqual([]);
    const plan = planned(yardAfter({ finished: [] }), leftInMould());
    expect(plan.pours.map(({ id, order }) => [id, order])).toEqual([
      ['P1', '27-001'],
      ['P2', '27-001'],
    ]);
    expect(plan.orders[0]?.packStart).toMatch(/^2027-04-17/);
  });
});

test('a mould set up for a later session counts as set up, and has its set-up in the plan all the same', () => {
  const plan = handPlan();
  const later = (clock: string) => `2027-04-17T${clock}:00+01:00`;
  plan.batches = [
    { ...plan.batches[0]!, start: later('08:10'), mixEnd: later('08:20'), end: later('08:27'), pours: ['P1'] },
  ];
  plan.pours = [
    {
      ...{ ...plan.pours[0]!, prepStart: saturday('11:30'), prepEnd: saturday('11:42') },
      ...{ fillStart: later('08:20'), fillEnd: later('08:27') },
      ...{ stripStart: later('09:42'), stripEnd: later('09:50'), pieceReadyAt: later('09:50') },
    },
  ];
  plan.orders = [
    { ...plan.orders[0]!, packStart: later('09:50'), packEnd: later('09:55'), completesAt: later('09:55') },
  ];
  expect(mouldOf(written(yardAfter(), plan).yard, '900 no. 1')).toMatchObject({ prepped: true, setFor: 'panel-900' });
  // One that is set up already was set up by hand: nothing of it is late.
  const setUp = yardAfter().moulds.map((mould) => ({ ...mould, prepped: true, setFor: 'panel-900' }));
  expect(withLateWorkDone({ ...yardAfter(), moulds: setUp }, { ...plan, orders: [] })).toBeNull();
  const first = planned(yardAfter(), plan).pours.find(({ mould }) => mould === '900 no. 1');
  expect(first).toMatchObject({ prepStart: saturday('11:30'), prepEnd: saturday('11:42') });
  expect(first?.fillStart).toMatch(/^2027-04-17T08:/);
});

/** A random yard at the end of its first session, with the plan from before it; null where that has no batch. */
const randomAfter = (seed: number, kind: 'small' | 'odd' | 'tight-rack' | 'cold-spring') => {
  const { keep: _keep, ...yard } = randomYard(seed, kind);
  const plan = planYard(yard, { effort: 'quick' });
  const calendar = calendarOf(yard.yard.timeZone);
  const [session] = sessionsOf(yard, calendar);
  if (!session) return null;
  const isIn = (instant: string) => minuteOf(instant) >= session.start && minuteOf(instant) < session.end;
  const batches = plan.batches.filter(({ start }) => isIn(start));
  const later = { ...yard, yard: { ...yard.yard, now: calendar.instantText(session.end) } };
  return batches.length === 0 ? null : { plan, batches, yard: later };
};

describe.each(['small', 'odd', 'tight-rack', 'cold-spring'] as const)('a random yard (%s)', (kind) => {
  test.each([1, 2, 3, 4, 5, 8])('%i keeps the whole session, and every piece is somebody’s once', (seed) => {
    const found = randomAfter(seed, kind);
    if (!found) return;
    const back = planned(found.yard, found.plan);
    expect(back.batches.slice(0, found.batches.length).map(({ start, bags }) => [start, bags])).toEqual(
      found.batches.map(({ start, bags }) => [start, bags]),
    );
    const ids = [...back.batches, ...back.pours].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect([...back.strips, ...back.unstripped].map(({ mould }) => mould).sort()).toEqual(
      found.yard.inMould.map(({ mould }) => mould).sort(),
    );
    const taken = found.yard.finished.map(() => 0);
    for (const { id, fromFinished } of back.orders) {
      for (const { finished, count } of fromFinished) taken[finished] = (taken[finished] ?? 0) + count;
      const own = [...back.pours, ...back.strips].filter(({ order }) => order === id).length;
      const wanted = goodsOfLines(found.yard.orders.find((order) => order.id === id)?.lines ?? [], found.yard).pieces;
      const all = [...wanted.values()].reduce((sum, count) => sum + count, 0);
      expect(own + fromFinished.reduce((sum, { count }) => sum + count, 0)).toBe(all);
    }
    taken.forEach((count, place) => {
      expect(count).toBeLessThanOrEqual(found.yard.finished[place]?.count ?? 0);
    });
  });
});
