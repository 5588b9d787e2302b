import { describe, expect, test } from 'vitest';
import { COST_KINDS } from '../../../shared/money.ts';
import type { Cost } from '../../../src/engine/cost/cost.ts';
import { estimatesOf } from '../../../src/engine/cost/estimates.ts';
import type { CostFigures } from '../../../src/engine/cost/figures.ts';
import { priceWithMargin } from '../../../src/engine/cost/margin.ts';
import { pricedLots } from '../../../src/engine/cost/priced-lots.ts';
import { sessionCosts } from '../../../src/engine/cost/session-costs.ts';
import { sessionShare } from '../../../src/engine/cost/session-share.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { smallYard } from '../../support/small-yard.ts';

/**
 * One mould, one person, one session on Saturday 10 April, two bags of mortar in the yard; a kit of two panels and two pins is
 * ordered. All money in cents.
 *
 * The mix: a bag makes 30 kg, a panel weighs 13.6 kg, so each panel has a bag to itself and 16.4 kg are thrown away.
 * Of the mortar 3 bags came on 20 March for 64.00, of which one is left, and 1 bag on 2 April for 21.00:
 *   the first bag costs what is left of 6400 after two thirds: 6400 - 4267 = 2133, the second 2100;
 *   2133 shared by 13.6 and 16.4 kg is 966.96 and 1166.04: 967 poured, 1166 thrown away;
 *   2100 is 952 and 1148.
 * Work, at 18.00 an hour, 30 a minute: the first panel is set up (12), mixed (10), filled (7), washed out (5), stripped (8):
 *   42 minutes; the second is cleaned first (6): 48 minutes; the kit is packed in 5. 95 minutes are 2850: 1260, 1440, 150.
 * The mould cost 100.00 and lasts 30 turns: 333.33 a turn, so 333 for the first, and 667 for two less that: 334.
 * The session costs 12.00 whatever is made: 1200 by 42, 48 and 5 minutes is 530.53, 606.32, 63.16: 531, 606, 63.
 * Two pins of 300 mm from a rod of 3000 mm that costs 11.90, with a saw cut of 3 mm: 606 mm are gone, what is left is of
 *   use. 1190 x 606 / 3000 = 240.38: 240, of which 600 parts of 606 are in the pins: 237.62 and 2.38: 238 and 2.
 *
 * First panel:   967 + 1166 + 1260 + 333 + 531 = 4257
 * Second panel:  952 + 1148 + 1440 + 334 + 606 = 4480
 * Kit, packing:  238 + 2 + 150 + 63            =  453
 * The session:   2133 + 2100 + 2850 + 667 + 1200 + 240 = 9190 = 4257 + 4480 + 453
 */
const yard = smallYard({
  work: [],
  extra: [{ date: '2027-04-10', start: '08:00', end: '11:55' }],
  materials: [
    { id: 'mortar', name: 'Fast-setting mortar', unit: 'bag', onHand: 2 },
    { id: 'rod', name: 'Rod 12 mm', unit: 'stick', onHand: 3, stickMm: 3000, leadDays: 3, kerfMm: 3 },
  ],
  mixes: [
    {
      ...{ id: 'thin', name: 'Thin panel mix', yieldKgPerBag: 30, maxBags: 1, mixMinutes: 10, workingMinutes: 20 },
      ...{ washMinutes: 5, demouldMinutes: 75, cureHours: 0, perBag: [{ material: 'mortar', quantity: 1 }] },
    },
  ],
  moulds: [{ id: '900 no. 1', makes: [{ casting: 'panel-900' }], setFor: 'panel-900', condition: 'ready' }],
});

const bags = [
  { quantity: 3, on: '2027-03-20', price: 6400 },
  { quantity: 1, on: '2027-04-02', price: 2100 },
];
const figures: CostFigures = {
  ...{ wageHour: 1800, sessionFixed: 1200, rejects: 0.05, usedUp: [] },
  moulds: new Map([['900 no. 1', { cost: 10_000, turns: 30 }]]),
  materials: new Map([
    ['mortar', { lots: pricedLots(2, bags, []), unitPrice: null }],
    ['rod', { lots: [], unitPrice: 1190 }],
  ]),
};
const nothingSaid: CostFigures = {
  ...{ wageHour: null, sessionFixed: null, rejects: null, moulds: new Map(), materials: new Map(), usedUp: [] },
};

const plan = planYard(yard, { effort: 'quick' });
/** The parts that are something. */
const partsOf = ({ parts }: Cost) =>
  Object.fromEntries(COST_KINDS.filter((x) => parts[x] !== 0).map((x) => [x, parts[x]]));

