import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { PlanFile } from '../../shared/plan.ts';
import { readYardFile, type YardFile } from '../../shared/yard-file.ts';
import { planYard } from '../../src/engine/plan.ts';
import { refereePlan } from '../../src/engine/referee.ts';
import { audit } from '../contract/audit-plan.mjs';
import { randomYard, type YardKind } from '../support/random-yard.ts';

/** What the independent check and the referee find; none for a plan that is in order. */
const faultsOf = (yard: YardFile, plan: PlanFile): string[] => [
  ...audit(yard, plan).faults,
  ...refereePlan(yard, plan).map((x) => `referee: ${x.rule} ${x.message}`),
];

const quickPlan = (yard: YardFile): PlanFile => planYard(yard, { effort: 'quick' });

const checkSeeds = (from: number, to: number, kind?: YardKind): void => {
  const faulty: Record<string, string[]> = {};
  for (let seed = from; seed < to; seed++) {
    const yard = randomYard(seed, kind);
    const faults = faultsOf(yard, quickPlan(yard));
    if (faults.length > 0) faulty[`seed ${seed}`] = faults.slice(0, 5);
  }
  expect(faulty).toEqual({});
};

const SEEDS = 560;
const SEEDS_PER_TEST = 40;
/** Far more than it takes: so that a busy machine fails nothing. */
const TIMEOUT_MS = 120_000;
const chunks = Array.from({ length: SEEDS / SEEDS_PER_TEST }, (_, i) => [i * SEEDS_PER_TEST, (i + 1) * SEEDS_PER_TEST]);

describe('plans obey every rule', { timeout: TIMEOUT_MS }, () => {
  it('on the example yard', () => {
    const read = readYardFile(
      JSON.parse(readFileSync(new URL('../contract/example.yard.json', import.meta.url), 'utf8')),
    );
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    expect(faultsOf(read.yard, quickPlan(read.yard))).toEqual([]);
  });

  it.each(chunks)('on random yards %i up to %i', (from, to) => checkSeeds(from!, to!));

  it.each<YardKind>(['small', 'tight-rack', 'cold-spring', 'odd'])('on more random yards: %s', (kind) =>
    checkSeeds(1000, 1025, kind),
  );

  it.each<YardKind>(['typical', 'busy'])('on large random yards: %s', (kind) => checkSeeds(2000, 2004, kind));
});

describe('plans are the same every time (R12)', { timeout: TIMEOUT_MS }, () => {
  it('down to the last letter', () => {
    for (let seed = 0; seed < 30; seed++) {
      const first = JSON.stringify(quickPlan(randomYard(seed)));
      expect(JSON.stringify(quickPlan(randomYard(seed))), `seed ${seed}`).toBe(first);
    }
  });
});
