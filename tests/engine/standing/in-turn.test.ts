import { describe, expect, test } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import type { YardFile, YardFileInput } from '../../../shared/yard-file.ts';
import { planWithMemory } from '../../../src/engine/plan.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { keepOfPlan } from '../../../src/engine/standing/keep-of-plan.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { handPlan, plannedYard } from '../../support/planned-yard.ts';
import { randomYard } from '../../support/random-yard.ts';

const faultsOf = (yard: YardFile, plan: PlanFile) => [
  ...audit(yard, plan).faults,
  ...refereePlan(yard, plan).map(({ rule, message }) => `referee: ${rule} ${message}`),
];
const dayOf = (plan: PlanFile, id: string) => plan.orders.find((order) => order.id === id)?.completesOn ?? null;

const [one] = plannedYard().orders;
const FOUR = { ...one!, lines: [{ kit: 'pair', quantity: 2 }] };
/** Two that want the same: one is ready on the second Saturday, the other on the third. */
const TWO = [FOUR, { ...FOUR, id: '27-002', customer: 'Allotment' }];

/** The plan that stands, with orders ready on these days; those with none are left out of it. */
const nearOf = (days: Record<string, string | null>): PlanFile => {
  const hand = handPlan();
  const left = Object.entries(days).filter(([, day]) => day === null);
  return {
    ...hand,
    orders: Object.entries(days).flatMap(([id, day]) => (day ? [{ ...hand.orders[0]!, id, completesOn: day }] : [])),
    unplanned: left.map(([id]) => ({ order: id, cause: 'time' as const, reason: 'no time' })),
  };
};

/** When the two are ready, planned beside the plan that stands; the plan is right in all else. */
const readyBy = (near: PlanFile | undefined, changes: Partial<YardFileInput> = {}) => {
  const yard = plannedYard({ finished: [], orders: TWO, ...changes });
  const { plan, memory } = planWithMemory(yard, { effort: 'quick', ...(near ? { near } : {}) });
  expect(faultsOf(yard, plan)).toEqual([]);
  const again = planWithMemory(yard, { effort: 'quick', near: plan, memory, standing: keepOfPlan(plan) }).plan;
  expect(again.orders).toEqual(plan.orders);
  return [dayOf(plan, '27-001'), dayOf(plan, '27-002')];
};

const [SOON, LATER] = ['2027-04-17', '2027-04-24'];
const SECOND_WAS_FIRST = nearOf({ '27-001': LATER, '27-002': SOON });

describe('of two orders that want the same', () => {
  test('none is put off for the other', () => {
    expect(readyBy(undefined)).toEqual([SOON, LATER]);
    expect(readyBy(SECOND_WAS_FIRST)).toEqual([LATER, SOON]);
  });

  test('none falls out for the other', () => {
    const days = { yard: { ...plannedYard().yard, horizonDays: 10 } };
    expect(readyBy(nearOf({ '27-001': SOON, '27-002': null }), days)).toEqual([SOON, null]);
    expect(readyBy(nearOf({ '27-001': null, '27-002': SOON }), days)).toEqual([null, SOON]);
  });

  test('the one that was later may be the sooner one where nobody is put off by it', () => {
    expect(readyBy(nearOf({ '27-001': '2027-05-01', '27-002': LATER }))).toEqual([SOON, LATER]);
  });

  test('neither has another date or weight, pieces of its own, or a day told just now', () => {
    const [first, second] = TWO;
    expect(readyBy(SECOND_WAS_FIRST, { orders: [{ ...first!, due: '2027-04-09' }, second!] })).toEqual([SOON, LATER]);
    expect(readyBy(SECOND_WAS_FIRST, { orders: [{ ...first!, weight: 3 }, second!] })).toEqual([SOON, LATER]);
    const finished = [{ casting: 'panel-900', count: 1, order: '27-001' }];
    expect(readyBy(SECOND_WAS_FIRST, { finished })).toEqual([SOON, LATER]);
    expect(readyBy(nearOf({ '27-002': SOON }))).toEqual([SOON, LATER]);
  });
});

/** Every order twice, wanted by its date and given none. */
const everyOrderTwice = (yard: YardFile): YardFile => {
  const free = <T extends { order?: string | undefined }>({ order: _order, ...piece }: T) => piece;
  return {
    ...yard,
    ...{ finished: yard.finished.map(free), inMould: yard.inMould.map(free) },
    orders: yard.orders.flatMap(({ due, ...order }) => {
      const wanted = due === undefined ? order : { ...order, wanted: due };
      return [wanted, { ...wanted, id: `${order.id} again` }];
    }),
  };
};

/* Seen: a mould was damaged for two weeks, and one order went from the 7th to the 16th while its equal came from the 21st to the 7th. */
test('where a mould is damaged, no order is later while one that wants the same is sooner than it was', () => {
  for (const [seed, damaged] of [
    [241, 'rapid-500 no. 2'],
    [242, 'rapid-610 no. 2'],
  ] as const) {
    const yard = everyOrderTwice(randomYard(seed, 'tight-rack'));
    const { plan, memory } = planWithMemory(yard, { effort: 'quick' });
    const repairedOn = dateOfDay(dayNumber(yard.yard.now.slice(0, 10)) + 14);
    const after: YardFile = {
      ...yard,
      moulds: yard.moulds.map((mould) =>
        mould.id === damaged ? { ...mould, condition: 'damaged', prepped: false, repairedOn } : mould,
      ),
      inMould: yard.inMould.filter(({ mould }) => mould !== damaged),
    };
    const standing = keepOfPlan(plan);
    const lost = new Set(standing.pours.filter(({ mould }) => mould === damaged).map(({ batch }) => batch));
    const stands = {
      batches: standing.batches.filter(({ id }) => !lost.has(id)),
      pours: standing.pours.filter(({ batch }) => !lost.has(batch)),
    };
    const is = planWithMemory(after, { effort: 'quick', near: plan, memory, standing: stands }).plan;
    expect(faultsOf(after, is), `seed ${seed}`).toEqual([]);
    for (const { id } of yard.orders.filter((order) => !order.id.endsWith('again'))) {
      const [was, now] = [plan, is].map((of) => [id, `${id} again`].map((name) => dayOf(of, name) ?? '9999')) as [
        [string, string],
        [string, string],
      ];
      const isSwapped = (now[0] > was[0] && now[1] < was[0]) || (now[1] > was[1] && now[0] < was[1]);
      expect(isSwapped && was[0] < was[1] !== now[0] < now[1], `seed ${seed}: ${id} ${was} ${now}`).toBe(false);
    }
  }
});
