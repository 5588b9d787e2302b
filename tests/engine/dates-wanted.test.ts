import { describe, expect, it } from 'vitest';
import type { PlanFile } from '../../shared/plan.ts';
import { minuteOf } from '../../shared/time.ts';
import type { YardFile, YardFileInput } from '../../shared/yard-file.ts';
import { planYard } from '../../src/engine/plan.ts';
import { refereePlan } from '../../src/engine/referee.ts';
import { audit } from '../contract/audit-plan.mjs';
import { withDatesWanted } from '../support/dates-wanted.ts';
import { yardSeeds } from '../support/property-seed.ts';
import { randomYard } from '../support/random-yard.ts';
import { smallYard } from '../support/small-yard.ts';
import { yardWithFixedPours } from '../support/yard-with-fixed-pours.ts';

const faultsOf = (yard: YardFile, plan: PlanFile): string[] => [
  ...audit(yard, plan).faults,
  ...refereePlan(yard, plan).map((x) => `${x.rule} ${x.message}`),
];

type Orders = NonNullable<YardFileInput['orders']>;

/**
 * Two moulds of one panel and Saturdays alone, on which each makes one turn: two panels each Saturday, from the 10th on, out
 * the Saturday after. Kits of two panels: one order a Saturday.
 */
const base = smallYard();
const saturdays = (orders: Orders): YardFile =>
  smallYard({ mixes: [{ ...base.mixes[0]!, demouldMinutes: 1000 }], orders });
const pair = (id: string, dates: Partial<Orders[number]>): Orders[number] => ({
  id,
  lines: [{ casting: 'panel-900', quantity: 2 }],
  ...dates,
});
const daysOf = (plan: PlanFile): Record<string, string> =>
  Object.fromEntries(plan.orders.map(({ id, completesOn }) => [id, completesOn]));

describe.each(['quick', 'normal'] as const)('a plan by %s effort', (effort) => {
  it('keeps a date that was given before one that is only wanted, whatever the weights', () => {
    const yard = saturdays([
      pair('wanted', { wanted: '2027-04-17', weight: 100 }),
      pair('given', { due: '2027-04-17', weight: 0.1 }),
    ]);
    const plan = planYard(yard, { effort });
    expect(daysOf(plan)).toEqual({ wanted: '2027-04-24', given: '2027-04-17' });
    expect(plan.score).toMatchObject({ weightedDaysLate: 0, weightedDaysAfterWanted: 700 });
    expect(faultsOf(yard, plan)).toEqual([]);
  });

  it('serves the dates wanted where none was given', () => {
    const yard = saturdays([
      pair('later', { wanted: '2027-05-01' }),
      pair('never', { weight: 0.9 }),
      pair('first', { wanted: '2027-04-17' }),
      pair('second', { due: '2027-05-08', wanted: '2027-04-24' }),
    ]);
    const plan = planYard(yard, { effort });
    expect(daysOf(plan)).toEqual({
      first: '2027-04-17',
      second: '2027-04-24',
      later: '2027-05-01',
      never: '2027-05-08',
    });
    expect(plan.score).toMatchObject({ weightedDaysLate: 0, weightedDaysAfterWanted: 0 });
  });

  it('pours nothing for an order before its day, and others in the meantime', () => {
    const yard = saturdays([
      pair('waits', { due: '2027-04-17', notBefore: '2027-04-18', weight: 9 }),
      pair('other', { due: '2027-05-08' }),
    ]);
    const plan = planYard(yard, { effort });
    expect(daysOf(plan)).toEqual({ waits: '2027-05-01', other: '2027-04-17' });
    expect(faultsOf(yard, plan)).toEqual([]);
  });

  it('goes on with what an order that waits is given as soon as it may, before others', () => {
    const yard = saturdays([
      pair('other', { due: '2027-05-08' }),
      pair('third', { due: '2027-05-15' }),
      pair('waits', { due: '2027-05-01', notBefore: '2027-04-24' }),
    ]);
    expect(daysOf(planYard(yard, { effort }))).toEqual({
      other: '2027-04-17',
      third: '2027-04-24',
      waits: '2027-05-01',
    });
  });

  it('says why an order waits for a day beyond its last', () => {
    const yard = saturdays([pair('waits', { notBefore: '2030-01-01' }), pair('other', {})]);
    const plan = planYard(yard, { effort });
    expect(plan.unplanned).toEqual([
      { order: 'waits', cause: 'time', reason: 'nothing is to be poured or packed for it before 2030-01-01' },
    ]);
    expect(faultsOf(yard, plan)).toEqual([]);
  });
});

it('an order is not packed before its day, though all its pieces are there', () => {
  const yard = smallYard({
    finished: [{ casting: 'panel-900', count: 2 }],
    orders: [{ id: 'waits', notBefore: '2027-04-12', lines: [{ kit: 'pair', quantity: 1 }] }],
  });
  const [order] = planYard(yard, { effort: 'quick' }).orders;
  expect(minuteOf(order!.packStart!)).toBeGreaterThanOrEqual(minuteOf('2027-04-12T00:00:00+01:00'));
  expect(faultsOf(yard, planYard(yard, { effort: 'quick' }))).toEqual([]);
});

describe('random yards with dates wanted and first days', { timeout: 120_000 }, () => {
  it('are planned by the rules', () => {
    let [waits, afterWanted] = [0, 0];
    for (const seed of yardSeeds(40)) {
      const yard = withDatesWanted(randomYard(seed), seed);
      const plan = planYard(yard, { effort: 'quick' });
      expect({ seed, faults: faultsOf(yard, plan) }).toEqual({ seed, faults: [] });
      waits += yard.orders.filter(({ notBefore }) => notBefore && notBefore > yard.yard.now).length;
      if (plan.score.weightedDaysAfterWanted > 0) afterWanted++;
    }
    expect(waits).toBeGreaterThan(40);
    expect(afterWanted).toBeGreaterThan(10);
  });

  it('and so are they with their first days fixed', () => {
    for (const seed of yardSeeds(20)) {
      const yard = withDatesWanted(randomYard(seed), seed);
      const fixed = yardWithFixedPours(yard, planYard(yard, { effort: 'quick' }), seed, seed % 3);
      expect({ seed, faults: faultsOf(fixed, planYard(fixed, { effort: 'quick' })) }).toEqual({ seed, faults: [] });
    }
  });

  it('and by a longer search', () => {
    for (const seed of yardSeeds(3)) {
      const yard = withDatesWanted(randomYard(seed, 'small'), seed);
      const [quick, normal] = [planYard(yard, { effort: 'quick' }), planYard(yard, { effort: 'normal' })];
      expect({ seed, faults: faultsOf(yard, normal) }).toEqual({ seed, faults: [] });
      expect(normal.score.weightedDaysLate).toBeLessThanOrEqual(quick.score.weightedDaysLate + 1e-9);
    }
  });
});
