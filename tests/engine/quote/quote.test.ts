import { describe, expect, test } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { planWithMemory } from '../../../src/engine/plan.ts';
import { quoteOrder } from '../../../src/engine/quote/quote.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { keepOfPlan } from '../../../src/engine/standing/keep-of-plan.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const pair = (id: string, due?: string) => ({ id, due, weight: 1, lines: [{ kit: 'pair', quantity: 1 }] });
/** Each mould turns once a Saturday: stripped the Saturday after it was filled. */
const slow = { mixes: [{ ...base.mixes[0]!, demouldMinutes: 1000 }] };

describe('a pair of panels in a yard of two moulds', () => {
  // Filled on Saturday the 10th, stripped and packed on the 17th: it is packed at the end of the session, so that the early
  // hours stay free for pours.
  test('nothing else to do: stripped a week after it is filled', () => {
    expect(quoteOrder(smallYard({ ...slow, orders: [] }), pair('new'))).toEqual({
      earliestAt: '2027-04-17T12:00:00+01:00',
      earliestOn: '2027-04-17',
      promiseOn: '2027-04-17',
      ifFirstOn: '2027-04-17',
      proven: true,
      limits: [],
    });
  });

  // The bound that proves a day knows of no promise: beside one that cannot be moved nothing is proven, though it is so.
  test('is proven where no promise stands before it, or the one that does can be moved', () => {
    const beside = (due: string) => quoteOrder(smallYard({ ...slow, orders: [pair('a', due)] }), pair('new'));
    expect(beside('2027-04-17')).toMatchObject({ earliestOn: '2027-04-24', ifFirstOn: '2027-04-17', proven: false });
    expect(beside('2027-05-01')).toMatchObject({ earliestOn: '2027-04-17', proven: true });
  });

  test('behind a pair that is promised: a week later, unless it goes first', () => {
    expect(quoteOrder(smallYard({ ...slow, orders: [pair('a', '2027-04-17')] }), pair('new'))).toMatchObject({
      earliestOn: '2027-04-24',
      ifFirstOn: '2027-04-17',
    });
  });

  // What is wanted for the 24th can wait a week: a planned date may move, a promise is kept.
  test('before one that can wait', () => {
    expect(quoteOrder(smallYard({ ...slow, orders: [pair('a', '2027-04-24')] }), pair('new')).earliestOn).toBe(
      '2027-04-17',
    );
    expect(quoteOrder(smallYard({ ...slow, orders: [pair('a')] }), pair('new')).earliestOn).toBe('2027-04-17');
  });

  test('with a session in hand it is promised for the Saturday after', () => {
    const yard = { ...base.yard, sessionsInHand: 1 };
    expect(quoteOrder(smallYard({ ...slow, yard, orders: [] }), pair('new'))).toMatchObject({
      earliestOn: '2027-04-17',
      promiseOn: '2027-04-24',
    });
  });

  // The pair that is promised for the 24th is made on the 17th: the week between is there for mishaps, and stays.
  test('what others have in hand before their dates is not promised away', () => {
    const yard = { ...base.yard, sessionsInHand: 1 };
    const beside = (due: string) => smallYard({ ...slow, yard, orders: [pair('a', due)] });
    expect(quoteOrder(beside('2027-04-24'), pair('new'))).toMatchObject({
      earliestOn: '2027-04-17',
      promiseOn: '2027-05-01',
    });
    expect(quoteOrder(beside('2027-05-01'), pair('new'))).toMatchObject({
      earliestOn: '2027-04-17',
      promiseOn: '2027-04-24',
    });
  });

  test('and is still there once the order is taken for the day it was told', () => {
    const beside = smallYard({ ...slow, yard: { ...base.yard, sessionsInHand: 1 }, orders: [pair('a', '2027-04-24')] });
    const { plan, memory } = planWithMemory(beside, { effort: 'quick' });
    const taken = { ...beside, orders: [...beside.orders, { ...pair('new'), due: '2027-05-01' }] };
    const standing = keepOfPlan(plan);
    const after = planWithMemory(taken, { effort: 'quick', near: plan, memory, standing, given: ['a', 'new'] }).plan;
    expect(after.orders.map(({ id, completesOn }) => [id, completesOn])).toEqual([
      ['a', '2027-04-17'],
      ['new', '2027-04-24'],
    ]);
  });

  // Poured on Thursday the 8th, out of its mould and packed on the 10th: scrap, and cast again that evening, on the 12th.
  test('a session in hand is time enough to cast a piece again', () => {
    const evenings = { rule: 'FREQ=DAILY', from: '2027-01-04', start: '17:00', end: '20:00' };
    const mixes = [{ ...base.mixes[0]!, demouldMinutes: 2800, cureHours: 48 }];
    const asked = (sessionsInHand: number) => {
      const yard = { ...base.yard, sessionsInHand, handoverDays: undefined };
      return quoteOrder(smallYard({ yard, mixes, work: [evenings], orders: [] }), pair('new'));
    };
    expect(asked(0)).toMatchObject({ earliestOn: '2027-04-10', promiseOn: '2027-04-10' });
    expect(asked(1)).toMatchObject({ earliestOn: '2027-04-10', promiseOn: '2027-04-12' });
  });

  // Both are in their moulds since Tuesday, out and packed on Thursday the 8th: scrap, and cast again that evening, on the 10th.
  test('and a piece that is in its mould by then may be scrap as well', () => {
    const yard = { ...base.yard, sessionsInHand: 1, handoverDays: undefined };
    const mixes = [{ ...base.mixes[0]!, demouldMinutes: 2800, cureHours: 48 }];
    const work = [{ rule: 'FREQ=DAILY', from: '2027-01-04', start: '17:00', end: '20:00' }];
    const inMould = base.moulds.map(({ id }) => ({
      ...{ mould: id, casting: 'panel-900', filledAt: '2027-04-06T17:30:00+01:00' },
    }));
    expect(quoteOrder(smallYard({ yard, mixes, work, inMould, orders: [] }), pair('new'))).toMatchObject({
      earliestOn: '2027-04-08',
      promiseOn: '2027-04-10',
    });
  });

  // Poured on Monday the 12th and out on Wednesday, one session before its date: there it stays, though four are kept in hand.
  // The new pair is out on Saturday the 17th, and the fourth session after is on Monday the 26th.
  test('what is left of it to another order is not promised away either', () => {
    const yard = { ...base.yard, now: '2027-04-11T09:00:00+01:00', sessionsInHand: 4 };
    const work = [{ rule: 'FREQ=WEEKLY;BYDAY=MO,WE,SA', from: '2027-01-04', start: '08:00', end: '12:00' }];
    expect(
      quoteOrder(smallYard({ ...slow, yard, work, orders: [pair('a', '2027-04-17')] }), pair('new')),
    ).toMatchObject({
      earliestOn: '2027-04-17',
      promiseOn: '2027-05-01',
    });
  });

  // The mortar comes on the 12th, a week late on the 19th: Saturday the 17th, or the 24th.
  test('allows for goods that come late, where what is there does not do', () => {
    const mortar = { id: 'mortar', name: 'Fast-setting mortar', unit: 'bag', leadDays: 4 };
    const [, ...others] = base.materials;
    const asked = (deliveryDaysInHand: number, onHand: number) =>
      quoteOrder(
        smallYard({
          yard: { ...base.yard, deliveryDaysInHand },
          materials: [{ ...mortar, onHand }, ...others],
          orders: [],
        }),
        pair('new'),
      );
    expect(asked(0, 0)).toMatchObject({ earliestOn: '2027-04-17', promiseOn: '2027-04-17' });
    expect(asked(7, 0)).toMatchObject({ earliestOn: '2027-04-17', promiseOn: '2027-04-24' });
    expect(asked(7, 20)).toMatchObject({ earliestOn: '2027-04-10', promiseOn: '2027-04-10' });
  });

  test('from finished pieces it is packed on Saturday', () => {
    const finished = [{ casting: 'panel-900', count: 2 }];
    expect(quoteOrder(smallYard({ ...slow, finished, orders: [] }), pair('new')).earliestAt).toBe(
      '2027-04-10T12:00:00+01:00',
    );
  });

  /*
   * The one length of rod comes on the 17th, and what was promised is packed then: what is left of it is not there on the
   * 10th, though all else is.
   */
  test('what is left of a length that is cut on the 17th is packed no sooner than then', () => {
    const rod = { id: 'rod', name: 'Rod 12 mm', unit: 'stick', onHand: 0, stickMm: 3000, leadDays: 30, kerfMm: 3 };
    const yard = smallYard({
      materials: [base.materials[0]!, rod],
      incoming: [{ material: 'rod', quantity: 1, on: '2027-04-17' }],
      orders: [pair('a', '2027-04-17')],
    });
    const { plan, memory } = planWithMemory(yard);
    const standing = keepOfPlan(plan);
    const { earliestOn } = quoteOrder(yard, pair('new'), { memory, standing });
    expect(earliestOn).toBe('2027-04-17');
    const taken = { ...yard, orders: [...yard.orders, pair('new', earliestOn!)] };
    const given = ['a', 'new'];
    const { orders } = planWithMemory(taken, { effort: 'quick', memory, standing, given, near: plan }).plan;
    expect(orders.map(({ daysLate }) => daysLate)).toEqual([0, 0]);
  });

  test('its own date plays no part', () => {
    const yard = smallYard({ ...slow, orders: [pair('a', '2027-04-17')] });
    expect(quoteOrder(yard, pair('new', '2027-04-01'))).toEqual(quoteOrder(yard, pair('new')));
  });
});

