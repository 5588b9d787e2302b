import { describe, expect, it } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { yardSeeds } from '../../support/property-seed.ts';
import { datedYard } from '../../support/random-yard/dated-stock.ts';
import { suppliedYard } from '../../support/random-yard/suppliers.ts';
import { randomYard } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';

const SHOP = { name: 'Shop', opens: { rule: 'FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR', from: '2027-01-01' }, closed: [] };

/** Two panels for Saturday 17 April 2027, of a bag that is bought at a shop that is open on weekdays. */
const yardWith = (lead: number, shop: Partial<NonNullable<YardFile['suppliers']>[number]> = {}): YardFile => {
  const yard = smallYard();
  return {
    ...yard,
    materials: yard.materials.map((one) =>
      one.id === 'mortar' ? { ...one, onHand: 0, leadDays: lead, supplier: 'Shop' } : one,
    ),
    suppliers: [{ ...SHOP, ...shop }],
    orders: [{ ...yard.orders[0]!, due: '2027-04-17', notBefore: '2027-04-17' }],
  };
};

const faultsOf = (yard: YardFile, plan: PlanFile) => ({
  audit: audit(yard, plan).faults.filter((text) => text.includes('R10')).length > 0,
  referee: refereePlan(yard, plan).some(({ rule }) => rule === 'R10'),
});
const BOTH = { audit: true, referee: true };
const NEITHER = { audit: false, referee: false };

const planned = (yard: YardFile): PlanFile => planYard(yard, { effort: 'quick' });
const withBuy = (plan: PlanFile, orderBy: string, arrivesOn: string): PlanFile => ({
  ...plan,
  buys: plan.buys.map((buy) => (buy.material === 'mortar' ? { ...buy, orderBy, arrivesOn } : buy)),
});
const mortarIn = ({ buys }: PlanFile) =>
  buys.filter(({ material }) => material === 'mortar').map(({ orderBy, arrivesOn }) => ({ orderBy, arrivesOn }));

