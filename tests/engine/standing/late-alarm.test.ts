import { expect, test } from 'vitest';
import type { Keep, PlanFile } from '../../../shared/plan.ts';
import { readYardFile } from '../../../shared/yard-file.ts';
import { planWithMemory } from '../../../src/engine/plan.ts';
import type { PlanMemory } from '../../../src/engine/search/memory.ts';
import broken from './mould-broken.json' with { type: 'json' };

interface Question {
  near: PlanFile;
  memory: PlanMemory;
  standing: Keep;
  given: string[];
}

/* A mould of a yard with two mixes breaks. 27-011 was said to be three days late, and a plan made from nothing kept its day. */
test('no date is later after a mishap where a plan without a past keeps all of them', () => {
  const read = readYardFile(broken.yard);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const { near, memory, standing, given } = broken.options as unknown as Question;
  const { plan } = planWithMemory(read.yard, { effort: 'quick', near, memory, standing, given });
  const late = ({ orders }: PlanFile) => orders.map(({ id, daysLate }) => [id, daysLate]).sort();
  expect(late(plan)).toEqual(late(near));
});