describe('an order that cannot be made', () => {
  const none = { earliestAt: null, earliestOn: null, promiseOn: null, ifFirstOn: null, proven: false, limits: [] };
  test('for want of a mould', () => {
    const moulds = base.moulds.map((m) => ({ ...m, condition: 'retired' as const }));
    expect(quoteOrder(smallYard({ moulds, orders: [] }), pair('new'))).toEqual({
      ...none,
      reason: 'no usable mould makes panel 900',
    });
  });

  test('for want of mortar', () => {
    const materials = base.materials.map((m) => (m.id === 'mortar' ? { ...m, onHand: 0 } : m));
    expect(quoteOrder(smallYard({ materials, orders: [] }), pair('new'))).toEqual({
      ...none,
      reason: expect.stringMatching(
        /^Fast-setting mortar cannot be had: 0\.99 more bag are needed|^Fast-setting mortar cannot be had/,
      ),
    });
  });

  test('for want of time', () => {
    const yard = { ...base.yard, horizonDays: 1 };
    const quote = quoteOrder(smallYard({ yard, orders: [] }), pair('new'));
    expect(quote).toMatchObject(none);
    expect(quote.reason).toBeTruthy();
  });
});

const daysLate = (plan: PlanFile, id: string) => plan.orders.find((o) => o.id === id)?.daysLate ?? Infinity;

