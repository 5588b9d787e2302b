import { describe, expect, test } from 'vitest';
import type { Material } from '../../../shared/material.ts';
import { minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { buyingModel } from '../../../src/usecases/buying/buying-model.ts';
import { stockFacts } from '../../../src/usecases/buying/stock-facts.ts';
import { METRIC } from '../../support/measures.ts';
import { handPlan, plannedYard } from '../../support/planned-yard.ts';

const NOW = '2027-04-08T09:00:00+01:00';
const nothing = {
  ...{ now: NOW, goods: [], notes: new Map<string, string>(), typed: new Map(), measures: METRIC, arrivals: new Map() },
  known: { suppliers: [], buyings: new Map(), leadDays: new Map(), floatDays: 0, holdingPercent: 20, kept: [] },
};
const goods = { id: 7, material: 'mortar', quantity: 4, on: '2027-04-09', boughtOn: '2027-04-06', price: 80 };

describe('what to buy', () => {
  test('is grouped by week and trip, with when, for whom and how much it costs', () => {
    // 3 bags less 2 always kept leave one, which the batch takes: what is bought is for nobody yet.
    const { weeks, thisWeek } = buyingModel({ yard: plannedYard(), plan: handPlan() }, nothing);
    expect(thisWeek).toBe('2027-04-05');
    expect(weeks).toMatchObject([
      {
        week: '2027-04-05',
        trips: [
          {
            name: 'Merchant',
            lines: [
              {
                material: 'mortar',
                quantity: 2,
                orderBy: '2027-04-08',
                on: '2027-04-11',
                price: 40,
                for: { customers: [], keep: null },
              },
            ],
          },
        ],
      },
    ]);
  });

  test('says where nothing is in hand though days are kept in hand for deliveries', () => {
    const asked = (deliveryDaysInHand: number, onHand: number) => {
      const yard = plannedYard();
      yard.yard.deliveryDaysInHand = deliveryDaysInHand;
      yard.materials.find(({ id }) => id === 'mortar')!.onHand = onHand;
      return buyingModel({ yard, plan: handPlan() }, nothing).weeks[0]?.trips[0]?.lines[0]?.hasNothingInHand;
    };
    // With 2 bags, of which one is poured, the two always kept are short as soon as more can be here; with 9 nothing is short.
    expect(asked(7, 2)).toBe(true);
    expect(asked(0, 2)).toBe(false);
    expect(asked(7, 9)).toBe(false);
  });

  test('names the customers whose uses it covers, and stock', () => {
    const yard = plannedYard({
      materials: plannedYard().materials.map((material) =>
        material.id === 'mortar' ? { ...material, onHand: 2 } : material,
      ),
    });
    const { weeks } = buyingModel({ yard, plan: handPlan() }, nothing);
    expect(weeks[0]?.trips[0]?.lines[0]?.for).toEqual({ customers: ['School garden', null], keep: null });
  });

  test('what is needed within two weeks is one trip, to order by the first of its days', () => {
    const plan = handPlan();
    plan.buys = [
      { material: 'mortar', quantity: 1, orderBy: '2027-04-10', arrivesOn: '2027-04-13' },
      { material: 'mortar', quantity: 2, orderBy: '2027-04-09', arrivesOn: '2027-04-12' },
      { material: 'mortar', quantity: 5, orderBy: '2027-04-12', arrivesOn: '2027-04-15' },
      { material: 'rod', quantity: 1, orderBy: '2027-04-11', arrivesOn: '2027-04-14' },
    ];
    const { weeks } = buyingModel({ yard: plannedYard(), plan }, nothing);
    const lines = weeks.map(({ week, trips }) => [
      week,
      trips.map(({ name, lines: all }) => [name, all.map(({ quantity, orderBy }) => [quantity, orderBy])]),
    ]);
    expect(lines).toEqual([
      [
        '2027-04-05',
        [
          ['Merchant', [[8, '2027-04-09']]],
          ['No supplier recorded', [[1, '2027-04-11']]],
        ],
      ],
    ]);
  });

  test('goods on their way come first, with whom they are for', () => {
    const yard = plannedYard({
      incoming: [{ material: 'mortar', quantity: 4, on: '2027-04-09' }],
      materials: plannedYard().materials.map((m) => (m.id === 'mortar' ? { ...m, onHand: 1 } : m)),
    });
    const { onTheWay, weeks } = buyingModel({ yard, plan: handPlan() }, { ...nothing, goods: [goods] });
    // One bag is less than the two always kept: the first that comes makes up for that, the next is for the batch.
    expect(onTheWay).toMatchObject([
      { id: 7, name: 'Fast-setting mortar', for: { customers: ['School garden', null], keep: 2 } },
    ]);
    expect(weeks[0]?.trips[0]?.lines[0]?.for).toEqual({ customers: [], keep: null });
  });
});

describe('what goes off', () => {
  const line = (pack: number, quantity: number, onHand: number) => {
    const materials = plannedYard().materials.map((m) =>
      m.id === 'mortar' ? { ...m, onHand, pack, minimum: 0, shelfLifeDays: 30 } : m,
    );
    const buys = [{ material: 'mortar', quantity, orderBy: '2027-04-08', arrivesOn: '2027-04-11' }];
    const { weeks } = buyingModel({ yard: plannedYard({ materials }), plan: { ...handPlan(), buys } }, nothing);
    return weeks[0]?.trips[0]?.lines[0]?.unused;
  };

  test('is told where more of a pack is left than is used, and until when it keeps', () => {
    expect(line(4, 4, 0)).toEqual({ days: 30, until: '2027-05-11', quantity: 3, unit: 'bag' });
    expect(line(2, 2, 0)).toMatchObject({ quantity: 1 });
  });

  test('is not told of the rest of a bag, which is what comes of buying whole ones', () => {
    expect(line(1, 1, 0.5)).toBeNull();
  });
});

describe('what is in the yard', () => {
  const material = plannedYard().materials[0]!;
  const clock = { now: minuteOf('2027-04-08T09:00:00+01:00'), calendar: calendarOf('Europe/Dublin') };
  const use = (date: string, quantity: number) => ({
    ...{ at: minuteOf(`${date}T10:00:00+01:00`), quantity, orders: ['A'] },
  });
  const uses = (quantity: number) => [use('2027-04-10', quantity)];
  const counted = (stock: Partial<Material>, of: ReturnType<typeof uses>, past = 0) =>
    stockFacts({ ...material, ...stock }, of, past, clock);

  test('is spoken for as the plan takes it, what is always kept as well once it comes to that', () => {
    expect(counted({ onHand: 9 }, uses(6))).toMatchObject({ inYard: 9, spokenFor: 6, spare: 3 });
    expect(counted({ onHand: 9 }, uses(20))).toMatchObject({ spokenFor: 9, spare: 0 });
    expect(counted({ onHand: 1 }, uses(20))).toMatchObject({ spokenFor: 1, spare: 0 });
  });

  // 8 bags to spare beside "runs short" was what the page said of bags past their date.
  test('is never spare where it is past its date, or will be when it is needed', () => {
    const lots = [
      { quantity: 3, useBy: '2027-04-07' },
      { quantity: 4, useBy: '2027-04-12' },
    ];
    const stock = { onHand: 8, lots };
    expect(counted(stock, [use('2027-04-17', 3)], 3)).toEqual({
      ...{ inYard: 8, past: 3, spokenFor: 1, goesOff: 4, spare: 0 },
    });
    // In time they are used first, and what nothing needs is spare as long as it is good.
    expect(counted(stock, [use('2027-04-10', 2)], 3)).toMatchObject({ spokenFor: 2, goesOff: 0, spare: 3 });
    expect(counted(stock, [], 3)).toMatchObject({ spokenFor: 0, goesOff: 0, spare: 5 });
  });

  test('of lengths is whole ones', () => {
    const rod = plannedYard().materials[2]!;
    const stock = { ...rod, onHand: 2.7, offcuts: [{ lengthMm: 900, count: 1 }] };
    expect(counted(stock, uses(1))).toMatchObject({ inYard: 2, spokenFor: 1, spare: 1 });
    expect(counted({ ...rod, onHand: 3 }, [])).toMatchObject({ inYard: 3 });
  });
});
