import { expect, test } from 'vitest';
import type { PlanFile, PlanPour } from '../../../shared/plan.ts';
import { planWithMemory } from '../../../src/engine/plan.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { keepOfPlan } from '../../../src/engine/standing/keep-of-plan.ts';
import { standOn } from '../../../src/engine/standing/standing-plan.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';

/** Two pours of one batch in moulds of their own, the first of which has to be set up. */
const pairOf = ({ batches, pours }: PlanFile): [PlanPour, PlanPour] | null => {
  for (const { id } of batches) {
    const own = pours.filter(({ batch }) => batch === id);
    const setUp = own.find(({ prepStart, prepEnd }) => prepStart !== prepEnd);
    const other = own.find((pour) => pour !== setUp);
    if (setUp && other) return [setUp, other];
  }
  return null;
};

/* A set-up that was fixed, and whose batch could not stay, was neither in the plan nor among what was dropped (R13). */
test('a set-up that is fixed is done, or it is said why not, where its batch cannot stay', () => {
  let tried = 0;
  for (const seed of yardSeeds(40, 31_000)) {
    const yard = randomYard(seed, 'small');
    const { plan, memory } = planWithMemory(yard, { effort: 'quick' });
    const pair = pairOf(plan);
    if (!pair) continue;
    tried++;
    const [{ mould, casting, prepStart, prepEnd }, other] = pair;
    const keep = { batches: [], pours: [], preps: [{ mould, casting, prepStart, prepEnd }] };
    // The batch cannot be: one of its moulds is out of use from now on.
    const moulds = yard.moulds.map((one) => (one.id === other.mould ? { ...one, condition: 'retired' as const } : one));
    const broken = { ...yard, moulds, keep };
    const from = { effort: 'quick' as const, near: plan, memory, standing: keepOfPlan(plan), given: [] };
    const after = planWithMemory(broken, from).plan;
    const faults = [...audit(broken, after).faults, ...refereePlan(broken, after).map(({ message }) => message)];
    expect(faults, `seed ${seed}`).toEqual([]);
  }
  expect(tried).toBeGreaterThan(5);
}, 60_000);

test('a set-up that is fixed and a pour that stands needs is one and the same', () => {
  for (const seed of yardSeeds(40, 31_000)) {
    const yard = randomYard(seed, 'small');
    const { plan, memory } = planWithMemory(yard, { effort: 'quick' });
    const pair = pairOf(plan);
    if (!pair) continue;
    const [{ mould, casting, prepStart, prepEnd }] = pair;
    const own = { mould, casting, prepStart, prepEnd };
    const { stood } = standOn({ ...yard, keep: { batches: [], pours: [], preps: [own] } }, keepOfPlan(plan), memory);
    expect(stood.problem.yard.keep?.preps).toEqual([]);
    return;
  }
  expect.unreachable('no yard sets a mould up for a batch of two');
});