test('the date is met by a whole plan in which no promise gets later', { timeout: 60_000 }, () => {
  let asked = 0;
  for (const seed of yardSeeds(20)) {
    const yard = randomYard(seed, seed % 4 === 0 ? 'tight-rack' : 'small');
    if (yard.orders.length < 2) continue;
    const order = yard.orders.at(-1)!;
    const free = <T extends { order?: string }>(x: T): T => (x.order === order.id ? { ...x, order: undefined } : x);
    const without: YardFile = {
      ...yard,
      orders: yard.orders.slice(0, -1),
      finished: yard.finished.map(free),
      inMould: yard.inMould.map(free),
    };
    const { plan: present, memory } = planWithMemory(without, { effort: 'quick' });
    const { earliestOn } = quoteOrder(without, order, { memory });
    if (earliestOn === null) continue;
    const taken = { ...without, orders: [...without.orders, { ...order, due: earliestOn }] };
    const { plan } = planWithMemory(taken, { effort: 'quick', memory, near: present });
    const later = without.orders.filter((o) => daysLate(plan, o.id) > daysLate(present, o.id)).map((o) => o.id);
    expect({ later, late: daysLate(plan, order.id) }, `seed ${seed}`).toEqual({ later: [], late: 0 });
    expect(audit(taken, plan).faults).toEqual([]);
    expect(refereePlan(taken, plan)).toEqual([]);
    asked++;
  }
  expect(asked).toBeGreaterThan(8);
});
