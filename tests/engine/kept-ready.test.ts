import { describe, expect, test } from 'vitest';
import type { PlanFile } from '../../shared/plan.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { withKeptReady } from '../../src/engine/kept-ready.ts';
import { sparesWanted, withSpares } from '../../src/engine/odds/spares.ts';
import { planWithMemory } from '../../src/engine/plan.ts';
import { refereePlan } from '../../src/engine/referee.ts';
import { audit } from '../contract/audit-plan.mjs';
import { yardSeeds } from '../support/property-seed.ts';
import { randomYard, type YardKind } from '../support/random-yard.ts';
import { smallYard } from '../support/small-yard.ts';

const NO_RECORD = { pieces: [], sessions: { bad: 0, of: 0 }, deliveries: [] };

const days = ({ orders }: PlanFile) => new Map(orders.map(({ id, completesOn }) => [id, completesOn]));
const forNobody = ({ pours }: PlanFile) => pours.filter(({ order }) => order === undefined);

const asPoured = ({ id, mould, fillStart }: PlanFile['pours'][number]) => `${id} ${mould} ${fillStart}`;

const planned = (yard: YardFile, count: number) => {
  const { plan, memory } = planWithMemory(yard, { effort: 'quick' });
  const wanted = yard.castings.slice(0, 2).map(({ id: casting }) => ({ casting, count }));
  const spares = sparesWanted(yard, plan, NO_RECORD);
  return { plan, spares, behind: withKeptReady(yard, plan, withSpares(wanted, spares), memory) };
};

const KINDS: readonly YardKind[] = ['small', 'typical', 'tight-rack', 'cold-spring'];

describe('what is to stand ready, with pieces to spare', () => {
  test.each(KINDS)('makes no order of a random yard later, and obeys every rule (%s)', { timeout: 60_000 }, (kind) => {
    let poured = 0;
    for (const seed of yardSeeds(4, 300)) {
      const yard = randomYard(seed, kind);
      const { plan, behind } = planned(yard, 2);
      expect(days(behind), `seed ${seed}`).toEqual(days(plan));
      const faults = [...audit(yard, behind).faults, ...refereePlan(yard, behind)];
      expect(faults, `seed ${seed}`).toEqual([]);
      const pours = new Set(behind.pours.map(asPoured));
      expect(plan.pours.map(asPoured).filter((one) => !pours.has(one))).toEqual([]);
      poured += behind.pours.length - plan.pours.length;
    }
    expect(poured).toBeGreaterThan(0);
  });

  test('is not poured for a day on which it is of no use', () => {
    const yard = smallYard();
    const { plan, memory } = planWithMemory(yard, { effort: 'quick' });
    const until = (by: string) =>
      forNobody(withKeptReady(yard, plan, [{ casting: 'panel-900', count: 1, by }], memory)).length;
    // Both moulds are filled for the order on 10 April: a third piece is there for the next Saturday.
    expect([until('2027-04-10'), until('2027-04-17')]).toEqual([0, 1]);
  });

  test('is poured behind the order, and only as many as there are not yet', () => {
    const yard = smallYard();
    expect(forNobody(planned(yard, 2).behind)).toHaveLength(2);
    const stocked = smallYard({ finished: [{ casting: 'panel-900', count: 3 }] });
    // Two of the three are for the order, the third counts.
    expect(forNobody(planned(stocked, 2).behind)).toHaveLength(1);
  });

  test('takes no bag from an order that waits for one', () => {
    const [mortar, rod] = smallYard().materials;
    const orders = [{ id: '27-001', due: '2027-04-10', lines: [{ kit: 'pair', quantity: 9 }] }];
    const short = smallYard({ materials: [{ ...mortar!, onHand: 3 }, rod!], orders });
    const { plan, behind } = planned(short, 2);
    expect(plan.unplanned).toMatchObject([{ order: '27-001', cause: 'material' }]);
    expect(behind).toBe(plan);
  });

  test('has its material bought, and no sooner than what orders need', () => {
    const materials = [
      { id: 'mortar', name: 'Mortar', unit: 'bag', onHand: 1, leadDays: 2 },
      smallYard().materials[1]!,
    ];
    const { plan, behind } = planned(smallYard({ materials }), 2);
    expect(plan.buys.filter(({ material }) => material === 'mortar')).toEqual([]);
    expect(behind.buys.filter(({ material }) => material === 'mortar')).toMatchObject([{ quantity: 1 }]);
  });
});