describe('what can be bought by when, by the days of a supplier', () => {
  it('is bought on the last day on which the shop is open, and never on one on which it is closed', () => {
    const yard = yardWith(0);
    const plan = planned(yard);
    // Used on Saturday the 17th: a shop that is always open would be gone to on that day.
    expect(mortarIn(plan)).toEqual([{ orderBy: '2027-04-16', arrivesOn: '2027-04-16' }]);
    expect(faultsOf(yard, plan)).toEqual(NEITHER);
    expect(faultsOf(yard, withBuy(plan, '2027-04-17', '2027-04-17'))).toEqual(BOTH);
    expect(faultsOf(yard, withBuy(plan, '2027-04-15', '2027-04-15'))).toEqual(BOTH);
  });

  it('comes on a day on which the shop brings things, ordered by the last day that leaves its days', () => {
    const yard = yardWith(2, { delivers: { rule: 'FREQ=WEEKLY;BYDAY=TU', from: '2027-01-01' } });
    const plan = planned(yard);
    expect(mortarIn(plan)).toEqual([{ orderBy: '2027-04-09', arrivesOn: '2027-04-13' }]);
    expect(faultsOf(yard, plan)).toEqual(NEITHER);
    // On a Sunday; sooner than it has to be; on a day on which nothing is brought.
    expect(faultsOf(yard, withBuy(plan, '2027-04-11', '2027-04-13'))).toEqual(BOTH);
    expect(faultsOf(yard, withBuy(plan, '2027-04-08', '2027-04-13'))).toEqual(BOTH);
    expect(faultsOf(yard, withBuy(plan, '2027-04-13', '2027-04-15'))).toEqual(BOTH);
  });

  it('holds a date up while the shop is closed', () => {
    const yard = yardWith(0, { closed: ['2027-04-12', '2027-04-13', '2027-04-14', '2027-04-15', '2027-04-16'] });
    const friday = { ...yard, yard: { ...yard.yard, now: '2027-04-10T06:00:00+01:00' } };
    const plan = planned(friday);
    expect(plan.batches.map(({ start }) => start.slice(0, 10))).toEqual(['2027-04-24']);
    expect(faultsOf(friday, plan)).toEqual(NEITHER);
    const open = planned({ ...friday, suppliers: [SHOP] });
    expect(open.batches.map(({ start }) => start.slice(0, 10))).toEqual(['2027-04-17']);
    expect(faultsOf(friday, open)).toEqual(BOTH);
  });

  // Fetched on Tuesdays and good until Friday: on Saturdays, the only day that is worked, there is none that was bought.
  const TUESDAYS = { opens: { rule: 'FREQ=WEEKLY;BYDAY=TU', from: '2027-01-01' } };
  const keepsFor = (shelfLifeDays: number, more: object = {}): YardFile => {
    const yard = yardWith(0, TUESDAYS);
    const [mortar, ...others] = yard.materials;
    return { ...yard, materials: [{ ...mortar!, shelfLifeDays, ...more }, ...others] };
  };

  it('is past its date where it keeps for less long than its shop is shut', () => {
    const yard = keepsFor(3);
    expect(planned(yard).unplanned).toMatchObject([{ cause: 'material', what: 'mortar' }]);
    // As if the shop were always open; and bought on the Tuesday before, past its date by then.
    const always = planned({ ...yard, suppliers: [] });
    expect(always.unplanned).toEqual([]);
    expect(faultsOf(yard, always)).toEqual(BOTH);
    expect(faultsOf(yard, withBuy(always, '2027-04-13', '2027-04-13'))).toEqual(BOTH);
    const longer = keepsFor(4);
    expect(mortarIn(planned(longer))).toEqual([{ orderBy: '2027-04-13', arrivesOn: '2027-04-13' }]);
    expect(faultsOf(longer, planned(longer))).toEqual(NEITHER);
  });

  it('is what is there already in between, of which none has to be kept then', () => {
    const yard = keepsFor(3, { onHand: 1, minimum: 1 });
    const plan = planned(yard);
    expect(plan.orders.map(({ completesOn }) => completesOn)).toEqual(['2027-04-17']);
    expect(mortarIn(plan)).toEqual([]);
    expect(faultsOf(yard, plan)).toEqual(NEITHER);
    const idle = { material: 'mortar', quantity: 1, orderBy: '2027-04-13', arrivesOn: '2027-04-13' };
    expect(faultsOf(yard, { ...plan, buys: [...plan.buys, idle] })).toEqual(BOTH);
    // On a day on which it can be had as much as the minimum has to be left.
    expect(faultsOf(keepsFor(4, { onHand: 1, minimum: 1 }), plan)).toEqual(BOTH);
  });

  it('is nothing that the shop sells where it is shut for good', () => {
    const yard = yardWith(0, { opens: { rule: 'FREQ=WEEKLY;BYDAY=MO;UNTIL=20270101', from: '2026-01-01' } });
    expect(planned(yard).unplanned).toMatchObject([{ cause: 'material', what: 'mortar' }]);
  });

  it('is judged alike on random yards, also where a buy is moved', { timeout: 120_000 }, () => {
    const moved = { found: 0, kept: 0 };
    for (const seed of yardSeeds(30, 3000)) {
      const yard = suppliedYard(datedYard(randomYard(seed, 'small'), seed), seed);
      const plan = planned(yard);
      expect({ seed, ...faultsOf(yard, plan) }).toEqual({ seed, ...NEITHER });
      for (const [i, buy] of plan.buys.entries()) {
        const other = { ...buy, orderBy: dateOfDay(dayNumber(buy.orderBy) - 1) };
        const faulty = faultsOf(yard, { ...plan, buys: plan.buys.with(i, other) });
        expect({ seed, i, same: faulty.audit === faulty.referee }).toEqual({ seed, i, same: true });
        moved[faulty.audit ? 'found' : 'kept']++;
      }
    }
    // A day sooner to order, and the same day to come, is wrong of every buy.
    expect(moved).toEqual({ found: expect.any(Number), kept: 0 });
    expect(moved.found).toBeGreaterThan(20);
  });

  it('is as it was where nothing is said of the shop', () => {
    const { suppliers: _suppliers, ...unsaid } = yardWith(2);
    const every = { ...unsaid, suppliers: [{ name: 'Shop', closed: [] }] };
    expect(JSON.stringify(planned(every))).toBe(JSON.stringify(planned(unsaid)));
    expect(faultsOf(every, planned(every))).toEqual(NEITHER);
  });
});
