import { describe, expect, test } from 'vitest';
import { type PlanFile, spellsOf } from '../../../shared/plan.ts';
import { planWithMemory } from '../../../src/engine/plan.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { keepOfPlan } from '../../../src/engine/standing/keep-of-plan.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';

/** What a plan says of pours, coats, strips and packings, whom the pieces are for apart. */
const told = ({ pours, coats, strips, orders }: PlanFile) => ({
  coats,
  pours: pours.map(({ order: _order, ...pour }) => pour).sort((a, b) => (a.id < b.id ? -1 : 1)),
  strips: strips.map(({ order: _order, ...strip }) => strip),
  packs: orders.flatMap((order) => spellsOf(order).map(({ packStart }) => ({ id: order.id, packStart }))),
});

describe('a plan of which everything is kept', { timeout: 120_000 }, () => {
  test('is the same plan again, in the same yard', () => {
    let moved = 0;
    for (const seed of yardSeeds(150, 9000)) {
      const yard = randomYard(seed, seed % 2 === 0 ? 'small' : undefined);
      const { plan, memory } = planWithMemory(yard, { effort: 'quick' });
      const kept = { ...yard, keep: keepOfPlan(plan) };
      const again = planWithMemory(kept, { effort: 'quick', near: plan, memory }).plan;
      // Where the pieces can be dealt better an order may be packed at another time.
      const missed = new Set(again.dropped.map(({ pack }) => pack));
      expect(missed.has(undefined), `seed ${seed}`).toBe(false);
      const { packs, ...rest } = told(plan);
      const stays = packs.filter(({ id }) => !missed.has(id));
      expect(told(again), `seed ${seed}`).toMatchObject({ ...rest });
      expect(told(again).packs, `seed ${seed}`).toEqual(expect.arrayContaining(stays));
      moved += missed.size;
      expect(again.score.weightedDaysLate, `seed ${seed}`).toBeLessThanOrEqual(plan.score.weightedDaysLate);
      const faults = [...audit(kept, again).faults, ...refereePlan(kept, again).map(({ message }) => message)];
      expect(faults, `seed ${seed}`).toEqual([]);
    }
    expect(moved).toBeLessThan(5);
  });
});
