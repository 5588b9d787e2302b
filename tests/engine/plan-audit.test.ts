import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { PlanFile } from '../../shared/plan.ts';
import { readYardFile, type YardFile } from '../../shared/yard-file.ts';
import { planYard } from '../../src/engine/plan.ts';
import { refereePlan } from '../../src/engine/referee.ts';
import { audit } from '../contract/audit-plan.mjs';
import { yardSeeds } from '../support/property-seed.ts';
import { datedYard } from '../support/random-yard/dated-stock.ts';
import { suppliedYard } from '../support/random-yard/suppliers.ts';
import { weatherYard } from '../support/random-yard/weather.ts';
import { wetYard } from '../support/random-yard/wet-cures.ts';
import { randomYard, type YardKind } from '../support/random-yard.ts';

/** What the independent check and the referee find; none for a plan that is in order. */
const faultsOf = (yard: YardFile, plan: PlanFile): string[] => [
  ...audit(yard, plan).faults,
  ...refereePlan(yard, plan).map((x) => `referee: ${x.rule} ${x.message}`),
];

const quickPlan = (yard: YardFile): PlanFile => planYard(yard, { effort: 'quick' });

/** In every second yard bags go past their dates, in every third the weather of some days is known, in every fifth shops close, in every seventh pieces are kept wet. */
const yardOf = (seed: number, kind?: YardKind): YardFile => {
  const yard = randomYard(seed, kind);
  const dated = seed % 2 === 0 ? datedYard(yard, seed) : yard;
  const hourly = seed % 3 === 0 ? weatherYard(dated, seed) : dated;
  const supplied = seed % 5 === 0 ? suppliedYard(hourly, seed) : hourly;
  return seed % 7 === 0 ? wetYard(supplied, seed) : supplied;
};

const checkSeeds = (seeds: number[], kind?: YardKind): void => {
  const faulty: Record<string, string[]> = {};
  for (const seed of seeds) {
    const yard = yardOf(seed, kind);
    const faults = faultsOf(yard, quickPlan(yard));
    if (faults.length > 0) faulty[`seed ${seed}`] = faults.slice(0, 5);
  }
  expect(faulty).toEqual({});
};

const SEEDS = 440;
const SEEDS_PER_TEST = 40;
/** Far more than it takes: so that a busy machine fails nothing. */
const TIMEOUT_MS = 120_000;
const chunks = Array.from({ length: SEEDS / SEEDS_PER_TEST }, (_, i) => yardSeeds(SEEDS_PER_TEST, i * SEEDS_PER_TEST));

describe('plans obey every rule', { timeout: TIMEOUT_MS }, () => {
  it('on the example yard', () => {
    const read = readYardFile(
      JSON.parse(readFileSync(new URL('../contract/example.yard.json', import.meta.url), 'utf8')),
    );
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    expect(faultsOf(read.yard, quickPlan(read.yard))).toEqual([]);
  });

  it.each(chunks.map((seeds) => ({ from: seeds[0]!, seeds })))('on random yards from $from on', ({ seeds }) =>
    checkSeeds(seeds),
  );

  it.each<YardKind>(['small', 'tight-rack', 'cold-spring', 'odd'])('on more random yards: %s', (kind) =>
    checkSeeds(yardSeeds(25, 1000), kind),
  );

  it.each<YardKind>(['typical', 'busy'])('on large random yards: %s', (kind) => checkSeeds(yardSeeds(4, 2000), kind));
});

describe('plans are the same every time (R12)', { timeout: TIMEOUT_MS }, () => {
  it('down to the last letter', () => {
    for (const seed of yardSeeds(30)) {
      const first = JSON.stringify(quickPlan(randomYard(seed)));
      expect(JSON.stringify(quickPlan(randomYard(seed))), `seed ${seed}`).toBe(first);
    }
  });
});
