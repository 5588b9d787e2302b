import { describe, expect, it } from 'vitest';
import type { PlanBuy, PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { readYardFile, type YardFile } from '../../../shared/yard-file.ts';
import type { TripSupplier } from '../../../src/engine/buy/bought-goods.ts';
import { type TripsAsked, tripsOf } from '../../../src/engine/buy/trips.ts';

/** Monday 5 April 2027. Work on Wednesdays and Saturdays. */
const yardOf = (materials: object[], yard: object = {}): YardFile => {
  const read = readYardFile({
    format: 'mould-rota/yard',
    version: 2,
    yard: { name: 'Test', timeZone: 'Europe/Dublin', now: '2027-04-05T07:30:00+01:00', horizonDays: 60, ...yard },
    work: [{ rule: 'FREQ=WEEKLY;BYDAY=WE,SA', from: '2027-01-01', start: '08:00', end: '16:00' }],
    ...{ closed: [], extra: [], temperatures: [], materials, incoming: [], mixes: [], castings: [], moulds: [] },
    ...{ kits: [], finished: [], inMould: [], orders: [] },
  });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.yard;
};

const MORTAR = { id: 'mortar', name: 'Mortar', unit: 'bag', onHand: 0, leadDays: 0, unitPrice: 10, supplier: 'Shop' };
const PINS = { id: 'pins', name: 'Pins', unit: 'each', onHand: 0, leadDays: 3, unitPrice: 1, supplier: 'Post' };

/** Bought so that it comes on a day. */
const buy = (material: string, quantity: number, orderBy: string, arrivesOn = orderBy): PlanBuy => ({
  ...{ material, quantity, orderBy, arrivesOn },
});

const SHOP: TripSupplier = {
  opens: { rule: 'FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR,SA', from: '2027-01-01' },
  ...{ delivers: null, closed: [], fetched: true, minimumOrder: 0, deliveryPrice: 0, carriesKg: null, aheadDays: 14 },
};

const trips = (
  materials: object[],
  buys: PlanBuy[],
  more: Partial<TripsAsked> & { yard?: never; in?: object } = {},
) => {
  const { in: yard = {}, ...asked } = more;
  return tripsOf({
    yard: yardOf(materials, yard),
    plan: { buys } as unknown as PlanFile,
    ...{ uses: new Map(), suppliers: new Map([['Shop', SHOP]]), figures: new Map(), floatDays: 0, today: '2027-04-05' },
    holdingPercent: 20,
    ...asked,
  });
};

const lines = (all: ReturnType<typeof trips>): string[] =>
  all.map(
    ({ supplier, day, lines }) =>
      `${supplier} ${day}: ${lines.map((line) => `${line.quantity} ${line.material} for ${line.comesOn}`).join(', ')}`,
  );

describe('buying by trips', () => {
  it('fetches what is needed on a Sunday on the open day before, and says so', () => {
    const all = trips([MORTAR], [buy('mortar', 2, '2027-04-11')]);
    expect(lines(all)).toEqual(['Shop 2027-04-10: 2 mortar for 2027-04-10']);
    expect(all[0]!.lines[0]).toMatchObject({ closedOn: '2027-04-11', mustBy: '2027-04-10', late: false });
  });

  it('bundles what is needed within two weeks, and no more', () => {
    const buys = [buy('mortar', 2, '2027-04-07'), buy('mortar', 1, '2027-04-20'), buy('mortar', 1, '2027-04-28')];
    expect(lines(trips([MORTAR], buys))).toEqual([
      'Shop 2027-04-07: 2 mortar for 2027-04-07',
      'Shop 2027-04-20: 2 mortar for 2027-04-20',
    ]);
  });

  // Needed on Monday the 12th: the shop is open the Saturday before, and can be gone to again if something was missing.
  it('has things there a worked day before they are needed', () => {
    expect(lines(trips([MORTAR], [buy('mortar', 2, '2027-04-12')], { floatDays: 1 }))).toEqual([
      'Shop 2027-04-10: 2 mortar for 2027-04-10',
    ]);
    const sundays = { ...SHOP, opens: { rule: 'FREQ=WEEKLY;BYDAY=SU,MO', from: '2027-01-01' } };
    const suppliers = new Map([['Shop', sundays]]);
    // Worked on Saturday the 10th and Wednesday the 7th, by the yard: two days in hand for Sunday the 11th are the 7th, and it was open on the 5th.
    const all = trips([MORTAR], [buy('mortar', 2, '2027-04-11')], { floatDays: 2, suppliers });
    expect(lines(all)).toEqual(['Shop 2027-04-05: 2 mortar for 2027-04-05']);
    expect(all[0]!.lines[0]).toMatchObject({ noneInHand: false, mustBy: '2027-04-11' });
  });

  it('says where nothing is in hand any more, and where it is too late', () => {
    const days = { closed: ['2027-04-05', '2027-04-06', '2027-04-07'] };
    const buys = [buy('mortar', 2, '2027-04-07'), buy('mortar', 2, '2027-04-10')];
    const all = trips([MORTAR], buys, { floatDays: 1, suppliers: new Map([['Shop', { ...SHOP, ...days }]]) });
    expect(lines(all)).toEqual(['Shop 2027-04-08: 4 mortar for 2027-04-08']);
    expect(all[0]!.lines[0]).toMatchObject({ late: true, mustBy: '2027-04-03', neededOn: '2027-04-07' });
  });

  // Brought on Thursdays, three days after the order: for Saturday the 17th by Thursday the 15th, so ordered on the 12th.
  it('orders what is brought so that it comes on a delivery day', () => {
    const thursdays = { rule: 'FREQ=WEEKLY;BYDAY=TH', from: '2027-01-01' };
    const post: TripSupplier = { ...SHOP, fetched: false, delivers: thursdays };
    const all = trips([PINS], [buy('pins', 40, '2027-04-14', '2027-04-17')], { suppliers: new Map([['Post', post]]) });
    expect(all[0]).toMatchObject({ day: '2027-04-12', fetched: false });
    expect(all[0]!.lines[0]).toMatchObject({ orderBy: '2027-04-12', comesOn: '2027-04-15', closedOn: null });
  });

  // A shop that has pins in three days: they are ordered on the 7th and fetched on the 10th, with the mortar.
  it('fetches what has to be ordered first with all else', () => {
    const pins = { ...PINS, supplier: 'Shop' };
    const buys = [buy('mortar', 2, '2027-04-12'), buy('pins', 40, '2027-04-07', '2027-04-10')];
    expect(trips([MORTAR, pins], buys)[0]).toMatchObject({
      day: '2027-04-10',
      lines: [
        { material: 'mortar', orderBy: '2027-04-10' },
        { material: 'pins', orderBy: '2027-04-07', comesOn: '2027-04-10' },
      ],
    });
  });

  it('says where it comes just in time', () => {
    const [trip] = trips([MORTAR], [buy('mortar', 2, '2027-04-05')], { floatDays: 1 });
    expect(trip!.lines[0]).toMatchObject({ noneInHand: true, late: false });
    expect(trips([MORTAR], [buy('mortar', 2, '2027-04-05')])[0]!.lines[0]).toMatchObject({ noneInHand: false });
  });

  // The yard file has pins take 13 days, because there are none before the 15th; ordered then they take their three days.
  it('orders what is not to be had on the day from which it is', () => {
    const figures = new Map([['pins', { leadDays: 3, notBefore: '2027-04-15', kgPerUnit: null, breaks: [] }]]);
    const all = trips([{ ...PINS, leadDays: 13 }], [buy('pins', 40, '2027-04-05', '2027-04-18')], { figures });
    expect(all[0]!.lines[0]).toMatchObject({ orderBy: '2027-04-15', comesOn: '2027-04-18' });
  });

  // Two bags used on the 7th, one on the 24th, and they keep ten days: the third is bought on the 14th at the earliest.
  it('buys nothing so early that it is too old before it is used', () => {
    const keeps = { ...MORTAR, shelfLifeDays: 10 };
    const at = (date: string, quantity: number) => ({ at: minuteOf(`${date}T09:00:00+01:00`), quantity });
    const uses = new Map([['mortar', [at('2027-04-07', 2), at('2027-04-17', 0.5), at('2027-04-24', 0.5)]]]);
    const buys = [buy('mortar', 2, '2027-04-07'), buy('mortar', 1, '2027-04-17')];
    expect(lines(trips([keeps], buys, { uses }))).toEqual([
      'Shop 2027-04-07: 2 mortar for 2027-04-07',
      'Shop 2027-04-17: 1 mortar for 2027-04-17',
    ]);
  });

  it('makes another trip where the vehicle is full, and adds up what it carries and costs', () => {
    const suppliers = new Map([['Shop', { ...SHOP, carriesKg: 300, deliveryPrice: 5 }]]);
    const figures = new Map([['mortar', { kgPerUnit: 25, breaks: [{ from: 10, unitPrice: 9 }] }]]);
    const all = trips([MORTAR], [buy('mortar', 20, '2027-04-07')], { suppliers, figures });
    expect(all.map(({ kg, price }) => ({ kg, price }))).toEqual([
      { kg: 250, price: 95 },
      { kg: 250, price: 95 },
    ]);
  });

  // With two days in hand the plan has it come on the 15th; it is needed on the 17th, and a day less is no harm.
  it('counts the days in hand of the plan as the days to go by, not as those that matter', () => {
    const uses = new Map([['pins', [{ at: minuteOf('2027-04-17T09:00:00+01:00'), quantity: 40 }]]]);
    const all = trips([PINS], [buy('pins', 40, '2027-04-12', '2027-04-15')], { uses, in: { deliveryDaysInHand: 2 } });
    expect(all[0]!.lines[0]).toMatchObject({ orderBy: '2027-04-12', neededOn: '2027-04-17', mustBy: '2027-04-14' });
  });

  it('takes a shop that is never there as if it always were, and says so', () => {
    const closed = Array.from({ length: 400 }, (_, i) => new Date(Date.UTC(2027, 0, 1 + i)).toISOString().slice(0, 10));
    const all = trips([MORTAR], [buy('mortar', 2, '2027-04-07')], {
      suppliers: new Map([['Shop', { ...SHOP, closed }]]),
    });
    expect(all).toMatchObject([{ day: '2027-04-07', neverThere: true }]);
  });
});
