import { describe, expect, it } from 'vitest';
import type { YardFile } from '../../shared/yard-file.ts';
import { canonicalYard } from '../../src/engine/canonical-yard.ts';
import { planWithMemory, planYard } from '../../src/engine/plan.ts';
import { quoteOrder } from '../../src/engine/quote/quote.ts';
import { audit } from '../contract/audit-plan.mjs';
import { yardSeeds } from '../support/property-seed.ts';
import { datedYard } from '../support/random-yard/dated-stock.ts';
import { randomYard, YARD_KINDS } from '../support/random-yard.ts';
import { shuffledYard } from '../support/shuffled-yard.ts';

const yardOf = (seed: number): YardFile => datedYard(randomYard(seed, YARD_KINDS[seed % YARD_KINDS.length]!), seed);
const smallOf = (seed: number): YardFile => randomYard(seed, 'small');

describe('the order in which a file lists things', () => {
  it('is another in a shuffled yard, and makes no difference to what is planned', () => {
    const moved = yardSeeds(200, 3000).filter((seed) => {
      const yard = yardOf(seed);
      const shuffled = shuffledYard(yard, seed);
      expect(canonicalYard(shuffled).yard, `seed ${seed}`).toEqual(canonicalYard(yard).yard);
      return JSON.stringify(shuffled) !== JSON.stringify(yard);
    });
    expect(moved.length).toBeGreaterThan(150);
  });

  it('leaves the score as it is, and plans that name pieces and orders as the file does', { timeout: 120_000 }, () => {
    for (const seed of yardSeeds(40, 3000)) {
      const [yard, shuffled] = [smallOf(seed), shuffledYard(smallOf(seed), seed)];
      const effort = seed % 10 === 0 ? 'normal' : 'quick';
      const [plan, other] = [planYard(yard, { effort }), planYard(shuffled, { effort })];
      expect(other.score, `seed ${seed}`).toEqual(plan.score);
      expect(audit(shuffled, other).faults, `seed ${seed}`).toEqual([]);
      const listed = shuffled.orders.map(({ id }) => id).filter((id) => other.orders.some((one) => one.id === id));
      expect(other.orders.map(({ id }) => id)).toEqual(listed);
    }
  });

  it('leaves the day on which an order could be ready', () => {
    for (const seed of yardSeeds(12, 3100)) {
      const [yard, shuffled] = [smallOf(seed), shuffledYard(smallOf(seed), seed)];
      const kit = yard.kits[0]?.id;
      if (!kit) continue;
      const order = { id: 'asked', weight: 1, lines: [{ kit, quantity: 1 }] };
      const { memory } = planWithMemory(yard, { effort: 'quick' });
      expect(quoteOrder(shuffled, order, { memory }), `seed ${seed}`).toEqual(quoteOrder(yard, order, { memory }));
    }
  });
});
