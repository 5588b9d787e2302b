import { describe, expect, test } from 'vitest';
import { planWithMemory } from '../../../src/engine/plan.ts';
import { keepOfPlan } from '../../../src/engine/standing/keep-of-plan.ts';
import { standOn } from '../../../src/engine/standing/standing-plan.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';

/** Yards whose plan has coats, with it. */
const coated = (seeds: number, from: number) =>
  yardSeeds(seeds, from).flatMap((seed) => {
    const yard = randomYard(seed, 'small');
    const made = planWithMemory(yard, { effort: 'quick' });
    return made.plan.coats.length > 0 ? [{ seed, yard, ...made }] : [];
  });

describe('sealing coats of a plan that stands', { timeout: 60_000 }, () => {
  test('stay where pours alone stay, which could not be poured without', () => {
    const yards = coated(40, 14_000);
    expect(yards.length).toBeGreaterThan(5);
    for (const { seed, yard, plan, memory } of yards) {
      const { stood, freer } = standOn(yard, keepOfPlan(plan), memory);
      expect(
        [stood, freer].map(({ dropped }) => dropped.filter(({ pack }) => pack === undefined)),
        `seed ${seed}`,
      ).toEqual([[], []]);
    }
  });

  test('that are fixed stay beside what stands without any', () => {
    const [first] = coated(40, 14_000);
    const { yard, plan, memory } = first!;
    const keep = { batches: [], pours: [], coats: plan.coats };
    const { stood } = standOn({ ...yard, keep }, { batches: [], pours: [] }, memory);
    expect(stood.problem.yard.keep?.coats).toEqual(plan.coats);
  });

  test('are told where one that is fixed can stay no longer', () => {
    const [first] = coated(40, 14_000);
    const { yard, plan, memory } = first!;
    const [coat] = plan.coats;
    // Out of use from now on.
    const moulds = yard.moulds.map((one) => (one.id === coat!.mould ? { ...one, condition: 'retired' as const } : one));
    const keep = { batches: [], pours: [], coats: [coat!] };
    const from = { effort: 'quick' as const, near: plan, memory, standing: keep, given: [] };
    const after = planWithMemory({ ...yard, moulds, keep }, from).plan;
    expect(after.dropped).toMatchObject([{ coat: coat!.mould, at: coat!.start }]);
  });
});