describe('a session worked out by hand', () => {
  const sessions = sessionCosts(yard, plan, figures);
  const [first, second] = [...plan.pours].sort((a, b) => (a.fillStart < b.fillStart ? -1 : 1));
  const of = (owner: string) => sessions[0]!.owners.get(owner)!;

  test('the first panel', () => {
    expect(partsOf(of(`pour ${first!.id}`))).toEqual({
      ...{ mix: 967, 'thrown away': 1166, work: 1260, mould: 333, session: 531 },
    });
    expect(of(`pour ${first!.id}`).total).toBe(4257);
  });

  test('the second panel', () => {
    expect(partsOf(of(`pour ${second!.id}`))).toEqual({
      ...{ mix: 952, 'thrown away': 1148, work: 1440, mould: 334, session: 606 },
    });
    expect(of(`pour ${second!.id}`).total).toBe(4480);
  });

  test('packing, with the pins', () => {
    expect(partsOf(of('order 27-001'))).toEqual({ cuts: 238, 'cut waste': 2, work: 150, session: 63 });
  });

  test('all of it, to the cent', () => {
    expect(sessions).toHaveLength(1);
    expect(sessions[0]).toMatchObject({ total: 9190, minutes: 95, rest: { total: 0 } });
    expect([...sessions[0]!.owners.values()].reduce((sum, { total }) => sum + total, 0)).toBe(9190);
    expect([...sessions[0]!.owners.values()].flatMap(({ missing }) => missing)).toEqual([]);
  });
});

/**
 * One panel of the next bag: 967 + 1166 of mix; with cleaning 48 minutes: 1440; a turn 333; of the session 1200 over the 235
 * minutes that somebody is there, 5.11 a minute: 245. Together 4151. Of a hundred five are scrap: 4151 x 5 / 95 = 218.47: 218.
 * In all 4369.
 * Of a whole rod come 9 pins, and 273 mm that are of no use: two pins are 2 / 9 of 1190 = 264.44: 264, of which 600 parts of
 * 666.67 are in them: 238 and 26. The kit: two panels 8738, pins 264, packing 150, of the session 5 minutes: 25.53: 26; 9178.
 * With a margin of 30 %: 9178 / 0.7 = 13111.43.
 */
describe('estimates worked out by hand', () => {
  const ground = { yard, figures, perMinute: sessionShare(yard, figures) };
  const estimates = estimatesOf(ground);

  test('a panel', () => {
    expect(partsOf(estimates.ofCasting('panel-900'))).toEqual({
      ...{ mix: 967, 'thrown away': 1166, work: 1440, mould: 333, session: 245, rejects: 218 },
    });
    expect(estimates.ofCasting('panel-900').total).toBe(4369);
  });

  // A fiftieth of a can of release oil at 1190 for each turn, and 8 hundredths for each batch, which is of one panel here: 119.
  test('a panel, with what is used up without a recipe', () => {
    const usedUp = [{ material: 'rod', perTurn: 0.02, perBatch: 0.08 }];
    const cost = estimatesOf({ ...ground, figures: { ...figures, usedUp } }).ofCasting('panel-900');
    // (4151 + 119) x 5 / 95 = 224.74 of rejects.
    expect(cost.parts).toMatchObject({ goods: 119, rejects: 225 });
    expect(cost.total).toBe(4151 + 119 + 225);
  });

  test('a kit, and its price', () => {
    expect(estimates.ofKit('pair').total).toBe(9178);
    expect(priceWithMargin(9178, 0.3)).toBe(13_111);
  });

  test('a line of an order', () => {
    expect(estimates.ofLine({ kit: 'pair', quantity: 3 }).total).toBe(27_534);
    expect(estimates.ofLine({ casting: 'panel-900', quantity: 2 }).total).toBe(8738);
    expect(estimates.ofLine({ material: 'rod', quantity: 2 }).total).toBe(2380);
  });

  test('what nobody said is told', () => {
    const { missing, total } = estimatesOf({ yard, figures: nothingSaid, perMinute: 0 }).ofKit('pair');
    expect(total).toBe(0);
    expect(missing).toEqual([
      { what: 'price', id: 'rod' },
      { what: 'wage', id: '' },
      { what: 'session', id: '' },
      { what: 'price', id: 'mortar' },
      { what: 'mould', id: '900 no. 1' },
      { what: 'rejects', id: '' },
    ]);
  });
});
