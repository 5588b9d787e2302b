import { describe, expect, it } from 'vitest';
import type { Material } from '../../../shared/material.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { smallYard } from '../../support/small-yard.ts';

/** Two pairs of panels, a bag each, for Saturdays 10 and 17 April 2027; half bags can be mixed. */
const yardWith = (mortar: Partial<Material>): YardFile => {
  const yard = smallYard();
  const [order] = yard.orders;
  return {
    ...yard,
    materials: yard.materials.map((one) => (one.id === 'mortar' ? { ...one, ...mortar } : one)),
    mixes: yard.mixes.map((mix) => ({ ...mix, bagStep: 0.5 })),
    orders: [order!, { ...order!, id: '27-002', due: '2027-04-17', notBefore: '2027-04-17' }],
  };
};

const faultsOf = (yard: YardFile, plan: PlanFile) => ({
  audit: audit(yard, plan).faults.filter((text) => text.includes('R10')).length > 0,
  referee: refereePlan(yard, plan).some(({ rule }) => rule === 'R10'),
});
const BOTH = { audit: true, referee: true };
const NEITHER = { audit: false, referee: false };

describe('bags by their dates, in a plan', () => {
  it('are used no later than their date, as are those that were opened', () => {
    const good = yardWith({ onHand: 2, lots: [{ quantity: 2, useBy: '2027-04-17' }] });
    const plan = planYard(good, { effort: 'quick' });
    expect({ left: plan.unplanned.length, ...faultsOf(good, plan) }).toEqual({ left: 0, ...NEITHER });
    const past = yardWith({ onHand: 2, lots: [{ quantity: 2, useBy: '2027-04-16' }] });
    expect(faultsOf(past, plan)).toEqual(BOTH);
    const opened = [{ quantity: 2, useBy: '2027-05-01', openedAt: '2027-04-07T09:00:00+01:00' }];
    expect(faultsOf(yardWith({ onHand: 2, openedDays: 10, lots: opened }), plan)).toEqual(NEITHER);
    expect(faultsOf(yardWith({ onHand: 2, openedDays: 9, lots: opened }), plan)).toEqual(BOTH);
  });

  it('are not used after midnight of their day in a session that goes on into the next', () => {
    const night = (rule: string, start: string, end: string, allows: YardFile['work'][number]['allows']) => ({
      ...smallYard().work[0]!,
      ...{ rule, start, end, allows },
    });
    const work = [
      night('FREQ=WEEKLY;BYDAY=FR', '22:00', '24:00', ['prep']),
      night('FREQ=WEEKLY;BYDAY=SA', '00:00', '04:00', ['prep', 'batch', 'strip', 'pack']),
    ];
    const planned = (useBy: string) => {
      const yard = { ...yardWith({ onHand: 2, lots: [{ quantity: 2, useBy }] }), work };
      const plan = planYard(yard, { effort: 'quick' });
      expect(faultsOf(yard, plan)).toEqual(NEITHER);
      return plan.batches.map(({ start }) => start.slice(0, 16));
    };
    expect(planned('2027-04-10')).toEqual(['2027-04-10T00:00']);
    expect(planned('2027-04-09')).toEqual([]);
  });

  it('leave the rest of an opened one to be used in its days, and no later', () => {
    // One pair weighs 27.2 kg: one bag. Bags of two are opened: half of it is left for the second Saturday.
    const keeps = yardWith({ onHand: 2, opensBy: 2, openedDays: 7 });
    const plan = planYard(keeps, { effort: 'quick' });
    expect({ left: plan.unplanned.length, ...faultsOf(keeps, plan) }).toEqual({ left: 0, ...NEITHER });
    expect(faultsOf(yardWith({ onHand: 2, opensBy: 2, openedDays: 6 }), plan)).toEqual(BOTH);
  });

  it('are bought again where those there go past their date, not one more and not sooner', () => {
    const lots = [{ quantity: 2, useBy: '2027-04-10' }];
    const yard = yardWith({ onHand: 2, leadDays: 2, shelfLifeDays: 90, lots });
    const plan = planYard(yard, { effort: 'quick' });
    const mortar = { material: 'mortar', quantity: 1, orderBy: '2027-04-15', arrivesOn: '2027-04-17' };
    expect(plan.buys.filter(({ material }) => material === 'mortar')).toEqual([mortar]);
    expect(faultsOf(yard, plan)).toEqual(NEITHER);
    const withBuy = (buy: Partial<typeof mortar>): PlanFile => ({
      ...plan,
      buys: plan.buys.map((one) => (one.material === 'mortar' ? { ...mortar, ...buy } : one)),
    });
    expect(faultsOf(yard, withBuy({ quantity: 2 }))).toEqual(BOTH);
    expect(faultsOf(yard, withBuy({ orderBy: '2027-04-14', arrivesOn: '2027-04-16' }))).toEqual(BOTH);
    expect(faultsOf(yard, { ...plan, buys: plan.buys.filter(({ material }) => material !== 'mortar') })).toEqual(BOTH);
  });

  it('cannot be had where all are past their date, and the order says which', () => {
    const yard = yardWith({ onHand: 20, lots: [{ quantity: 20, useBy: '2027-04-10' }] });
    const plan = planYard(yard, { effort: 'quick' });
    expect(plan.unplanned).toMatchObject([{ order: '27-002', cause: 'material', what: 'mortar' }]);
    expect(plan.unplanned[0]!.reason).toBe('Fast-setting mortar goes past its date before that');
    expect(faultsOf(yard, plan)).toEqual(NEITHER);
  });
});
